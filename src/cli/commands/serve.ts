import { once } from 'node:events';
import { Command, Option } from 'commander';
import type { DayNumber } from '../../../forecasting/units.js';
import { folderOf } from '../../group/index.js';
import { readSettings, type Settings } from '../../settings/index.js';
import { words } from '../../words/index.js';
import { answer, type CommandContext, type Face } from '../face.js';

export interface ServeOptions {
  readonly host?: string;
  readonly port?: string;
  readonly settings?: string;
}

export function serveCommand({ word, face }: CommandContext): Command {
  return withServeOptions(new Command('serve'), word)
    .description(word('cli-serve', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice serve --port 8177' })}`)
    .action(async (options: ServeOptions) => {
      const here = face();
      const folder = folderOf(here.dataFolder);
      await serveUntilTold(here, folder, settingsFor(folder, options), null);
    });
}

export function withServeOptions(command: Command, word: CommandContext['word']): Command {
  return command
    .addOption(new Option('--host <host>', word('cli-serve-host', {})))
    .addOption(new Option('--port <port>', word('cli-serve-port', {})))
    .addOption(new Option('--settings <file>', word('cli-settings-file', {})));
}

export function settingsFor(folder: string, { host, port, settings }: ServeOptions): Settings {
  const file = settings ?? process.env.UNDERICE_SETTINGS ?? null;
  return readSettings({ folder, file, env: process.env, flags: { host, port } }).settings;
}

/** Serves a folder until SIGTERM, SIGINT or SIGHUP, then lets what has begun come to its end. */
export async function serveUntilTold(
  here: Face,
  folder: string,
  settings: Settings,
  standingAt: DayNumber | null,
): Promise<void> {
  // Fetched only here: a command that does not serve starts in half the time without it.
  const { serve } = await import('../../http/serve.js');
  const serving = await serve(folder, settings, { standingAt, mailbox: standingAt !== null });
  const told = Promise.race(['SIGTERM', 'SIGINT', 'SIGHUP'].map((signal) => once(process, signal)));
  const { address, open } = serving;
  answer(here, { address, folder: serving.folder, open }, () =>
    [
      words(here.language, 'http-serving', { address, folder: serving.folder }),
      ...(open ? [words(here.language, 'http-open', {})] : []),
    ].join('\n'),
  );
  await told;
  if (!here.json) here.out.write(`${words(here.language, 'http-stopping', {})}\n`);
  await serving.close();
}
