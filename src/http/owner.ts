import { join } from 'node:path';
import { serialize } from 'node:v8';
import { type Context, Hono } from 'hono';
import { type CallArguments, type CallName, calls, recordCall } from '../group/calls.js';
import type { FileGiven, Group } from '../group/index.js';
import type { RefusedAnswer } from '../group/service-connection.js';
import { isRefusal } from '../words/refusals.js';
import type { Environment } from './environment.js';
import { isLoopback } from './middleware/place.js';
import { received } from './received/bytes.js';
import type { Spool } from './received/spool.js';
import { HttpRefused } from './refused.js';
import { backupSent } from './sent-copy.js';
import { changeAccounts } from './sign-in/change-accounts.js';
import { same } from './sign-in/secrets.js';
import { streamOf } from './stream.js';

/** A command of the same user sends what the disk holds: no limit but the disk's own. */
const COMMAND_LIMITS = {
  bytes: Number.POSITIVE_INFINITY,
  tooLarge: () => new HttpRefused(413, { code: 'http-file-too-large', with: { megabytes: 0 } }),
  patienceSeconds: 600,
};

/**
 * The door for commands on this machine, while the service owns the data folder. Its key is the token in owner.json,
 * which only the folder's own user may read; it opens for loopback only.
 */
export function ownerRoutes(group: Group, spool: Spool, token: () => string | null): Hono<Environment> {
  const app = new Hono<Environment>();
  app.use(async (c, next) => {
    const given = /^Bearer (\w+)$/.exec(c.req.header('Authorization') ?? '')?.[1] ?? '';
    const expected = token();
    const from = (c.env?.incoming?.socket.remoteAddress ?? '127.0.0.1').replace(/^::ffff:/, '');
    if (expected === null || !same(given, expected) || !isLoopback(from))
      throw new HttpRefused(401, { code: 'http-token-not-known', with: {} });
    await next();
  });
  app.onError((error, c) => {
    if (!isRefusal(error) || (error instanceof HttpRefused && error.status === 401)) throw error;
    const refused = { remark: error.remark, exit: error.exit };
    return c.body(bytes(refused), 422);
  });
  app.get('/hello', (c) => c.body(null, 204));
  app.put('/files', async (c) => {
    if (c.req.raw.body === null) throw new HttpRefused(400, { code: 'http-broken-off', with: {} });
    const body = received(c.req.raw.body, COMMAND_LIMITS);
    return c.text((await spool.receive(c.req.query('name') ?? '', '-', body)).id);
  });
  app.post('/call/:name', async (c) => {
    const name = c.req.param('name');
    if (!isCall(name))
      throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 100) } });
    return c.body(bytes(await answer(name, await said(c), group, spool)), 200, {
      'Content-Type': 'application/octet-stream',
    });
  });
  app.post('/accounts', async (c) => c.body(bytes(await changeAccounts(c.var.accounts, await said(c))), 200));
  app.post('/record', async (c) => {
    const lines = group.record(recordCall.parse(await said(c)))[Symbol.asyncIterator]();
    const first = await lines.next();
    const text = async function* () {
      const encoder = new TextEncoder();
      let gathered = first.done === true ? '' : `${first.value}\n`;
      for (;;) {
        const line = await lines.next();
        if (line.done === true) break;
        gathered += `${line.value}\n`;
        if (gathered.length < 65_536) continue;
        yield encoder.encode(gathered);
        gathered = '';
      }
      yield encoder.encode(gathered);
    };
    return c.body(streamOf(text()), 200, { 'Content-Type': 'text/plain; charset=utf-8' });
  });
  app.post('/backup', async (c) => {
    return c.body(await backupSent(group), 200, { 'Content-Type': 'application/octet-stream' });
  });
  return app;
}

async function said(c: Context<Environment>): Promise<unknown> {
  return JSON.parse(await c.req.text());
}

function bytes(value: RefusedAnswer | unknown): Uint8Array<ArrayBuffer> {
  return new Uint8Array(serialize(value));
}

function isCall(name: string): name is CallName {
  return Object.hasOwn(calls, name);
}

/** One call, checked and answered. */
function answer(name: CallName, given: unknown, group: Group, spool: Spool): Promise<unknown> {
  switch (name) {
    case 'today':
    case 'season':
    case 'seasonText':
    case 'seasonVersions':
    case 'closedSeasons':
    case 'stations':
    case 'loads':
    case 'tables':
    case 'verify':
      return group[name]();
    case 'copyStore':
      return group.copyStore(calls.copyStore.parse(given).to);
    case 'previewSeason': {
      const { text, file } = calls.previewSeason.parse(given);
      return group.previewSeason(text, file);
    }
    case 'applySeason': {
      const { text, file, who, expected } = calls.applySeason.parse(given);
      return group.applySeason(text, file, who, expected);
    }
    case 'closedContent':
      return group.closedContent(calls.closedContent.parse(given).season);
    case 'keepClosed': {
      const { closed, who } = calls.keepClosed.parse(given);
      return group.keepClosed(closed, who);
    }
    case 'seasonAt':
      return group.seasonAt(calls.seasonAt.parse(given).version);
    case 'findings':
      return group.findings(calls.findings.parse(given).station);
    case 'load':
      return loadSent(calls.load.parse(given), group, spool);
    case 'withdraw': {
      const { load, who } = calls.withdraw.parse(given);
      return group.withdraw(load, who);
    }
    case 'forecast':
      return group.forecast(calls.forecast.parse(given));
    case 'spells':
      return group.spells(calls.spells.parse(given));
    case 'spellEvents':
      return group.spellEvents(calls.spellEvents.parse(given).after);
    case 'acknowledgeSpell': {
      const { id, note, who } = calls.acknowledgeSpell.parse(given);
      return group.acknowledgeSpell(id, note, who);
    }
    case 'settleExposure': {
      const { id, how, note, who } = calls.settleExposure.parse(given);
      return group.settleExposure(id, how, note, who);
    }
    case 'series':
      return group.series(calls.series.parse(given));
    case 'days':
      return group.days(calls.days.parse(given));
  }
}

/** Files sent beforehand are loaded under the names their person gave them, and wait no longer, whatever came of it. */
async function loadSent(request: CallArguments<'load'>, group: Group, spool: Spool): Promise<unknown> {
  const sent = request.files.flatMap(({ sent }) => (sent === null ? [] : [sent]));
  const files = request.files.map(({ sent, instead, name, station }): FileGiven => {
    const nowhere = instead === 'folder' ? group.folder : join(group.folder, 'underice.spool', 'nothing');
    const path = sent === null ? nowhere : spool.file(sent).path;
    return { path, name, ...(station === undefined ? {} : { station }) };
  });
  const { asked, createStations, dryRun, who } = request;
  try {
    return await group.load({ files, asked: given(asked), createStations, dryRun, who, progress: null });
  } finally {
    for (const id of sent) await spool.drop(id);
  }
}

/** What was said of the files, without what was not. */
function given({ station, zone, unit, column, dateOrder }: CallArguments<'load'>['asked']) {
  return {
    ...(station === undefined ? {} : { station }),
    ...(zone === undefined ? {} : { zone }),
    ...(unit === undefined ? {} : { unit }),
    ...(column === undefined ? {} : { column }),
    ...(dateOrder === undefined ? {} : { dateOrder }),
  };
}
