import { type JudgedSpell, judgingSpells, rejudge, type SpellInput } from '../../forecasting/spells/index.js';
import { inSlices } from '../group/slices.js';
import type { Folder, SpellEntry } from '../store/index.js';
import type { Settled, SpellEvent, SpellRow, SpellsRequest } from './contract.js';
import { entryOf, eventOf, judgedOf, rowOf } from './kept.js';
import { SpellRefused } from './refused.js';

const MOST_NOTE = 2000;

/** What a judging is made from; another key where something that bears on it has changed. */
export interface Judging {
  /** The day a group is shown as of, 0 for today: each has a history of its own. */
  readonly view: number;
  readonly day: number;
  readonly now: number;
  /** Whether the checks have looked at all that came; what is judged before they have is shown, and not kept. */
  readonly whole: boolean;
  /** Worked out only where a judging is due. */
  readonly input: () => Promise<SpellInput>;
}

/** The spells of a group: judged when something has changed, kept for ever. */
export class SpellBook {
  /** The judging that is being kept: it waits for the write that runs, and who only reads does not wait for it. */
  private keeping: Promise<void> = Promise.resolve();

  constructor(private readonly store: Folder) {}

  /** Judges where it is due; the spells as they stand then. */
  async judged(judging: Judging): Promise<readonly SpellRow[]> {
    await this.kept().catch(() => undefined);
    const { catalogue } = this.store;
    const { view, now } = judging;
    const rows = (await catalogue.spells(view)).map(rowOf);
    const last = await catalogue.lastJudging(view);
    const known = async () => `${await catalogue.judgedFrom()} ${judging.day}`;
    if (last?.from === (await known())) return rows;
    const input = await judging.input();
    const found = await inSlices(judgingSpells(input));
    // Quality checks that were behind have caught up by now, and may have changed flags.
    const from = await known();
    const inSeason = (box: string, until: number) =>
      input.boxes.some((one) => one.box === box && one.lots.some(({ planted }) => planted <= until));
    const { changed, events } = rejudge(
      rows.map((row) => ({ spell: spellOf(row), settled: row.settled?.how ?? null })),
      found,
      { now, dayOffset: input.dayOffset, inSeason },
    );
    const renewed = new Map(changed.map((spell) => [spell.id, spell]));
    const standing = rows.map((row) => {
      const spell = renewed.get(row.id);
      renewed.delete(row.id);
      return spell === undefined ? row : { ...row, ...spell, changed: now };
    });
    const made = [...renewed.values()].map(
      (spell): SpellRow => ({ ...spell, found: now, changed: now, acknowledged: null, settled: null }),
    );
    const all = [...standing, ...made];
    if (!judging.whole) return all;
    const entries = all.filter((row) => changed.some(({ id }) => id === row.id)).map(entryOf);
    const told = events.map(({ change, spell }) => ({ change, judged: JSON.stringify(spell) }));
    this.keeping = this.store.write('spells', (write) =>
      write.keepJudging({ view, at: now, from, spells: entries, events: told }),
    );
    // Whoever waits for it is told; a judging that could not be kept is made again.
    this.keeping.catch(() => undefined);
    return all;
  }

  /** Once the last judging is kept. */
  kept(): Promise<void> {
    return this.keeping;
  }

  async events(view: number, after: number): Promise<readonly SpellEvent[]> {
    return (await this.store.catalogue.spellEvents(view, after)).map(eventOf);
  }

  acknowledge(view: number, id: string, note: string, who: string): Promise<SpellRow> {
    return this.change(view, id, note, who, (entry, seen) => ({ ...entry, seen }));
  }

  settle(view: number, id: string, how: Settled['how'], note: string, who: string): Promise<SpellRow> {
    return this.change(view, id, note, who, (entry, said) => {
      const spell = judgedOf(entry.judged);
      if (spell.kind !== 'exposure')
        throw new SpellRefused({ code: 'spell-not-an-exposure', with: { spell: id } });
      const settled: JudgedSpell = { ...spell, state: how === 'happened' ? 'confirmed' : 'withdrawn' };
      return {
        ...entry,
        changed: said.at,
        judged: JSON.stringify(settled),
        seen: entry.seen ?? said,
        settled: { ...said, how },
      };
    });
  }

  private async change(
    view: number,
    id: string,
    note: string,
    who: string,
    work: (entry: SpellEntry, said: NonNullable<SpellEntry['seen']>) => SpellEntry,
  ): Promise<SpellRow> {
    const told = note.trim();
    if (told.length > MOST_NOTE)
      throw new SpellRefused({ code: 'spell-note-too-long', with: { most: MOST_NOTE } });
    await this.kept();
    return this.store.write(who, async (write) => {
      const entry = (await write.spells(view)).find((one) => one.id === id);
      if (entry === undefined) throw new SpellRefused({ code: 'unknown-spell', with: { spell: id } });
      const changed = work(entry, { by: who, at: write.at, note: told });
      await write.keepSpell(view, changed);
      return rowOf(changed);
    });
  }
}

function spellOf({
  found: _,
  changed: __,
  acknowledged: ___,
  settled: ____,
  ...spell
}: SpellRow): JudgedSpell {
  return spell;
}

const OPEN_FIRST = (row: SpellRow) => (row.state === 'open' ? 0 : 1);

/** Those asked for, open ones first, then the latest. */
export function asked(rows: readonly SpellRow[], { box, since }: SpellsRequest): readonly SpellRow[] {
  return rows
    .filter((row) => (box === null || row.boxes.includes(box)) && (since === null || row.to >= since))
    .sort((a, b) => OPEN_FIRST(a) - OPEN_FIRST(b) || b.from - a.from || a.id.localeCompare(b.id, 'en'));
}
