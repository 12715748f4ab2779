import {
  type Compared,
  type Counted,
  compareGroups,
  countingError,
  ofFertilised,
  type SharedBy,
  type ShareInterval,
  sharedBy,
  wilson,
  worthFewer,
} from '../../forecasting/survival/index.js';
import { type Season, talliedStages } from '../season/index.js';
import { type BoxCount, byStage } from './counts.js';

/** How far eggs came: to a stage, or out of the box. Every one of them an upper figure. */
export const measures = [...talliedStages, 'out'] as const;
export type Measure = (typeof measures)[number];

export const groupings = ['all', 'site', 'lot', 'parent', 'year'] as const;
export type Grouping = (typeof groupings)[number];

export interface BoxSurvival {
  readonly count: BoxCount;
  /** Null where no eggs, or no empties, were written down. */
  readonly shares: Readonly<Record<Measure, ShareInterval | null>>;
  /** Out of the box, of the eggs the lot's control sample shows were fertilised. */
  readonly ofFertilised: ShareInterval | null;
}

export interface GroupSurvival {
  readonly by: Grouping;
  readonly name: string;
  readonly measure: Measure;
  /** Boxes that were found, and the same with those not found as eggs that did not come through. */
  readonly found: SharedBy | null;
  readonly withGone: SharedBy | null;
  readonly gone: number;
  readonly ofFertilised: ShareInterval | null;
}

/** One season's boxes by what came out, whether from tallies or from somebody's table. */
export interface YearBoxes {
  readonly season: string;
  readonly source: 'tallies' | 'closed' | 'table';
  readonly boxes: readonly Counted[];
}

export interface Survival {
  readonly boxes: readonly BoxSurvival[];
  readonly groups: readonly GroupSurvival[];
  readonly compared: readonly (Compared & { readonly by: Grouping; readonly apart: boolean })[];
  /** One standard deviation of a count, eggs; null where nothing was counted twice. */
  readonly countingError: number | null;
  readonly notCounted: readonly string[];
  /** Every site holds other lots than every other: sites and lots cannot be told apart. */
  readonly siteIsLot: boolean;
  /** Sites with one or two counted boxes. */
  readonly fewBoxes: readonly string[];
  readonly years: readonly YearBoxes[];
  /** What people call the sites, by id. */
  readonly siteNames: Readonly<Record<string, string>>;
}

/** A difference counts where its corrected chance is below this and the intervals do not overlap (common practice). */
const APART = 0.05;

export function survivalOf(
  season: Season,
  counts: readonly BoxCount[],
  years: readonly YearBoxes[],
): Survival {
  const error = countingError(counts.flatMap(({ apart }) => apart ?? []));
  const boxes = counts.map((count) => boxSurvival(season, count, error));
  const tallied = new Set(counts.map(({ box }) => box));
  const groups = [
    ...measures.flatMap((measure) => [
      ...group('all', [['', counts]], measure, season),
      ...group(
        'site',
        named(counts, ({ site }) => [site]),
        measure,
        season,
      ),
      ...group(
        'lot',
        named(counts, ({ lot }) => (lot === null ? [] : [lot])),
        measure,
        season,
      ),
      ...group(
        'parent',
        named(counts, ({ parents }) => parents),
        measure,
        season,
      ),
    ]),
    ...years.map(({ season: name, boxes: of }) => ofYear(name, of)),
  ];
  const sites = [...named(counts, ({ site }) => [site])].filter(([, of]) => of.some(({ gone }) => !gone));
  return {
    boxes,
    groups,
    compared: [
      ...comparedBy(
        'site',
        named(counts, ({ site }) => [site]),
        groups,
      ),
      ...comparedBy(
        'lot',
        named(counts, ({ lot }) => (lot === null ? [] : [lot])),
        groups,
      ),
      ...comparedYears(years, groups),
    ],
    countingError: error,
    notCounted: season.boxes.flatMap(({ id }) => (tallied.has(id) ? [] : [id])),
    siteIsLot: cannotTell(counts),
    fewBoxes: sites.filter(([, of]) => new Set(of.map(({ box }) => box)).size <= 2).map(([site]) => site),
    years,
    siteNames: Object.fromEntries(season.sites.map(({ id, name }) => [id, name ?? id])),
  };
}

function boxSurvival(season: Season, count: BoxCount, error: number | null): BoxSurvival {
  const share = (measure: Measure) => {
    const seen = seenOf(count, measure);
    if (seen === null || count.gone) return null;
    const counted = { seen, of: count.of };
    return wilson(error === null ? counted : worthFewer(counted, error, count.counters));
  };
  const shares = { ...byStage(share), out: share('out') };
  const control = count.lot === null ? null : controlOf(season, count.lot);
  return {
    count,
    shares,
    ofFertilised: shares.out === null || control === null ? null : ofFertilised(shares.out, control),
  };
}

