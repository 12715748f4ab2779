import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  atlanticSalmon,
  type DevelopmentTable,
  daysToStage,
  type StageRow,
  stageRow,
  whenReached,
} from '../../forecasting/index.js';
import { normalDraws, seedFor, sortedQuantile } from '../../forecasting/windows/draws.js';
import { type Eggs, eggPaths, settledPaths } from '../../forecasting/windows/eggs.js';
import { type Ensemble, ensemble, pathsOf } from '../../forecasting/windows/ensemble.js';
import { intervalOf } from '../../forecasting/windows/interval.js';
import { mixture } from '../../forecasting/windows/mixture.js';
import { ratePaths } from '../../forecasting/windows/rate-paths.js';
import { FIRST, LAST, stageCourse } from '../../forecasting/windows/stage-draws.js';
import { dayOf, waterOn } from './invented-river.js';

const LENGTH = 330;
/** A 1st of November. */
const START = dayOf('2025-11-01');
const autumnOn = (day: number) => waterOn(day);
const TRACES = 51;

/** Winters without any doubt in them, unless it is asked for. */
function winters(
  celsius: (day: number, trace: number) => number,
  changes: { offset?: number; winterCount?: number; knownTo?: number } = {},
): Ensemble {
  const traces = Array.from({ length: TRACES }, (_, i) =>
    Float64Array.from({ length: LENGTH }, (_, d) => celsius(START + d, i)),
  );
  const offset = new Float64Array(TRACES).fill(changes.offset ?? 0);
  return ensemble(
    'somewhere',
    { firstDay: START, traces, offset },
    changes.winterCount ?? 0,
    changes.knownTo ?? START,
    3,
  );
}

const certain: DevelopmentTable = { ...atlanticSalmon, lotSpread: 0, ownSpread: 0 };
const eggs = (changes: Partial<Eggs> = {}): Eggs => ({
  lot: 'L1',
  table: certain,
  count: 1000,
  fertilised: START + 0.5,
  planted: START + 0.5,
  before: null,
  ...changes,
});
function row(stage: string): StageRow {
  const found = stageRow(certain, stage);
  if (found === undefined) throw new Error(stage);
  return found;
}
const hatch = row('hatch');
const crisp = 'law' in hatch.needs ? hatch.needs.law : undefined;
if (crisp === undefined) throw new Error('hatch has a law');

describe('without doubt about the water', () => {
  it('the median is where the sum of 1/D reaches 1, and first and last where it reaches 1 ∓ 1.645 spreads', () => {
    const days = {
      firstDay: START,
      mean: Float64Array.from({ length: LENGTH }, (_, d) => waterOn(START + d)),
    };
    const { draws } = stageCourse(winters(autumnOn), eggs(), hatch);
    for (const [moments, target] of [
      [draws.first, 1 + FIRST * hatch.eggSpread],
      [draws.median, 1],
      [draws.last, 1 + LAST * hatch.eggSpread],
    ] as const) {
      const exact = whenReached(crisp, days, START + 0.5, target) ?? Number.NaN;
      for (const moment of moments) expect(moment).toBeCloseTo(exact, 2);
    }
  });

  it('a stage that the water never brings is never, not dropped and not NaN', () => {
    const { draws } = stageCourse(
      winters(() => 0),
      eggs(),
      row('button-up'),
    );
    expect([...new Set(draws.median)]).toEqual([Number.POSITIVE_INFINITY]);
    expect(intervalOf(draws.median)).toEqual({ p10: null, p50: null, p90: null });
  });

  it('a stage counted from hatch begins at hatch', () => {
    const feeding: StageRow = {
      stage: 'feeding',
      needs: { after: 'hatch', law: { form: 'power', log10a: Math.log10(472), b: -1.27, alpha: 0 } },
      eggSpread: 0.05,
      validity: { min: 2, max: 12 },
      sources: [],
    };
    const table = { ...certain, stages: [...certain.stages.slice(0, 2), feeding] };
    const { draws, progress } = stageCourse(
      winters(() => 8),
      eggs({ table }),
      feeding,
    );
    const days = daysToStage(crisp, 8) + 472 * 8 ** -1.27;
    expect(draws.median[0]).toBeCloseTo(START + 0.5 + days, 1);
    expect(progress(0, START + 0.5 + daysToStage(crisp, 8) - 1)).toBe(0);
    expect(progress(0, draws.median[0])).toBeCloseTo(1, 3);
  });

  it('a day without a value ends what is known: nothing is gathered after it', () => {
    const { draws } = stageCourse(
      winters((day) => (day === START + 40 ? Number.NaN : 8)),
      eggs(),
      hatch,
    );
    expect(draws.median[0]).toBe(Number.POSITIVE_INFINITY);
  });

  it('eggs that came eyed passed eye-up where they were', () => {
    const before = { days: { firstDay: START - 60, mean: new Float64Array(90).fill(8) }, from: START - 50 };
    const came = eggs({ fertilised: START - 50, planted: START + 0.25, before });
    const { draws } = stageCourse(
      winters(() => 2),
      came,
      row('eye-up'),
    );
    expect(draws.median[0]).toBeCloseTo(START - 50 + daysToStage(crisp, 8) / 2, 2);
    const later = stageCourse(
      winters(() => 2),
      came,
      hatch,
    ).draws.median[0];
    const left = 1 - 50.25 / daysToStage(crisp, 8);
    expect(later).toBeCloseTo(START + 0.25 + left * daysToStage(crisp, 2), 1);
  });
});

