import type { EpochMillis } from '../units.js';
import { graver } from './candidate.js';
import type { FoundSpell } from './judge.js';
import type { JudgedSpell } from './spell.js';
import { meet } from './stretches.js';

const HOUR = 3_600_000;
/** Two judgements speak of the same run where they meet, or miss each other by less than this (ours). */
const NEAR = 24 * HOUR;
/** A possible spell is raised from this chance on; one that stands is kept while it is still named at all (ours). */
export const RAISED = 0.3;

export type SpellChange = 'opened' | 'worsened' | 'ended' | 'confirmed' | 'withdrawn' | 'past';

/** A spell as it stands before a judging; `settled` is what a person found out about an exposure. */
export interface StandingSpell {
  readonly spell: JudgedSpell;
  readonly settled: 'happened' | 'did-not-happen' | null;
}

export interface Rejudged {
  /** New spells, and standing ones that are other than before. */
  readonly changed: readonly JudgedSpell[];
  /** What is to be told, once. */
  readonly events: readonly { readonly change: SpellChange; readonly spell: JudgedSpell }[];
}

/** When it is judged, and for which eggs. */
export interface At {
  readonly now: EpochMillis;
  /** Milliseconds to add to UTC for the group's standard days, which spells are named after. */
  readonly dayOffset: number;
  /** Whether the season still has eggs of the box that were in the water by then. */
  readonly inSeason: (box: string, until: EpochMillis) => boolean;
}

/**
 * What a judging makes of the spells that stand: a run keeps its name, a new one is opened or, over before anybody
 * could know, reported as past; a possible one is confirmed by readings or withdrawn. Spells of boxes that are no
 * longer in the season, or hold other eggs by now, are history and stay as they are.
 */
export function rejudge(
  standing: readonly StandingSpell[],
  found: readonly FoundSpell[],
  { now, dayOffset, inSeason }: At,
): Rejudged {
  const pairs = matched(standing, found);
  const ids = new Set(standing.map(({ spell }) => spell.id));
  const told: { change: SpellChange | null; spell: JudgedSpell }[] = [];
  for (const one of found) {
    const before = pairs.get(one);
    if (before !== undefined) told.push(again(before, one, now));
    else if (isRaised(one)) told.push(fresh(one, now, newId(one, ids, dayOffset)));
  }
  const kept = new Set(pairs.values());
  for (const one of standing) {
    if (kept.has(one)) continue;
    const gone = notFound(one, found, inSeason);
    if (gone !== null) told.push(gone);
  }
  const before = new Map(standing.map(({ spell }) => [spell.id, JSON.stringify(spell)]));
  return {
    changed: told.map(({ spell }) => spell).filter((spell) => before.get(spell.id) !== JSON.stringify(spell)),
    events: told.flatMap(({ change, spell }) => (change === null ? [] : [{ change, spell }])),
  };
}

/** Which found run is which standing spell, each at most once, the best match first. */
function matched(
  standing: readonly StandingSpell[],
  found: readonly FoundSpell[],
): Map<FoundSpell, StandingSpell> {
  const scored = found
    .flatMap((one) => standing.map((old) => ({ one, old, score: likeness(old.spell, one) })))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score);
  const pairs = new Map<FoundSpell, StandingSpell>();
  const taken = new Set<StandingSpell>();
  for (const { one, old } of scored) {
    if (pairs.has(one) || taken.has(old)) continue;
    pairs.set(one, old);
    taken.add(old);
  }
  return pairs;
}

/** 0 where they cannot be the same; what was measured is never again only possible. */
function likeness(old: JudgedSpell, one: FoundSpell): number {
  const apart = old.kind !== one.kind || !meetNearly(old, one);
  if (apart || !one.boxes.some((box) => old.boxes.includes(box))) return 0;
  if (old.certainty !== 'possible' && one.certainty === 'possible') return 0;
  const shared = Math.max(0, Math.min(old.to, one.to) - Math.max(old.from, one.from));
  const share = shared / Math.max(1, old.to - old.from, one.to - one.from);
  return 1 + (old.certainty === one.certainty ? 4 : 0) + (old.station === one.station ? 2 : 0) + share;
}

