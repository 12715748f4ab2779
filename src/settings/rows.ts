import type { Origin, SettingsInForce } from './index.js';
import { type Setting, type Settings, secretSettings, settingNames } from './schema.js';

/** A setting as a list shows it: a secret that is stated as `***`. */
export interface SettingRow {
  readonly setting: Setting;
  readonly value: Settings[Setting];
  /** null where nobody said. */
  readonly origin: Origin | null;
}

/** Every setting in force, in the order of the schema. */
export function settingRows({
  settings,
  origins,
}: {
  readonly settings: Settings;
  readonly origins: SettingsInForce['origins'] | null;
}): SettingRow[] {
  return settingNames.map((setting) => ({
    setting,
    value: settings[setting] !== null && secretSettings.has(setting) ? '***' : settings[setting],
    origin: origins?.[setting] ?? null,
  }));
}
