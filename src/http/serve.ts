import { type Logger, pino } from 'pino';
import type { DayNumber } from '../../forecasting/units.js';
import { openOwnGroup } from '../group/index.js';
import { ThreadThinker } from '../group/thinker.js';
import type { Settings } from '../settings/index.js';
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
  {
    standingAt = null,
    log = logger(settings),
    mailbox = false,
  }: { standingAt?: DayNumber | null; log?: Logger; mailbox?: boolean } = {},
): Promise<Serving> {
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
    const commands = {
      spool: await Spool.in(group.folder, FOR_COMMANDS, { name: 'commands' }),
      token: () => announced.token,
    };
    const desk = openDesk({
      group,
      settings,
      base: () => settings.address ?? announced.address,
      sign: (text) => accounts.sign(text),
      standingAt,
      mailbox,
      log,
    });
    const app = createApp({
      group,
      desk,
      revision: () => group.revision,
      settings,
      accounts,
      spool,
      commands,
      log,
    });
    const listening = await listen(app, settings);
    announced.address = listening.address;
    announced.token = (await group.announce(listening.address)).token;
    log.info({ address: listening.address, folder: group.folder, open: accounts.open }, 'serving');
    desk.start();
    return {
      address: settings.address ?? listening.address,
      port: listening.port,
      folder: group.folder,
      open: accounts.open,
      close: async () => {
        log.info('ending');
        await listening.close();
        await desk.stop();
        await group.close();
        log.info('ended');
      },
    };
  } catch (error) {
    await group.close();
    throw error;
  }
}

/** One JSON line a happening, on the error stream: the output stream is for people. */
function logger({ log }: Settings): Logger {
  return pino({ level: log, base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination(2));
}
