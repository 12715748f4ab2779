import { z } from 'zod';
import { languages } from '../words/format.js';

/** A host name or address, without scheme or port. */
const host = z
  .string()
  .trim()
  .min(1)
  .max(253)
  .regex(/^[A-Za-z0-9.:_-]+$/);
const count = (least: number, most: number) => z.coerce.number().int().min(least).max(most);
/** "yes" and "no" as an environment variable or a flag says them; true and false as YAML does. */
const yesNo = z.preprocess(
  (given) => ({ true: true, yes: true, false: false, no: false })[String(given).toLowerCase()] ?? given,
  z.boolean(),
);
/** The address people type, behind a reverse proxy: scheme and host only. */
const address = z
  .url({ protocol: /^https?$/ })
  .refine((text) => new URL(text).pathname === '/' && !/[?#@]/.test(text))
  .transform((text) => new URL(text).origin);

/** Every setting, its usual value and what it takes. */
export const settingsSchema = z.object({
  /** Where the service listens: loopback, unless told otherwise. */
  host: host.default('127.0.0.1'),
  port: count(0, 65_535).default(8177),
  address: address.nullable().default(null),
  /** Whether a reverse proxy stands before it whose X-Forwarded-For may be believed. */
  behindProxy: yesNo.default(false),
  language: z.enum(languages).default('en'),
  log: z.enum(['debug', 'info', 'warn', 'error', 'silent']).default('info'),
  /** Most megabytes of one upload. */
  uploadMegabytes: count(1, 100_000).default(1000),
  /** Most megabytes an archive may unpack to. */
  unpackedMegabytes: count(1, 100_000).default(2000),
  /** Most files one form or archive brings. */
  filesAtOnce: count(1, 10_000).default(200),
  /** Most files, and megabytes of them, that wait to be accepted. */
  waitingFiles: count(1, 100_000).default(500),
  waitingMegabytes: count(1, 1_000_000).default(4000),
  /** Hours after which a file nobody accepted is thrown away. */
  waitingHours: count(1, 8760).default(48),
  /** Most kilobytes of a form's fields, or of a document in a body. */
  formKilobytes: count(16, 100_000).default(4000),
  /** Seconds without a byte, or with hardly any, after which a client is given up. */
  patienceSeconds: count(1, 3600).default(30),
  /** Most seconds one request may take to arrive. */
  requestSeconds: count(5, 86_400).default(3600),
  sessionDays: count(1, 400).default(30),
  /** Where readings lie: in the data folder, or on an InfluxDB server. Left out, wherever this folder's do. */
  store: z.enum(['embedded', 'influx']).nullable().default(null),
  influxUrl: address.nullable().default(null),
  /** The group's own database; 2.x and hosted servers call it a bucket. */
  influxDatabase: z.string().trim().min(1).max(200).nullable().default(null),
  influxUser: z.string().min(1).max(200).nullable().default(null),
  influxPassword: z.coerce.string().max(1000).nullable().default(null),
  influxToken: z.string().min(1).max(2000).nullable().default(null),
  influxOrganisation: z.string().min(1).max(200).nullable().default(null),
});

/** Settings that nobody is ever shown. */
export const secretSettings: ReadonlySet<string> = new Set(['influxPassword', 'influxToken']);

export type Settings = z.infer<typeof settingsSchema>;
export type Setting = keyof Settings;
export type Limits = Pick<
  Settings,
  | 'uploadMegabytes'
  | 'unpackedMegabytes'
  | 'filesAtOnce'
  | 'waitingFiles'
  | 'waitingMegabytes'
  | 'waitingHours'
  | 'formKilobytes'
  | 'patienceSeconds'
>;

export const settingNames = Object.keys(settingsSchema.shape).filter(isSetting);

export function isSetting(name: string): name is Setting {
  return Object.hasOwn(settingsSchema.shape, name);
}

/** What a setting takes, as a person would write it. */
export const takes: Readonly<Record<Setting, string>> = {
  host: '127.0.0.1, ::1, 0.0.0.0 …',
  port: '0–65535',
  address: 'https://eggs.example.org',
  behindProxy: 'yes, no',
  language: languages.join(', '),
  log: 'debug, info, warn, error, silent',
  uploadMegabytes: '1–100000',
  unpackedMegabytes: '1–100000',
  filesAtOnce: '1–10000',
  waitingFiles: '1–100000',
  waitingMegabytes: '1–1000000',
  waitingHours: '1–8760',
  formKilobytes: '16–100000',
  patienceSeconds: '1–3600',
  requestSeconds: '5–86400',
  sessionDays: '1–400',
  store: 'embedded, influx',
  influxUrl: 'http://127.0.0.1:8086',
  influxDatabase: 'our-river',
  influxUser: 'underice',
  influxPassword: '…',
  influxToken: '…',
  influxOrganisation: 'our-watershed',
};
