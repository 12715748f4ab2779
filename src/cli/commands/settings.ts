import { Command } from 'commander';
import { folderOf } from '../../group/index.js';
import { readSettings, settingRows } from '../../settings/index.js';
import { answer, type CommandContext } from '../face.js';
import { columns } from '../terminal-table.js';
import { type ServeOptions, withServeOptions } from './serve.js';

export function settingsCommand({ word, face }: CommandContext): Command {
  return withServeOptions(new Command('settings'), word)
    .description(word('cli-settings', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice settings --json' })}`)
    .action(({ settings: file, host, port }: ServeOptions) => {
      const here = face();
      const inForce = readSettings({
        folder: folderOf(here.dataFolder),
        file: file ?? process.env.UNDERICE_SETTINGS ?? null,
        env: process.env,
        flags: { host, port },
      });
      const rows = settingRows(inForce).map(({ setting, value, origin }) => ({
        setting,
        value,
        from: origin === null ? '' : word('settings-origin', origin),
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
