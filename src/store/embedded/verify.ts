import type { DaySeries } from '../../../forecasting/day-series.js';
import type { Load } from '../entries.js';
import type { ReadingStore, ReadingSum } from '../reading-store.js';
import type { Finding } from '../refused.js';
import type { StoredWrite } from './write.js';

/** Numbered rows that are never deleted, so that a gap is a loss. */
const NUMBERED = { station: 'number', series: 'number', load: 'number', season: 'version' };
/** Rows that must have the row they name. */
const REFERENCES = [
  ['series', 'station', 'station'],
  ['deployment', 'station', 'station'],
  ['flag', 'station', 'station'],
  ['finding', 'station', 'station'],
  ['judged', 'station', 'station'],
  ['day', 'station', 'station'],
  ['load_series', 'load', 'load'],
  ['load_series', 'series', 'series'],
] as const;

/**
 * Everything in the catalogue that must agree with the readings or with itself. What the readings of a load add up to is
 * noted by the first check and compared by every later one.
 */
export async function findingsOf(write: StoredWrite, store: ReadingStore): Promise<Finding[]> {
  const findings: Finding[] = [
    ...(await gaps(write)),
    ...(await loose(write)),
    ...(await misplaced(write)),
    ...(await closed(write)),
  ];
  for (const load of await write.loads()) {
    if (load.withdrawn === null) findings.push(...(await loadFindings(write, store, load)));
  }
  return findings;
}

async function gaps(write: StoredWrite): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const [table, column] of Object.entries(NUMBERED)) {
    const rows = await write.run(`SELECT ${column} AS number FROM ${table} ORDER BY ${column}`);
    rows.some((row, i) => {
      if (row.number('number') === i + 1) return false;
      findings.push({ code: 'verify-gap', with: { table, number: i + 1 } });
      return true;
    });
  }
  return findings;
}

async function loose(write: StoredWrite): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const [table, column, named] of REFERENCES) {
    const [found] = await write.run(
      `SELECT count(*) AS found FROM ${table} WHERE ${column} NOT IN (SELECT number FROM ${named})`,
    );
    const rows = found.number('found');
    if (rows > 0) findings.push({ code: 'verify-reference', with: { table, rows } });
  }
  return findings;
}

/** Closed seasons whose content is no longer what was kept. */
async function closed(write: StoredWrite): Promise<Finding[]> {
  const rows = await write.run('SELECT season, sha256, sha256(content) AS found FROM closed_season');
  return rows.flatMap((row): Finding[] =>
    row.text('sha256') === row.text('found')
      ? []
      : [{ code: 'verify-closed', with: { season: row.text('season') } }],
  );
}

/** Readings of no standing load, two visible at one instant, a covered one that should be seen. */
async function misplaced(write: StoredWrite): Promise<Finding[]> {
  const orphans = await write.run(
    `SELECT load, count(*) AS readings FROM (FROM visible UNION ALL FROM covered) r
      WHERE (load, series) NOT IN (SELECT (p.load, p.series) FROM load_series p JOIN load l ON l.number = p.load
        WHERE l.withdrawn_at IS NULL) GROUP BY load ORDER BY load`,
  );
  const findings: Finding[] = orphans.map((row) => ({
    code: 'verify-orphans',
    with: { load: String(row.number('load')), readings: row.number('readings') },
  }));
  const [twice] = await write.run(
    `SELECT coalesce(sum(n - 1), 0)::BIGINT AS readings FROM
      (SELECT count(*) AS n FROM visible GROUP BY series, instant HAVING count(*) > 1)`,
  );
  if (twice.number('readings') > 0)
    findings.push({ code: 'verify-twice', with: { readings: twice.number('readings') } });
  const [covered] = await write.run(
    `SELECT count(*) AS readings FROM covered c LEFT JOIN visible v ON v.series = c.series AND v.instant = c.instant
      WHERE v.load IS NULL OR v.load <= c.load`,
  );
  if (covered.number('readings') > 0)
    findings.push({ code: 'verify-covered', with: { readings: covered.number('readings') } });
  return findings;
}

async function loadFindings(write: StoredWrite, store: ReadingStore, entry: Load): Promise<Finding[]> {
  const { load } = entry;
  const sums = await store.sums(write, load);
  const noted = await notedSums(write, load);
  const series = await write.run(
    `SELECT p.*, s.id FROM load_series p JOIN series r ON r.number = p.series JOIN station s ON s.number = r.station
      WHERE p.load = ?`,
    [load],
  );
  const findings: Finding[] = [];
  for (const row of series) {
    const number = row.number('series');
    const sum = sums.get(number);
    const named = { load: String(load), station: row.text('id') };
    const expected = row.number('readings');
    const before = noted.get(number);
    if (sum === undefined || sum.readings !== expected) {
      findings.push({
        code: 'verify-load-readings',
        with: { ...named, expected, found: sum?.readings ?? 0 },
      });
    } else if (!agrees(row, sum) || (before !== undefined && before !== sum.checksum)) {
      findings.push({ code: 'verify-load-changed', with: named });
    } else if (before === undefined) {
      await write.run('INSERT INTO load_sum VALUES (?, ?, ?, ?)', [load, number, sum.readings, sum.checksum]);
    }
  }
  return findings;
}

function agrees(row: { number(name: string): number }, sum: ReadingSum): boolean {
  return (
    row.number('first_ms') === sum.first &&
    row.number('last_ms') === sum.last &&
    row.number('min_value') === sum.min &&
    row.number('max_value') === sum.max
  );
}

async function notedSums(write: StoredWrite, load: number): Promise<ReadonlyMap<number, number>> {
  const noted = await write.run('SELECT series, checksum FROM load_sum WHERE load = ?', [load]);
  return new Map(noted.map((row) => [row.number('series'), row.number('checksum')]));
}

/** Stations whose kept days are not those their readings give. The write is to be undone. */
export async function staleDays(write: StoredWrite): Promise<Finding[]> {
  const kept = await write.days();
  for (const { id } of await write.stations()) await write.renewStation(id);
  const anew = await write.days();
  const stations = new Set([...kept.keys(), ...anew.keys()]);
  return [...stations]
    .filter((station) => !sameDays(kept.get(station), anew.get(station)))
    .map((station) => ({ code: 'verify-days', with: { station } }));
}

function sameDays(a: DaySeries | undefined, b: DaySeries | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  if (a.firstDay !== b.firstDay || a.mean.length !== b.mean.length) return false;
  return (['mean', 'min', 'max', 'coverage'] as const).every((column) =>
    a[column].every((value, d) => Object.is(value, b[column][d]) || Math.abs(value - b[column][d]) < 1e-9),
  );
}
