import { type Candidate, graver, gravest } from './candidate.js';
import { exposures } from './exposures.js';
import { freezingSpells } from './frozen.js';
import { gaugeEvents } from './gauges.js';
import type { SpellInput } from './input.js';
import { measuredSpells } from './measured.js';
import { measuredFor, places } from './places.js';
import { possibleSpells } from './possible.js';
import type { JudgedSpell, TouchedEggs } from './spell.js';
import { meet } from './stretches.js';

const HOUR = 3_600_000;
/** Runs at one station less than this apart are one spell: the nights of a heat wave do not end it (ours). */
const APART = 24 * HOUR;

/** A spell before it is kept: what it is, not yet what is to be told of it. */
export type FoundSpell = Omit<JudgedSpell, 'id' | 'state'> & {
  /** The record it was judged on ends within it: it may still be running. */
  readonly running: boolean;
};

/** Everything that harmed, or may have harmed or may yet harm, the eggs of a season, oldest first. */
export function judgeSpells(input: SpellInput): FoundSpell[] {
  const steps = judgingSpells(input);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same in small steps, for a thread that others wait for: what it gives at the end is the answer. */
export function* judgingSpells(input: SpellInput): Generator<undefined, FoundSpell[]> {
  const all = yield* places(input);
  yield;
  const frozen: Candidate[] = [];
  for (const place of all) {
    frozen.push(...freezingSpells([place], input));
    yield;
  }
  const exposed: Candidate[] = [];
  for (const box of input.boxes) {
    const found = exposures({ ...input, boxes: [box] });
    exposed.push(...found.filter((one) => !frozen.some((ice) => ice.box === one.box && meet(ice, one))));
    yield;
  }
  const candidates: Candidate[] = [];
  for (const place of all) {
    candidates.push(...measuredSpells([place], input.dayOffset));
    yield;
  }
  candidates.push(...frozen, ...exposed);
  for (const gauge of input.gauges) {
    candidates.push(...gaugeEvents({ ...input, gauges: [gauge] }));
    yield;
  }
  for (const box of input.boxes) {
    const possible = possibleSpells(
      { ...input, boxes: [box] },
      (name) => measuredFor(all, name),
      (station) => input.records.find((record) => record.station === station)?.accuracy ?? 0,
    );
    candidates.push(...possible);
    yield;
  }
  const ends = new Map(
    [...input.records, ...input.gauges].map(({ station, at }) => [station, at.at(-1) ?? 0] as const),
  );
  return grouped(candidates)
    .map((group) => spellOf(group, input, ends))
    .sort((a, b) => a.from - b.from);
}

/** Candidates of one spell: the same kind at the same station, as sure, and unbroken; an exposure is one box's own. */
function grouped(candidates: readonly Candidate[]): Candidate[][] {
  const keys = new Map<string, Candidate[]>();
  for (const one of candidates) {
    const whose = one.kind === 'exposure' ? one.box : '';
    const key = [one.kind, one.station, one.certainty, whose].join('\u001f');
    keys.set(key, [...(keys.get(key) ?? []), one]);
  }
  return [...keys.values()].flatMap((alike) => {
    const groups: { until: number; of: Candidate[] }[] = [];
    for (const one of alike.sort((a, b) => a.from - b.from)) {
      const last = groups.at(-1);
      if (last === undefined || one.from > last.until + APART) groups.push({ until: one.to, of: [one] });
      else {
        last.of.push(one);
        last.until = Math.max(last.until, one.to);
      }
    }
    return groups.map(({ of }) => of);
  });
}

/** Readings older than this by the time of judging tell nothing of now (ours). */
const FRESH = 72 * HOUR;

function spellOf(
  group: readonly Candidate[],
  { now }: SpellInput,
  ends: ReadonlyMap<string, number>,
): FoundSpell {
  const severity = gravest(group.map((one) => one.severity));
  const worst = group.filter((one) => one.severity === severity);
  const strictest = worst.reduce((a, b) => (beyond(b) > beyond(a) ? b : a));
  const each = perBox(worst.filter((one) => sameLimit(one, strictest)));
  const [head] = group;
  const from = Math.min(...group.map((one) => one.from));
  const to = Math.max(...group.map((one) => one.to));
  const touched = touchedEggs(group);
  const end = ends.get(head.station) ?? 0;
  const coming = head.certainty === 'possible' && head.kind !== 'exposure' && to > now;
  return {
    kind: head.kind,
    severity,
    certainty: head.certainty,
    station: head.station,
    origin: head.origin,
    boxes: [...new Set(touched.map(({ box }) => box))],
    eggs: touched.reduce((sum, { eggs }) => sum + eggs, 0),
    stages: likeliest(touched),
    from: wholeSecond(from),
    to: wholeSecond(to),
    peak: rounded(farthest(group), 4),
    hours: rounded(Math.max(...each.map(({ hours }) => hours)), 2),
    degreeHours:
      strictest.degreeHours === null ? null : rounded(Math.max(...each.map((one) => one.degreeHours)), 2),
    chance: head.chance === null ? null : rounded(Math.max(...worst.map(({ chance }) => chance ?? 0)), 2),
    limit: strictest.limit,
    touched,
    mortality: strictest.mortality,
    sign: strictest.sign,
    running: coming || (head.kind !== 'exposure' && to >= end && now - to <= FRESH),
  };
}

const wholeSecond = (at: number) => Math.round(at / 1000) * 1000;

/** To what the readings bear, so that the same run judged again is the same. */
function rounded<T extends number | null>(value: T, digits: number): T | number {
  return value === null ? value : Number(value.toFixed(digits));
}

/** Of two limits of one class the one that is passed only by more: warmer, colder, or a shorter dose. */
function beyond({ limit, kind }: Candidate): number {
  if (limit === null) return 0;
  if (limit.unit === 'hours') return -limit.value;
  return kind === 'too-warm' ? limit.value : -limit.value;
}

const sameLimit = (a: Candidate, b: Candidate) =>
  a.limit?.value === b.limit?.value && a.limit?.hours === b.limit?.hours;

/** What the eggs of one lot in one box went through in all its runs. */
function perBox(worst: readonly Candidate[]): { hours: number; degreeHours: number }[] {
  const sums = new Map<string, { hours: number; degreeHours: number }>();
  for (const { box, lot, hours, degreeHours } of worst) {
    const key = `${box}\u001f${lot ?? ''}`;
    const sum = sums.get(key) ?? { hours: 0, degreeHours: 0 };
    sums.set(key, { hours: sum.hours + hours, degreeHours: sum.degreeHours + (degreeHours ?? 0) });
  }
  return [...sums.values()];
}

function touchedEggs(group: readonly Candidate[]): TouchedEggs[] {
  const touched = new Map<string, TouchedEggs>();
  for (const { box, lot, eggs, severity, stages } of group) {
    if (lot === null) continue;
    const key = `${box}\u001f${lot}`;
    const before = touched.get(key);
    if (before === undefined || graver(severity, before.severity))
      touched.set(key, {
        box,
        lot,
        eggs,
        severity,
        stages: stages.map(({ stage, chance }) => ({ stage, chance: rounded(chance, 2) })),
      });
  }
  return [...touched.values()];
}

/** Stages by the chance of each, over all eggs touched. */
function likeliest(touched: readonly TouchedEggs[]): string[] {
  const weight = new Map<string, number>();
  for (const { eggs, stages } of touched)
    for (const { stage, chance } of stages) weight.set(stage, (weight.get(stage) ?? 0) + chance * eggs);
  return [...weight].sort((a, b) => b[1] - a[1]).map(([stage]) => stage);
}

function farthest(group: readonly Candidate[]): number | null {
  const peaks = group.flatMap(({ peak }) => peak ?? []);
  if (peaks.length === 0) return null;
  const { kind } = group[0];
  if (kind === 'sudden-change') return peaks.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return kind === 'too-warm' ? Math.max(...peaks) : Math.min(...peaks);
}