describe('the offset of logger and gravel', () => {
  it('of +0.2 °C over 120 days at 0 is 0.022 of the way (computed), and a negative one never cools below freezing', () => {
    const icy = Array.from({ length: 1 }, () => new Float64Array(120));
    const gathered = (offset: number) => {
      const paths = ratePaths({ firstDay: 0, traces: icy, offset: Float64Array.of(offset) }, crisp);
      return paths.sums[120];
    };
    expect(gathered(0.2) - gathered(0)).toBeCloseTo(0.022, 3);
    expect(gathered(-0.2)).toBe(gathered(0));
  });

  it('of 0.2 °C moves hatch by one to three days, of 0.5 °C by four to eight (design page, computed)', () => {
    const thawTo8 = (day: number) => (day < START + 120 ? 0 : 8);
    const at = (offset: number) => stageCourse(winters(thawTo8, { offset }), eggs(), hatch).draws.median[0];
    const still = at(0);
    expect(still - at(0.2)).toBeGreaterThan(1);
    expect(still - at(0.2)).toBeLessThan(3);
    expect(still - at(0.5)).toBeGreaterThan(4);
    expect(still - at(0.5)).toBeLessThan(8);
  });
});

describe('several lots in one box', () => {
  it('are mixed as counting every egg would mix them', () => {
    const early = { first: Float64Array.of(100), median: Float64Array.of(110), last: Float64Array.of(120) };
    const late = { first: Float64Array.of(115), median: Float64Array.of(130), last: Float64Array.of(140) };
    const each = 20_000;
    const eggDays = (of: typeof early, count: number) =>
      Array.from({ length: count }, (_, i) => {
        const z = jStat.normal.inv((i + 0.5) / count, 0, 1);
        const side = z < 0 ? of.median[0] - of.first[0] : of.last[0] - of.median[0];
        return of.median[0] + (z / LAST) * side;
      });
    const all = Float64Array.from([...eggDays(early, 3 * each), ...eggDays(late, each)]).sort();
    const mixed = mixture([
      { draws: early, eggs: 900 },
      { draws: late, eggs: 300 },
    ]);
    expect(mixed.first[0]).toBeCloseTo(sortedQuantile(all, 0.05), 1);
    expect(mixed.median[0]).toBeCloseTo(sortedQuantile(all, 0.5), 1);
    expect(mixed.last[0]).toBeCloseTo(sortedQuantile(all, 0.95), 1);
  });

  it('where one lot never comes to it, the box has no last but still a first', () => {
    const comes = { first: Float64Array.of(100), median: Float64Array.of(110), last: Float64Array.of(120) };
    const never = Float64Array.of(Number.POSITIVE_INFINITY);
    const mixed = mixture([
      { draws: comes, eggs: 500 },
      { draws: { first: never, median: never, last: never }, eggs: 500 },
    ]);
    expect(mixed.first[0]).toBeGreaterThan(100);
    expect(mixed.first[0]).toBeLessThan(105);
    expect(mixed.last[0]).toBe(Number.POSITIVE_INFINITY);
  });

  it('that are alike are as one', () => {
    const one = { first: Float64Array.of(90), median: Float64Array.of(100), last: Float64Array.of(108) };
    const mixed = mixture([
      { draws: one, eggs: 10 },
      { draws: one, eggs: 990 },
    ]);
    expect(mixed.first[0]).toBeCloseTo(90, 1);
    expect(mixed.median[0]).toBeCloseTo(100, 1);
    expect(mixed.last[0]).toBeCloseTo(108, 1);
  });
});

describe('a download that comes in', () => {
  it('would take away what traces differ about up to that day, and nothing else', () => {
    // Filled until day 100 with a doubt of ±0.6 °C, the same water for all after it.
    const doubt = winters((day, trace) => (day < START + 100 ? 2 + (trace - 25) / 40 : 7));
    const paths = eggPaths(eggs(), crisp, pathsOf(doubt, crisp));
    const settled = settledPaths(paths, TRACES, START + 100);
    const now = intervalOf(stageCourse(doubt, eggs(), hatch).draws.median);
    const then = intervalOf(stageCourse(doubt, eggs(), hatch, () => settled).draws.median);
    expect((now.p90 ?? 0) - (now.p10 ?? 0)).toBeGreaterThan(4);
    expect((then.p90 ?? 0) - (then.p10 ?? 0)).toBeLessThan(0.05);
    expect(then.p50).toBeCloseTo(now.p50 ?? 0, 0);
  });
});

describe('draws', () => {
  it('are standard normal, the same for a name and other for another', () => {
    const drawn = normalDraws(603, seedFor(1, 'lot', 'L1'));
    const mean = drawn.reduce((sum, z) => sum + z, 0) / 603;
    const variance = drawn.reduce((sum, z) => sum + z * z, 0) / 603;
    expect(mean).toBeCloseTo(0, 9);
    expect(variance).toBeCloseTo(1, 1);
    expect(normalDraws(603, seedFor(1, 'lot', 'L1'))).toEqual(drawn);
    expect(normalDraws(603, seedFor(1, 'lot', 'L2'))).not.toEqual(drawn);
    expect(normalDraws(603, seedFor(2, 'lot', 'L1'))).not.toEqual(drawn);
  });
});