const meetNearly = (a: JudgedSpell | FoundSpell, b: FoundSpell) =>
  meet({ from: a.from - NEAR, to: a.to + NEAR }, b);

const isRaised = ({ chance }: FoundSpell) => chance === null || chance >= RAISED;

function fresh(one: FoundSpell, now: EpochMillis, id: string): { change: SpellChange; spell: JudgedSpell } {
  const open = isOpen(one, now);
  return { change: open ? 'opened' : 'past', spell: spellFrom(one, id, open ? 'open' : 'past') };
}

/** An exposure is open until a person settles it; what is still to come, or runs on, is open too. */
const isOpen = (one: FoundSpell, now: EpochMillis) => one.kind === 'exposure' || one.running || one.to > now;

function again(
  { spell: old, settled }: StandingSpell,
  one: FoundSpell,
  now: EpochMillis,
): { change: SpellChange | null; spell: JudgedSpell } {
  if (settled !== null) return { change: null, spell: spellFrom(one, old.id, old.state) };
  if (old.state === 'withdrawn') return fresh(one, now, old.id);
  const open = isOpen(one, now);
  const confirmed = old.certainty === 'possible' && one.certainty !== 'possible';
  const over = confirmed || old.state === 'confirmed' ? 'confirmed' : overAs(old, one);
  const spell = spellFrom(one, old.id, open ? 'open' : over);
  return { change: changeOf(old, one, { confirmed, open }), spell };
}

/** A possible spell whose days have gone by unmeasured has not ended: nobody saw it begin. */
const overAs = (old: JudgedSpell, one: FoundSpell): JudgedSpell['state'] =>
  old.state === 'past' || one.certainty === 'possible' ? 'past' : 'ended';

function changeOf(
  old: JudgedSpell,
  one: FoundSpell,
  { confirmed, open }: { confirmed: boolean; open: boolean },
): SpellChange | null {
  if (confirmed) return 'confirmed';
  if (graver(one.severity, old.severity)) return 'worsened';
  if (old.state === 'open' && !open) return one.certainty === 'possible' ? null : 'ended';
  if (old.state !== 'open' && open) return 'opened';
  return null;
}

/** What became of a standing spell that no run bears out any more. */
function notFound(
  { spell, settled }: StandingSpell,
  found: readonly FoundSpell[],
  inSeason: (box: string, until: EpochMillis) => boolean,
): { change: SpellChange | null; spell: JudgedSpell } | null {
  if (settled !== null || spell.state === 'withdrawn') return null;
  if (!spell.boxes.some((box) => inSeason(box, spell.to)))
    return spell.state === 'open' ? { change: null, spell: { ...spell, state: 'ended' } } : null;
  const withdrawn = { ...spell, state: 'withdrawn' as const };
  // A run that has grown into another one is not taken back: it is told with that one.
  const absorbed = found.some((one) => one.certainty === spell.certainty && likeness(spell, one) > 0);
  return { change: absorbed ? null : 'withdrawn', spell: withdrawn };
}

function spellFrom({ running: _, ...one }: FoundSpell, id: string, state: JudgedSpell['state']): JudgedSpell {
  return { id, state, ...one };
}

function newId({ kind, station, boxes, from }: FoundSpell, ids: Set<string>, dayOffset: number): string {
  const whose = kind === 'exposure' ? (boxes[0] ?? station) : station;
  const name = `${kind}-${whose}-${new Date(from + dayOffset).toISOString().slice(0, 10)}`;
  let id = name;
  for (let n = 2; ids.has(id); n++) id = `${name}-${n}`;
  ids.add(id);
  return id;
}