/** So many fertilised of so many looked at; null where nobody looked. */
export function controlOf(season: Season, lot: string): Counted | null {
  const control = season.lots.find(({ id }) => id === lot)?.control ?? null;
  if (control === null || control.fertilised === null) return null;
  return { seen: control.fertilised, of: control.of ?? control.eggs };
}

/** Eggs that came so far, as an upper figure; null where it cannot be known. */
export function seenOf(count: BoxCount, measure: Measure): number | null {
  if (count.gone) return 0;
  return measure === 'out' ? count.empty : (count.reached?.[measure].upper ?? null);
}

function named(
  counts: readonly BoxCount[],
  names: (count: BoxCount) => readonly string[],
): Map<string, BoxCount[]> {
  const groups = new Map<string, BoxCount[]>();
  for (const count of counts)
    for (const name of names(count)) {
      const known = groups.get(name);
      if (known === undefined) groups.set(name, [count]);
      else known.push(count);
    }
  return groups;
}

/** Parts of one box that belong to the same group are one box: their eggs lay in one water. */
export function byBox(counts: readonly BoxCount[], measure: Measure): Counted[] {
  const boxes = new Map<string, { seen: number; of: number }>();
  for (const count of counts) {
    const seen = seenOf(count, measure);
    if (seen === null) continue;
    const known = boxes.get(count.box) ?? { seen: 0, of: 0 };
    boxes.set(count.box, { seen: known.seen + seen, of: known.of + count.of });
  }
  return [...boxes.values()];
}

function group(
  by: Grouping,
  groups: Iterable<readonly [string, readonly BoxCount[]]>,
  measure: Measure,
  season: Season,
): GroupSurvival[] {
  return [...groups].flatMap(([name, counts]) => {
    const there = counts.filter(({ gone }) => !gone);
    const found = sharedBy(byBox(there, measure));
    const gone = counts.length - there.length;
    if (found === null && (gone === 0 || measure !== 'out')) return [];
    const control = by === 'lot' && measure === 'out' ? controlOf(season, name) : null;
    return [
      {
        by,
        name,
        measure,
        found,
        withGone: gone === 0 ? found : sharedBy(byBox(counts, measure)),
        gone,
        ofFertilised: found === null || control === null ? null : ofFertilised(found, control),
      },
    ];
  });
}

function ofYear(name: string, boxes: readonly Counted[]): GroupSurvival {
  const found = sharedBy(boxes);
  return { by: 'year', name, measure: 'out', found, withGone: found, gone: 0, ofFertilised: null };
}

/** Groups compared pair by pair; more than this many would say nothing that a reader could keep (ours). */
const MOST_COMPARED = 30;

function comparedBy(
  by: Grouping,
  groups: ReadonlyMap<string, readonly BoxCount[]>,
  shown: readonly GroupSurvival[],
): Survival['compared'] {
  const boxes = [...groups].map(([name, counts]) => ({
    name,
    boxes: byBox(
      counts.filter(({ gone }) => !gone),
      'out',
    ),
  }));
  return withVerdict(by, boxes, shown);
}

function comparedYears(years: readonly YearBoxes[], shown: readonly GroupSurvival[]): Survival['compared'] {
  return withVerdict(
    'year',
    years.map(({ season, boxes }) => ({ name: season, boxes })),
    shown,
  );
}

function withVerdict(
  by: Grouping,
  groups: Parameters<typeof compareGroups>[0],
  shown: readonly GroupSurvival[],
): Survival['compared'] {
  if (groups.length > MOST_COMPARED) return [];
  const intervalOf = (name: string) =>
    shown.find((one) => one.by === by && one.measure === 'out' && one.name === name)?.found ?? null;
  return compareGroups(groups).map((pair) => {
    const [higher, lower] = [intervalOf(pair.higher), intervalOf(pair.lower)];
    const clear = higher !== null && lower !== null && higher.from > lower.to;
    return { ...pair, by, apart: clear && pair.corrected < APART };
  });
}

function cannotTell(counts: readonly BoxCount[]): boolean {
  const there = counts.filter(({ gone }) => !gone);
  const sites = named(there, ({ site }) => [site]);
  const lots = named(there, ({ lot }) => [lot ?? '']);
  if (sites.size < 2 || lots.size < 2) return false;
  return [...lots.values()].every((of) => new Set(of.map(({ site }) => site)).size === 1);
}
