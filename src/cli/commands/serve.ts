import { once } from 'node:events';
import { Command, Option } from 'commander';
import type { DayNumber } from '../../../forecasting/units.js';
import { folderOf } from '../../group/index.js';
import { readSettings, type SettingsInForce } from '../../settings/index.js';
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
      const here = face(true);
      const folder = folderOf(here.dataFolder);
      const inForce = settingsFor(folder, options);
      if (here.otherFolders.length === 0) return serveUntilTold(here, folder, inForce, null);
      const folders = [folder, ...here.otherFolders.map((other) => folderOf(other))];
      await serveSeveralUntilTold(here, folders, inForce);
    });
}

export function withServeOptions(command: Command, word: CommandContext['word']): Command {
  return command
    .addOption(new Option('--host <host>', word('cli-serve-host', {})))
    .addOption(new Option('--port <port>', word('cli-serve-port', {})))
    .addOption(new Option('--settings <file>', word('cli-settings-file', {})));
}

export function settingsFor(folder: string, { host, port, settings }: ServeOptions): SettingsInForce {
  const file = settings ?? process.env.UNDERICE_SETTINGS ?? null;
  return readSettings({ folder, file, env: process.env, flags: { host, port } });
}

/** Serves a folder until SIGTERM, SIGINT or SIGHUP, then lets what has begun come to its end. */
export async function serveUntilTold(
  here: Face,
  folder: string,
  { settings, origins }: SettingsInForce,
  standingAt: DayNumber | null,
): Promise<void> {
  // Fetched only here: a command that does not serve starts in half the time without it.
  const { serve } = await import('../../http/serve.js');
  const serving = await serve(folder, settings, { standingAt, mailbox: standingAt !== null, origins });
  const { address, open } = serving;
  const told = toldToEnd();
  answer(here, { address, folder: serving.folder, open }, () => said(here, serving));
  await ending(here, told, serving);
}

/** Several groups in one process, each under its own host name: `settings` say where it listens. */
async function serveSeveralUntilTold(
  here: Face,
  folders: readonly string[],
  { settings }: SettingsInForce,
): Promise<void> {
  const { serveGroups } = await import('../../http/serve-groups.js');
  const { host, port } = settings;
  const places = folders.map((folder) => {
    const flags = { host, port: String(port) };
    return { folder, ...readSettings({ folder, file: null, env: process.env, flags }) };
  });
  const serving = await serveGroups(places, settings);
  const told = toldToEnd();
  const groups = serving.groups.map(({ address, folder, open }) => ({ address, folder, open }));
  answer(here, { groups }, () => groups.map((group) => said(here, group)).join('\n'));
  await ending(here, told, serving);
}

interface Said {
  readonly address: string;
  readonly folder: string;
  readonly open: boolean;
}

function said({ language }: Face, { address, folder, open }: Said): string {
  const lines = [words(language, 'http-serving', { address, folder })];
  return (open ? [...lines, words(language, 'http-open', {})] : lines).join('\n');
}

/** Begins to listen before the address is said: who reads it may end the service at once. */
const toldToEnd = (): Promise<unknown> =>
  Promise.race(['SIGTERM', 'SIGINT', 'SIGHUP'].map((signal) => once(process, signal)));

async function ending(
  here: Face,
  told: Promise<unknown>,
  serving: { close(): Promise<void> },
): Promise<void> {
  await told;
  if (!here.json) here.out.write(`${words(here.language, 'http-stopping', {})}\n`);
  await serving.close();
}
