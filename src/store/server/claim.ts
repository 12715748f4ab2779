import { z } from 'zod';
import { StoreRefused } from '../refused.js';
import type { AnswerSeries } from './answer.js';
import type { InfluxServer } from './influx-server.js';

/** Readings are kept for ever, in shards of a year: the usual shards of a week would be a thousand for twenty years. */
const FOR_EVER = 'DURATION INF REPLICATION 1 SHARD DURATION 52w NAME "winters"';

/**
 * Makes sure the database is there, keeps for ever and is this group's own: `mark` is written into a new one and must
 * stand in an older one.
 *
 * @param fresh whether this group has no readings there yet; else the database must exist.
 * @throws StoreRefused 'server-database-missing', 'server-forgets', 'server-database-taken'
 */
export async function claimDatabase(server: InfluxServer, mark: string, fresh: boolean): Promise<void> {
  const { url, database } = server.address;
  const missing = () => new StoreRefused({ code: 'server-database-missing', with: { url, database } });
  if (server.major === 1) await keepsForEver(server, fresh, missing);
  else await bucketKeepsForEver(server, missing);
  const standing = await markOn(server);
  if (standing === mark) return;
  if (standing !== null) throw new StoreRefused({ code: 'server-database-taken', with: { url, database } });
  if (!fresh) throw missing();
  await server.write(`underice group="${mark}" 0`);
}

async function keepsForEver(
  server: InfluxServer,
  fresh: boolean,
  missing: () => StoreRefused,
): Promise<void> {
  const { database } = server.address;
  const names = rowsOf(await server.query('SHOW DATABASES', { onDatabase: false })).map(({ name }) => name);
  if (!names.includes(database)) {
    if (!fresh) throw missing();
    await server.query(`CREATE DATABASE ${quoted(database)} WITH ${FOR_EVER}`, { onDatabase: false });
  }
  const policies = rowsOf(await server.query(`SHOW RETENTION POLICIES ON ${quoted(database)}`));
  const policy = policies.find((one) => one.default === true);
  if (policy === undefined || policy.duration !== '0s') {
    throw forgets(server, String(policy?.name ?? '-'), String(policy?.duration ?? '-'));
  }
}

const bucketsSchema = z.object({
  buckets: z.array(
    z.looseObject({
      name: z.string(),
      retentionRules: z.array(z.looseObject({ everySeconds: z.number() })).default([]),
    }),
  ),
});

/** 2.x and later: the bucket is made by whoever runs the server. */
async function bucketKeepsForEver(server: InfluxServer, missing: () => StoreRefused): Promise<void> {
  const { database, organisation } = server.address;
  const org = organisation === null ? '' : `&org=${encodeURIComponent(organisation)}`;
  const found = await server.document(`/api/v2/buckets?name=${encodeURIComponent(database)}${org}`);
  const bucket = bucketsSchema.safeParse(found).data?.buckets.find(({ name }) => name === database);
  if (bucket === undefined) throw missing();
  const rule = bucket.retentionRules.find(({ everySeconds }) => everySeconds > 0);
  if (rule !== undefined) throw forgets(server, bucket.name, `${rule.everySeconds}s`);
}

function forgets(
  { address: { url, database } }: InfluxServer,
  policy: string,
  duration: string,
): StoreRefused {
  return new StoreRefused({ code: 'server-forgets', with: { url, database, policy, duration } });
}

async function markOn(server: InfluxServer): Promise<string | null> {
  const [row] = rowsOf(await server.query('SELECT last("group") AS mark FROM "underice"'));
  return typeof row?.mark === 'string' ? row.mark : null;
}

/** Rows by column name. */
export function rowsOf(answer: readonly AnswerSeries[]): Record<string, unknown>[] {
  return answer.flatMap(({ columns, values }) =>
    values.map((row) => Object.fromEntries(columns.map((column, i) => [column, row[i]]))),
  );
}

/** An InfluxQL identifier. */
export function quoted(name: string): string {
  return `"${name.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}
