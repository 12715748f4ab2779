import { type Logger, pino } from 'pino';
import type { DayNumber } from '../../forecasting/units.js';
import { openOwnGroup } from '../group/index.js';
import { ThreadThinker } from '../group/thinker.js';
import type { Settings, SettingsInForce } from '../settings/index.js';
import { createApp } from './app.js';
import { openDesk } from './desk.js';
import { isLoopback } from './middleware/place.js';
import { Spool } from './received/spool.js';
import { HttpRefused } from './refused.js';
import { listen } from './server.js';
import { Accounts } from './sign-in/accounts.js';

/** A command sends what it likes and takes it away again itself; what one left when it was killed goes in an hour. */
const FOR_COMMANDS = { files: Number.POSITIVE_INFINITY, megabytes: Number.POSITIVE_INFINITY, keepHours: 1 };

export interface Serving {
  readonly address: string;
  readonly port: number;
  readonly folder: string;
  /** Nobody has an account: whoever reaches it may change everything. */
  readonly open: boolean;
  /** Lets what has begun come to its end, then closes the data folder. */
  close(): Promise<void>;
}

/**
 * Opens a data folder and serves it until closed.
 * @throws HttpRefused where others could reach it and nobody has an account, or the port is taken; StoreRefused where
 *   the folder is held or cannot be used.
 */
export async function serve(
  folder: string,
  settings: Settings,
  { standingAt = null, log = logger(settings), mailbox = false, origins = null }: ServeOptions = {},
): Promise<Serving> {
  const opened = await openService(folder, settings, { standingAt, log, mailbox, origins });
  try {
    const listening = await listen(opened.app, settings);
    await opened.announce(listening.address);
    return {
      address: settings.address ?? listening.address,
      port: listening.port,
      folder: opened.folder,
      open: opened.open,
      close: async () => {
        log.info('ending');
        await listening.close();
        await opened.close();
        log.info('ended');
      },
    };
  } catch (error) {
    await opened.close();
    throw error;
  }
}

export interface ServeOptions {
  readonly standingAt?: DayNumber | null;
  readonly log?: Logger;
  /** Messages go into a mailbox that can be read on a page, and nowhere else: the sample season's. */
  readonly mailbox?: boolean;
  /** Where each setting came from, for who looks at them. */
  readonly origins?: SettingsInForce['origins'] | null;
}

/** A group and its service, before anybody can reach it. */
export interface Opened {
  readonly app: ReturnType<typeof createApp>;
  readonly folder: string;
  readonly open: boolean;
  /** Says in the folder where commands of this machine find it. */
  announce(address: string): Promise<void>;
  /** What those commands show; null before it was announced. */
  token(): string | null;
  close(): Promise<void>;
}

/** @throws HttpRefused where others could reach it and nobody has an account; StoreRefused as `serve`. */
export async function openService(
  folder: string,
  settings: Settings,
  { standingAt, log, mailbox, origins }: Required<ServeOptions>,
): Promise<Opened> {
  const group = await openOwnGroup(folder, { standingAt, thinker: new ThreadThinker() });
  try {
    const accounts = new Accounts(group.folder, settings.sessionDays);
    if (accounts.open && !isLoopback(settings.host))
      throw new HttpRefused(503, { code: 'http-no-account', with: { host: settings.host } });
    const { waitingFiles, waitingMegabytes, waitingHours } = settings;
    const spool = await Spool.in(group.folder, {
      files: waitingFiles,
      megabytes: waitingMegabytes,
      keepHours: waitingHours,
    });
    const announced: { token: string | null; address: string } = { token: null, address: '' };
    const token = () => announced.token;
    const commands = {
      spool: await Spool.in(group.folder, FOR_COMMANDS, { name: 'commands' }),
      token,
    };
    const revision = () => group.revision;
    const desk = openDesk({
      group,
      settings,
      base: () => settings.address ?? announced.address,
      sign: (text) => accounts.sign(text),
      standingAt,
      mailbox,
      log,
    });
    return {
      app: createApp({ group, desk, revision, settings, origins, accounts, spool, commands, log }),
      folder: group.folder,
      open: accounts.open,
      announce: async (address) => {
        announced.address = address;
        announced.token = (await group.announce(address)).token;
        log.info({ address, folder: group.folder, open: accounts.open }, 'serving');
        desk.start();
      },
      token,
      close: async () => {
        await group.stopChecking();
        await desk.stop();
        await group.close();
      },
    };
  } catch (error) {
    await group.close();
    throw error;
  }
}

/** One JSON line a happening, on the error stream: the output stream is for people. */
export function logger({ log }: Settings): Logger {
  return pino({ level: log, base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination(2));
}
