import type { Forecast, LotForecast, StageWindow } from '../../forecasting/forecast.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import { type Outcome, outcomes } from '../lifting/index.js';

const DAY = 86_400_000;
/** What is read of a group to look back on a season. */
export type SeasonDoor = Pick<Group, 'season' | 'forecast' | 'today'>;

/** A median date as it stood, days; null where there was none. */
export interface Stood {
  readonly asOf: DayNumber;
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
}

/** One lot's stage at one site: its median as it stood through the winter, and by the record as it is now. */
export interface StageStood {
  readonly site: string;
  readonly box: string;
  readonly lot: string;
  readonly stage: string;
  readonly stood: readonly Stood[];
  /** By the water as it is known at the end; null where it is not known far enough. */
  readonly byRecord: number | null;
}

/** How far the medians of one month stood from what the record gave. */
export interface LeadScore {
  readonly asOf: DayNumber;
  readonly stages: number;
  /** Mean absolute error, days; positive bias: forecast too late. */
  readonly error: number;
  readonly bias: number;
  /** Share of the 80 % intervals that held it, 0 to 1. */
  readonly held: number;
}

export interface Rightness {
  readonly stages: readonly StageStood[];
  readonly scores: readonly LeadScore[];
  readonly outcomes: readonly Outcome[];
}

/** Last days of November, January, March and May of a season that begins in a year. */
export function standingDays(year: number): DayNumber[] {
  return [`${year}-11-30`, `${year + 1}-01-31`, `${year + 1}-03-31`, `${year + 1}-05-31`].map(
    (date) => Date.parse(`${date}T00:00Z`) / DAY,
  );
}

/** The season's windows as they stood, beside what the record gives in the end and what people saw. */
export async function rightness(door: SeasonDoor, last: Forecast, year: number): Promise<Rightness> {
  const days = standingDays(year).filter((day) => day < last.asOf);
  const before: Forecast[] = [];
  for (const day of days) before.push(await door.forecast({ box: null, asOf: day }));
  const stages = ofEachSite(last).flatMap(({ site, box, lot }) =>
    lot.windows.map(
      (window): StageStood => ({
        site,
        box,
        lot: lot.lot,
        stage: window.stage,
        stood: before.map(({ asOf, boxes }) => {
          const then = boxes.find((one) => one.box === box)?.lots.find((one) => one.lot === lot.lot);
          return { asOf, ...medianOf(then, window.stage) };
        }),
        byRecord: known(window, last.asOf) ? window.median.p50 : null,
      }),
    ),
  );
  const seen = days.length === 0 ? [] : await outcomes(door, last.asOf, days);
  return { stages, scores: days.flatMap((day) => scoreOf(day, stages)), outcomes: seen };
}

/** One box stands for all of a site that hold the same lot: they lie in one water. */
function ofEachSite({ boxes }: Forecast) {
  const found = new Map<string, { site: string; box: string; lot: LotForecast }>();
  for (const { site, box, lots } of boxes)
    for (const lot of lots) {
      const name = JSON.stringify([site, lot.lot]);
      if (!found.has(name)) found.set(name, { site, box, lot });
    }
  return [...found.values()];
}

function medianOf(lot: LotForecast | undefined, stage: string): Omit<Stood, 'asOf'> {
  const window = lot?.windows.find((one) => one.stage === stage);
  return window?.median ?? { p10: null, p50: null, p90: null };
}

/** The median lies so far back that no day still to come can move it. */
function known({ median }: StageWindow, asOf: DayNumber): boolean {
  return median.p50 !== null && median.p50 <= asOf;
}

function scoreOf(asOf: DayNumber, stages: readonly StageStood[]): LeadScore[] {
  const pairs = stages.flatMap(({ stood, byRecord }) => {
    const then = stood.find((one) => one.asOf === asOf);
    // What was over by then is no forecast.
    if (then?.p50 == null || byRecord === null || byRecord <= asOf) return [];
    return [{ ...then, error: then.p50 - byRecord, byRecord }];
  });
  if (pairs.length === 0) return [];
  const mean = (of: (pair: (typeof pairs)[number]) => number) =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const holds = ({ p10, p90, byRecord }: (typeof pairs)[number]) =>
    p10 !== null && p10 <= byRecord && (p90 === null || p90 >= byRecord);
  return [
    {
      asOf,
      stages: pairs.length,
      error: mean(({ error }) => Math.abs(error)),
      bias: mean(({ error }) => error),
      held: mean((pair) => (holds(pair) ? 1 : 0)),
    },
  ];
}
