import { Hono } from 'hono';
import type { Logger } from 'pino';
import type { DayNumber } from '../../forecasting/units.js';
import type { Settings, SettingsInForce } from '../settings/index.js';
import { words } from '../words/index.js';
import type { Environment } from './environment.js';
import { hostOf } from './middleware/place.js';
import { problem, sendProblem } from './problem.js';
import { HttpRefused } from './refused.js';
import { logger, type Opened, openService } from './serve.js';
import { listen } from './server.js';
import { same } from './sign-in/secrets.js';

/** A group's data folder and what its own settings say. */
export interface GroupPlace {
  readonly folder: string;
  readonly settings: Settings;
  readonly origins?: SettingsInForce['origins'];
}

export interface ServingGroups {
  readonly port: number;
  readonly groups: readonly { readonly address: string; readonly folder: string; readonly open: boolean }[];
  close(): Promise<void>;
}

/**
 * Several groups in one process: each its own folder, accounts, settings and host name, as if each had a service of its
 * own. A host name, not a path, tells them apart, because then a browser keeps them apart too: no cookie, no script and
 * nothing a phone has kept of one group is ever offered to another.
 * @throws HttpRefused where a group has no address, or two the same host; else as `serve`.
 */
export async function serveGroups(
  places: readonly GroupPlace[],
  where: Settings,
  { standingAt = null, log = logger(where) }: { standingAt?: DayNumber | null; log?: Logger } = {},
): Promise<ServingGroups> {
  const hosts = hostsOf(places);
  const opened: Opened[] = [];
  const closeAll = async () => {
    for (const one of opened) await one.close();
  };
  try {
    for (const { folder, settings, origins = null } of places)
      opened.push(
        await openService(folder, settings, {
          standingAt,
          log: log.child({ group: folder }),
          mailbox: false,
          origins,
        }),
      );
    const byHost = new Map(hosts.map((host, i) => [host, opened[i]]));
    const listening = await listen(dispatch(byHost, opened), where);
    for (const one of opened) await one.announce(listening.address);
    return {
      port: listening.port,
      groups: opened.map(({ folder, open }, i) => ({
        address: places[i]?.settings.address ?? listening.address,
        folder,
        open,
      })),
      close: async () => {
        log.info('ending');
        await listening.close();
        await closeAll();
        log.info('ended');
      },
    };
  } catch (error) {
    await closeAll();
    throw error;
  }
}

/** The host name each group answers under. */
function hostsOf(places: readonly GroupPlace[]): readonly string[] {
  const taken = new Map<string, string>();
  return places.map(({ folder, settings: { address } }) => {
    if (address === null) throw new HttpRefused(503, { code: 'http-group-no-address', with: { folder } });
    const host = new URL(address).hostname;
    const other = taken.get(host);
    if (other !== undefined)
      throw new HttpRefused(503, { code: 'http-group-same-host', with: { host, folder, other } });
    taken.set(host, folder);
    return host;
  });
}

/** Hands each request to its group: by host name; a command of this machine by the token of the folder it works in. */
function dispatch(
  byHost: ReadonlyMap<string, Opened | undefined>,
  all: readonly Opened[],
): Hono<Environment> {
  const app = new Hono<Environment>();
  app.get('/healthz', (c) => c.json({ status: 'ok' }));
  app.all('*', (c) => {
    const host = hostOf(c.req.header('Host') ?? '');
    const group = c.req.path.startsWith('/owner/')
      ? ownerOf(c.req.header('Authorization') ?? '', all)
      : byHost.get(host);
    if (group !== undefined) return group.app.fetch(c.req.raw, c.env);
    const detail = words('en', 'http-foreign-host', { host: host.slice(0, 80) });
    return sendProblem(c, problem(421, 'http-foreign-host', detail));
  });
  return app;
}

function ownerOf(authorization: string, all: readonly Opened[]): Opened | undefined {
  const given = /^Bearer (\w+)$/.exec(authorization)?.[1] ?? '';
  // Nobody's token: the first refuses it, as a service of one group would.
  return all.find((one) => same(given, one.token() ?? '')) ?? all[0];
}
