import type { EpochMillis, FlagEntry, Judgement } from '../entries.js';
import type { Row } from './sql.js';
import type { StoredWrite } from './write.js';

const DAY = 86_400_000;
/** Flags that a person set by hand are not the checks' to take away. */
const OF_THE_CHECKS = "set_by_test <> 'person'";

/** Writes a judgement in place of the one before it; says whether any finding or flag is another. */
export async function writeJudgement(
  write: StoredWrite,
  judgement: Judgement,
): Promise<{ readonly changed: boolean; readonly renew: readonly Stretch[] }> {
  const { number } = await write.knownStation(judgement.station);
  const { quantity, year, restsOn, from, to } = judgement;
  const flagsBefore = (
    await write.run(
      `SELECT * FROM flag WHERE station = ? AND quantity = ? AND ${OF_THE_CHECKS} AND from_ms BETWEEN ? AND ?
        ORDER BY from_ms, to_ms, set_by_test`,
      [number, quantity, from, to],
    )
  ).map(keyOfRow);
  const flags = judgement.flags.map((flag) => ({ flag, key: keyOf(flag) }));
  const findings = judgement.findings.map((one) => ({
    kind: one.kind,
    from: Math.round(one.from),
    to: Math.round(one.to),
    flag: one.flag,
    figures: JSON.stringify(one.figures),
    offer: one.offer === null ? null : JSON.stringify(one.offer),
  }));
  const findingsBefore = await write.run(
    'SELECT * FROM finding WHERE station = ? AND quantity = ? AND year = ?',
    [number, quantity, year],
  );
  const samefindings =
    sorted(findings.map((one) => JSON.stringify(Object.values(one)))) ===
    sorted(findingsBefore.map(findingKey));
  const sameFlags = sorted(flags.map(({ key }) => key)) === sorted(flagsBefore);
  await write.run('DELETE FROM judged WHERE station = ? AND quantity = ? AND year = ?', [
    number,
    quantity,
    year,
  ]);
  if (restsOn !== null)
    await write.run('INSERT INTO judged VALUES (?, ?, ?, ?, ?)', [number, quantity, year, restsOn, write.at]);
  if (!samefindings) {
    await write.run('DELETE FROM finding WHERE station = ? AND quantity = ? AND year = ?', [
      number,
      quantity,
      year,
    ]);
    for (const one of findings)
      await write.run('INSERT INTO finding VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)', [
        number,
        quantity,
        year,
        one.kind,
        one.from,
        one.to,
        one.flag,
        one.figures,
        one.offer,
      ]);
  }
  if (sameFlags) return { changed: !samefindings, renew: [] };
  await write.run(
    `DELETE FROM flag WHERE station = ? AND quantity = ? AND ${OF_THE_CHECKS} AND from_ms BETWEEN ? AND ?`,
    [number, quantity, from, to],
  );
  for (const { flag } of flags)
    await write.run('INSERT INTO flag VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)', [
      number,
      quantity,
      Math.round(flag.from),
      Math.round(flag.to),
      flag.flag,
      flag.set,
      write.by,
      write.at,
      flag.note,
    ]);
  const [old, now] = [new Set(flagsBefore), new Set(flags.map(({ key }) => key))];
  const differing = [
    ...flagsBefore.filter((key) => !now.has(key)),
    ...[...now].filter((key) => !old.has(key)),
  ];
  return { changed: true, renew: quantity === 'temperature' ? stretchesOf(differing) : [] };
}

export interface Stretch {
  readonly first: EpochMillis;
  readonly last: EpochMillis;
}

type FlagFigures = Pick<FlagEntry, 'from' | 'to' | 'flag' | 'set'>;

function keyOf({ from, to, flag, set }: FlagFigures): string {
  return [Math.round(from), Math.round(to), flag, set].join(' ');
}

function keyOfRow(row: Row): string {
  return [row.number('from_ms'), row.number('to_ms'), row.number('flag'), row.text('set_by_test')].join(' ');
}

function findingKey(row: Row): string {
  return JSON.stringify([
    row.text('kind'),
    row.number('from_ms'),
    row.number('to_ms'),
    row.number('flag'),
    row.text('figures'),
    row.textOrNull('offer'),
  ]);
}

const sorted = (keys: readonly string[]): string => [...keys].sort().join('\n');

/** Where readings become usable or cease to be; what only suspects or passes changes no day. */
function stretchesOf(keys: readonly string[]): Stretch[] {
  const found: { first: number; last: number }[] = [];
  const bearing = keys
    .map((key) => key.split(' '))
    .filter(([, , flag, set]) => Number(flag) > 3 || set === 'ruling')
    .map(([from, to]) => ({ first: Number(from), last: Number(to) }))
    .sort((a, b) => a.first - b.first);
  for (const one of bearing) {
    const before = found.at(-1);
    if (before !== undefined && one.first - before.last < 5 * DAY)
      before.last = Math.max(before.last, one.last);
    else found.push({ ...one });
  }
  return found;
}
