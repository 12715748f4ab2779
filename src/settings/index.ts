import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isMap, LineCounter, parseDocument } from 'yaml';
import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import {
  isSetting,
  type Setting,
  type Settings,
  secretSettings,
  settingNames,
  settingsSchema,
  takes,
} from './schema.js';
import type { SettingsWords } from './words.js';

export { type SettingRow, settingRows } from './rows.js';
export {
  type FeedSetting,
  type Limits,
  type Setting,
  type Settings,
  secretSettings,
  settingNames,
} from './schema.js';
export type { SettingsWords } from './words.js';

/** Where a value came from, the first that gave one: a flag, the environment, the settings file, else the usual. */
export interface Origin {
  readonly kind: 'flag' | 'environment' | 'file' | 'usual';
  /** `--port`, `UNDERICE_PORT`, the file's path; '' where it is the usual value. */
  readonly place: string;
}

export interface SettingsInForce {
  readonly settings: Settings;
  readonly origins: Readonly<Record<Setting, Origin>>;
}

export interface SettingsSources {
  /** The data folder, in which `settings.yaml` may lie. */
  readonly folder: string;
  /** --settings or UNDERICE_SETTINGS; then it must be there. */
  readonly file: string | null;
  readonly env: NodeJS.ProcessEnv;
  readonly flags: Partial<Record<Setting, string | boolean | undefined>>;
}

/** A setting is unknown or its value is none. */
export class SettingsRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<SettingsWords>) {
    super(remark.code);
    this.name = 'SettingsRefused';
  }
}

/** The settings in force, every value with where it came from. @throws SettingsRefused naming what is wrong where. */
export function readSettings({ folder, file, env, flags }: SettingsSources): SettingsInForce {
  const path = file ?? join(folder, 'settings.yaml');
  const inFile = fromFile(path, file !== null);
  const settings: Record<string, unknown> = {};
  const origins: Partial<Record<Setting, Origin>> = {};
  for (const setting of settingNames) {
    const variable = variableOf(setting);
    const candidates: readonly (readonly [unknown, Origin])[] = [
      [flags[setting], { kind: 'flag', place: `--${kebab(setting)}` }],
      [env[variable] || undefined, { kind: 'environment', place: variable }],
      [inFile.get(setting), { kind: 'file', place: path }],
    ];
    const [given, origin] = candidates.find(([value]) => value !== undefined) ?? [undefined, usual];
    settings[setting] = checked(setting, given, origin);
    origins[setting] = origin;
  }
  return { settings: settingsSchema.parse(settings), origins: complete(origins) };
}

const usual: Origin = { kind: 'usual', place: '' };

function checked(setting: Setting, given: unknown, { place }: Origin): unknown {
  const read = settingsSchema.shape[setting].safeParse(given);
  if (read.success) return given;
  throw new SettingsRefused({
    code: 'settings-bad-value',
    with: { place, setting, given: shown(setting, given), takes: takes[setting] },
  });
}

/** What a person may see of a setting's value. */
export function shown(setting: Setting, value: unknown): string {
  if (secretSettings.has(setting) && value !== null && value !== undefined) return '***';
  return (typeof value === 'object' && value !== null ? JSON.stringify(value) : String(value)).slice(0, 80);
}

function complete(origins: Partial<Record<Setting, Origin>>): Record<Setting, Origin> {
  const of = (setting: Setting) => origins[setting] ?? usual;
  return {
    host: of('host'),
    port: of('port'),
    address: of('address'),
    behindProxy: of('behindProxy'),
    language: of('language'),
    log: of('log'),
    uploadMegabytes: of('uploadMegabytes'),
    unpackedMegabytes: of('unpackedMegabytes'),
    filesAtOnce: of('filesAtOnce'),
    waitingFiles: of('waitingFiles'),
    waitingMegabytes: of('waitingMegabytes'),
    waitingHours: of('waitingHours'),
    formKilobytes: of('formKilobytes'),
    patienceSeconds: of('patienceSeconds'),
    requestSeconds: of('requestSeconds'),
    sessionDays: of('sessionDays'),
    store: of('store'),
    influxUrl: of('influxUrl'),
    influxDatabase: of('influxDatabase'),
    influxUser: of('influxUser'),
    influxPassword: of('influxPassword'),
    influxToken: of('influxToken'),
    influxOrganisation: of('influxOrganisation'),
    smtpHost: of('smtpHost'),
    smtpPort: of('smtpPort'),
    smtpSecurity: of('smtpSecurity'),
    smtpUser: of('smtpUser'),
    smtpPassword: of('smtpPassword'),
    smtpFrom: of('smtpFrom'),
    smtpSeconds: of('smtpSeconds'),
    messageHours: of('messageHours'),
    windowMovedDays: of('windowMovedDays'),
    liftingNearDays: of('liftingNearDays'),
    silentHours: of('silentHours'),
    privateAddresses: of('privateAddresses'),
    feeds: of('feeds'),
  };
}

/** What the settings file gives; nothing where there is none and none was asked for. */
function fromFile(path: string, asked: boolean): ReadonlyMap<Setting, unknown> {
  const text = textOf(path, asked);
  if (text === null) return new Map();
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines });
  const damaged = (offset: number) =>
    new SettingsRefused({
      code: 'settings-not-yaml',
      with: { file: path, line: lines.linePos(offset).line },
    });
  const [error] = document.errors;
  if (error !== undefined) throw damaged(error.pos[0]);
  if (document.contents === null) return new Map();
  if (!isMap(document.contents)) throw damaged(0);
  const given = new Map<Setting, unknown>();
  for (const [name, value] of Object.entries(document.toJS())) {
    if (!isSetting(name))
      throw new SettingsRefused({
        code: 'settings-unknown',
        with: { place: path, given: name.slice(0, 80), known: settingNames },
      });
    given.set(name, value);
  }
  return given;
}

function textOf(path: string, asked: boolean): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const absent = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    if (absent && !asked) return null;
    throw new SettingsRefused({ code: 'settings-unreadable', with: { file: path } });
  }
}

/** uploadMegabytes: UNDERICE_UPLOAD_MEGABYTES. The language of the service is not that of the terminal. */
export function variableOf(setting: Setting): string {
  const name = setting === 'language' ? 'serviceLanguage' : setting;
  return `UNDERICE_${kebab(name).replaceAll('-', '_').toUpperCase()}`;
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
