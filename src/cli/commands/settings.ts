import { Command } from 'commander';
import { folderOf } from '../../group/index.js';
import { readSettings, secretSettings, settingNames } from '../../settings/index.js';
import { answer, type CommandContext } from '../face.js';
import { columns } from '../terminal-table.js';
import { type ServeOptions, withServeOptions } from './serve.js';

export function settingsCommand({ word, face }: CommandContext): Command {
  return withServeOptions(new Command('settings'), word)
    .description(word('cli-settings', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice settings --json' })}`)
    .action(({ settings: file, host, port }: ServeOptions) => {
      const here = face();
      const { settings, origins } = readSettings({
        folder: folderOf(here.dataFolder),
        file: file ?? process.env.UNDERICE_SETTINGS ?? null,
        env: process.env,
        flags: { host, port },
      });
      const rows = settingNames.map((setting) => ({
        setting,
        value: settings[setting] !== null && secretSettings.has(setting) ? '***' : settings[setting],
        from: word('settings-origin', origins[setting]),
      }));
      answer(here, { settings: rows }, () =>
        columns(
          [
            word('column-setting', {}),
            word('column-value', {}),
            word('column-origin', {}),
            word('column-what', {}),
          ],
          rows.map(({ setting, value, from }) => [
            setting,
            value === null ? '-' : String(value),
            from,
            word('settings-what', { setting }),
          ]),
        ),
      );
    });
}
