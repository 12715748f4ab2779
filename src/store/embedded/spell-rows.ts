import type { JudgingEntry, JudgingRow, SpellEntry, SpellEventRow } from '../spell-entries.js';
import type { Row } from './sql.js';

type Value = number | string | boolean | null;
/** Runs a statement of the store file. */
type Run = (sql: string, values?: readonly Value[]) => Promise<Row[]>;

export async function spellsIn(run: Run, view: number): Promise<SpellEntry[]> {
  return (await run('SELECT * FROM spell WHERE view = ? ORDER BY found_at, id', [view])).map(spellOf);
}

export async function eventsIn(run: Run, view: number, after: number): Promise<SpellEventRow[]> {
  const found = await run('SELECT * FROM spell_event WHERE view = ? AND number > ? ORDER BY number', [
    view,
    after,
  ]);
  return found.map((row) => ({
    number: row.number('number'),
    judging: row.number('judging'),
    change: row.text('change'),
    at: row.number('made_at'),
    judged: row.text('judged'),
  }));
}

export async function lastJudgingIn(run: Run, view: number): Promise<JudgingRow | null> {
  const [row] = await run('SELECT * FROM judging WHERE view = ? ORDER BY number DESC LIMIT 1', [view]);
  return row === undefined
    ? null
    : { number: row.number('number'), at: row.number('made_at'), from: row.text('found_in') };
}

/** Loads, withdrawals, the season's version, flags and findings: nothing else of a folder bears on its spells. */
export async function judgedFrom(run: Run): Promise<string> {
  const [row] = await run(
    `SELECT (SELECT count(*) FROM load) AS loads,
      (SELECT count(*) FROM load WHERE withdrawn_at IS NOT NULL) AS withdrawn,
      (SELECT coalesce(max(version), 0) FROM season) AS season,
      (SELECT coalesce(bit_xor(hash(station, quantity, from_ms, to_ms, flag, set_by_test)), 0) FROM flag)::VARCHAR AS flags,
      (SELECT coalesce(bit_xor(hash(station, kind, from_ms, to_ms, flag)), 0) FROM finding)::VARCHAR AS findings`,
  );
  if (row === undefined) return '';
  const counts = ['loads', 'withdrawn', 'season'].map((name) => row.number(name));
  return [...counts, row.text('flags'), row.text('findings')].join(' ');
}

export async function keepJudging(run: Run, judging: JudgingEntry): Promise<void> {
  const { view, at, from, spells, events } = judging;
  const number = await next(run, 'judging');
  await run('INSERT INTO judging VALUES (?, ?, ?, ?)', [number, view, at, from]);
  for (const spell of spells) await keepSpell(run, view, spell);
  let event = await next(run, 'spell_event');
  for (const { change, judged } of events)
    await run('INSERT INTO spell_event VALUES (?, ?, ?, ?, ?, ?)', [
      event++,
      view,
      number,
      change,
      at,
      judged,
    ]);
}

export async function keepSpell(run: Run, view: number, spell: SpellEntry): Promise<void> {
  const { id, found, changed, judged, seen, settled } = spell;
  await run('DELETE FROM spell WHERE view = ? AND id = ?', [view, id]);
  await run('INSERT INTO spell VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)', [
    view,
    id,
    found,
    changed,
    judged,
    seen?.by ?? null,
    seen?.at ?? null,
    seen?.note ?? null,
    settled?.how ?? null,
    settled?.by ?? null,
    settled?.at ?? null,
    settled?.note ?? null,
  ]);
}

async function next(run: Run, table: 'judging' | 'spell_event'): Promise<number> {
  const [row] = await run(`SELECT coalesce(max(number), 0) + 1 AS number FROM ${table}`);
  return row?.number('number') ?? 1;
}

function spellOf(row: Row): SpellEntry {
  const seenBy = row.textOrNull('seen_by');
  const how = row.textOrNull('settled_how');
  return {
    id: row.text('id'),
    found: row.number('found_at'),
    changed: row.number('changed_at'),
    judged: row.text('judged'),
    seen:
      seenBy === null
        ? null
        : { by: seenBy, at: row.number('seen_at'), note: row.textOrNull('seen_note') ?? '' },
    settled:
      how === null
        ? null
        : {
            how,
            by: row.textOrNull('settled_by') ?? '',
            at: row.number('settled_at'),
            note: row.textOrNull('settled_note') ?? '',
          },
  };
}
