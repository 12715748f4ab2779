import {
  diedBefore,
  plantedIn,
  type Season,
  type TalliedStage,
  type Tally,
  talliedStages,
} from '../season/index.js';

/** Of so many eggs, how many came as far as a stage: at least, and at most. */
export interface Reached {
  readonly upper: number;
  readonly lower: number;
}

/** What is known of the eggs of one box, or of one part of it, that was counted or found gone. */
export interface BoxCount {
  readonly box: string;
  readonly part: string | null;
  readonly site: string;
  /** Null where several lots lie in what was counted together. */
  readonly lot: string | null;
  readonly parents: readonly string[];
  /** Eggs planted; what was counted where more came out than was written down going in. */
  readonly of: number;
  readonly gone: boolean;
  /** Mean over those who counted; null where it was not written down. */
  readonly empty: number | null;
  readonly dead: number | null;
  readonly alive: number | null;
  readonly counters: number;
  /** Two people's counts of the empty compartments: how far apart. */
  readonly apart: number | null;
  /** Null where the kinds of the dead were not told apart. */
  readonly reached: Readonly<Record<TalliedStage, Reached>> | null;
  readonly siltMm: number | null;
  readonly damage: string | null;
}

/** Every counted box or part, and boxes found gone; boxes that nobody counted are not there. */
export function boxCounts(season: Season): BoxCount[] {
  return season.boxes.flatMap((box) => {
    const tallies = season.tallies.filter((tally) => tally.box === box.id);
    const parts = [...new Set(tallies.map(({ part }) => part))];
    // A count of the whole box stands for it; counts of parts beside it would count its eggs twice.
    const counted = parts.includes(null) ? [null] : parts;
    return counted.map((part) => {
      const mine = tallies.filter((tally) => tally.part === part);
      return ofTallies(season, box, part, mine);
    });
  });
}

function ofTallies(
  season: Season,
  box: Season['boxes'][number],
  part: string | null,
  tallies: readonly Tally[],
): BoxCount {
  const fills = box.fills.filter((fill) => part === null || fill.part === part);
  const lots = [...new Set((fills.length > 0 ? fills : box.fills).map(({ lot }) => lot))];
  const lot = lots.length === 1 ? lots[0] : null;
  const gone = tallies.every(({ found }) => found === 'not-found' || found === 'carried-away');
  const [empty, dead, alive] = (['empty', 'dead', 'alive'] as const).map((key) =>
    mean(tallies.flatMap((one) => one[key] ?? [])),
  );
  const planted = plantedIn(box, part);
  const empties = tallies.flatMap((one) => one.empty ?? []);
  return {
    box: box.id,
    part,
    site: box.site,
    lot,
    parents: season.lots.find(({ id }) => id === lot)?.parents ?? [],
    of: gone ? planted : Math.max(planted, (empty ?? 0) + (dead ?? 0) + (alive ?? 0)),
    gone,
    empty,
    dead,
    alive,
    counters: Math.max(1, empties.length),
    apart: empties.length === 2 ? Math.abs(empties[0] - empties[1]) : null,
    reached: reachedIn(tallies, empty, dead, alive),
    siltMm: mean(tallies.flatMap((one) => one.siltMm ?? [])),
    damage: tallies.find((one) => one.damage !== null)?.damage ?? null,
  };
}

/** Dead that nobody could put to a stage may have died before it or after it: both are said. */
function reachedIn(
  tallies: readonly Tally[],
  empty: number | null,
  dead: number | null,
  alive: number | null,
): BoxCount['reached'] {
  const kinds = tallies.flatMap((one) => one.kinds ?? []);
  if (kinds.length === 0 || empty === null || dead === null) return null;
  const told = diedBefore.map(([kind, before]) => ({
    before,
    count: mean(kinds.flatMap((one) => one[kind] ?? [])) ?? 0,
  }));
  const all = empty + dead + (alive ?? 0);
  const untold = Math.max(0, dead - told.reduce((sum, { count }) => sum + count, 0));
  const reached = (stage: TalliedStage): Reached => {
    const last = told.findLastIndex(({ before }) => before === stage);
    const upper = all - told.slice(0, last + 1).reduce((sum, { count }) => sum + count, 0);
    return { upper: Math.max(0, upper), lower: Math.max(0, upper - untold) };
  };
  return byStage(reached);
}

/** The same of every stage a tally tells apart. */
export function byStage<Of>(of: (stage: TalliedStage) => Of): Record<TalliedStage, Of> {
  return Object.fromEntries(talliedStages.map((stage) => [stage, of(stage)])) as Record<TalliedStage, Of>;
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
}
