import type { Setting } from './schema.js';

/** What is said of settings; the words are in src/words/<language>/http.ts. */
export interface SettingsWords {
  'settings-unreadable': { readonly file: string };
  'settings-not-yaml': { readonly file: string; readonly line: number };
  'settings-unknown': { readonly place: string; readonly given: string; readonly known: readonly string[] };
  'settings-bad-value': {
    readonly place: string;
    readonly setting: Setting;
    readonly given: string;
    readonly takes: string;
  };
  'settings-origin': { readonly kind: 'flag' | 'environment' | 'file' | 'usual'; readonly place: string };
  'settings-what': { readonly setting: Setting };
  'cli-settings': Record<never, never>;
  'cli-settings-file': Record<never, never>;
  'column-setting': Record<never, never>;
  'column-value': Record<never, never>;
  'column-origin': Record<never, never>;
  'column-what': Record<never, never>;
}
