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

/** A host, an address or a range (10.1.0.0/16); several with commas between. */
const named = z.preprocess(
  (given) => (typeof given === 'string' ? given.split(/[\s,]+/).filter((one) => one !== '') : given),
  z
    .array(
      z
        .string()
        .max(253)
        .regex(/^[A-Za-z0-9.:_/-]+$/),
    )
    .max(100),
);

/** A station's readings that come by themselves: out of a folder, or from an address. */
export const feedSchema = z
  .strictObject({
    id: z.string().regex(/^[A-Za-z0-9._-]{1,60}$/),
    /** A folder in which downloads appear. */
    folder: z.string().max(1000).optional(),
    /** An address; {from} and {to} in it are dates: since the last reading, and today. */
    url: z.string().max(2000).optional(),
    /** Whose readings they are, where the downloads do not say. */
    station: z.string().max(100).optional(),
    everyMinutes: z.number().int().min(1).max(10_080).default(60),
    /** Told after so many hours without anything new. */
    silentHours: z.number().min(1).max(8760).default(48),
    /** How far back the provider keeps readings, days: {from} asks for no more. */
    keepsDays: z.number().int().min(1).max(36_500).default(30),
  })
  .refine(({ folder, url }) => (folder === undefined) !== (url === undefined));
export type FeedSetting = z.infer<typeof feedSchema>;

/** A list as YAML has it; an environment variable says it as JSON. */
const feeds = z.preprocess(
  (given, context) => {
    if (typeof given !== 'string') return given;
    try {
      return JSON.parse(given);
    } catch {
      context.addIssue({ code: 'custom', message: 'not JSON' });
      return z.NEVER;
    }
  },
  z
    .array(feedSchema)
    .max(200)
    .refine((all) => new Set(all.map(({ id }) => id)).size === all.length),
);

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
  /** The server that takes our mail; without one, e-mail waits. */
  smtpHost: host.nullable().default(null),
  smtpPort: count(1, 65_535).default(587),
  /** starttls and tls never send without encryption; none only where no network lies between. */
  smtpSecurity: z.enum(['starttls', 'tls', 'none']).default('starttls'),
  smtpUser: z.string().min(1).max(200).nullable().default(null),
  smtpPassword: z.coerce.string().max(1000).nullable().default(null),
  /** The address that messages come from. */
  smtpFrom: z
    .string()
    .regex(/^[^\s<>@]+@[^\s<>@]+$/)
    .max(254)
    .nullable()
    .default(null),
  /** Seconds a mail server may keep us waiting for its next word. */
  smtpSeconds: count(1, 600).default(30),
  /** Hours after which a message that does not get through is given up. */
  messageHours: count(1, 8760).default(72),
  windowMovedDays: count(0, 60).default(3),
  liftingNearDays: count(1, 60).default(10),
  /** Least hours of a station's silence that are told. */
  silentHours: count(1, 8760).default(72),
  /** Of this machine and the network around it, what webhooks and feeds may reach. */
  privateAddresses: named.default([]),
  feeds: feeds.default([]),
});

/** Settings that nobody is ever shown. */
export const secretSettings: ReadonlySet<string> = new Set(['influxPassword', 'influxToken', 'smtpPassword']);

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
  smtpHost: 'mail.example.org',
  smtpPort: '1–65535',
  smtpSecurity: 'starttls, tls, none',
  smtpUser: 'underice',
  smtpPassword: '…',
  smtpFrom: 'eggs@example.org',
  smtpSeconds: '1–600',
  messageHours: '1–8760',
  windowMovedDays: '0–60',
  liftingNearDays: '1–60',
  silentHours: '1–8760',
  privateAddresses: '192.168.1.20, 10.1.0.0/16, weather.lan',
  feeds: '[{ id: weir, url: "https://example.org/weir.csv?since={from}", station: weir, everyMinutes: 60 }]',
};
