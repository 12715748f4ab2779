import { describe, expect, it } from 'vitest';
import {
  atlanticSalmon,
  type BoxForecast,
  type BoxInput,
  type DevelopmentTable,
  type Forecast,
  forecast,
  type LiftingQuestion,
  liftingPlan,
  USUAL_LEVELS,
} from '../../../forecasting/index.js';
import { box, dayOf, isoOf, lot, river, season } from '../invented-river.js';

const STATIONS = [
  river({ station: 'S', from: '2019-09-01', to: '2026-04-20' }),
  river({ station: 'T', from: '2019-09-01', to: '2026-04-20', warmer: 0.6 }),
];
const PLANTED = dayOf('2025-11-01') + 0.5;

function boxAt(name: string, site: string, station: string, of = 'L1'): BoxInput {
  return box({
    box: name,
    site,
    stations: [station],
    fills: [{ lot: of, eggs: 1000, planted: PLANTED }],
  });
}

function forecastOf(
  boxes: readonly BoxInput[],
  table: DevelopmentTable = atlanticSalmon,
  asOf = '2026-04-20',
): Forecast {
  return forecast(
    season({
      asOf: dayOf(asOf),
      stations: STATIONS,
      lots: [lot({ table }), lot({ lot: 'L2', table, fertilised: PLANTED + 6 })],
      boxes,
    }),
  );
}

const question = (of: Forecast, changes: Partial<LiftingQuestion> = {}): LiftingQuestion => ({
  forecast: of,
  rule: 'before-emergence',
  levels: USUAL_LEVELS,
  blocked: [],
  boxesADay: null,
  trips: [],
  over: new Set(),
  ...changes,
});

const TWO_SITES = [
  boxAt('A1', 'upper', 'S'),
  boxAt('A2', 'upper', 'S'),
  box({
    box: 'B1',
    site: 'lower',
    stations: ['T'],
    fills: [
      { lot: 'L1', eggs: 600, planted: PLANTED },
      { lot: 'L2', eggs: 400, planted: PLANTED + 6 },
    ],
  }),
];

/** Standard normal distribution function, Abramowitz & Stegun 26.2.17 (error below 7.5e-8). */
function phi(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** The share come by a moment, from the 5 %, 50 % and 95 % eggs' own moments, written anew here. */
function share(first: number, median: number, last: number, moment: number): number {
  const z =
    moment < median
      ? (-1.6448536 * (median - moment)) / (median - first)
      : (1.6448536 * (moment - median)) / (last - median);
  return phi(z);
}

/** One draw of one box on a day: what is still in it and what is out of the gravel. */
function enumerated(of: BoxForecast, k: number, day: number): { still: number; out: number } {
  let [still, out] = [0, 0];
  for (const { eggs, draws } of of.lots) {
    if (draws === undefined) throw new Error('no draws');
    const { hatch, emergence } = draws.stages;
    const later = draws.leaves[k];
    const weight = eggs / of.eggs;
    still +=
      weight * (1 - share(hatch.first[k] + later, hatch.median[k] + later, hatch.last[k] + later, day + 0.5));
    out += weight * share(emergence.first[k], emergence.median[k], emergence.last[k], day + 0.5);
  }
  return { still, out };
}

describe('the plan against every possible winter counted one by one', () => {
  const of = forecastOf(TWO_SITES);
  const plan = liftingPlan(question(of));
  const draws = of.boxes[0].lots[0].draws?.leaves.length ?? 0;

  it('gives each box, each site and the season the shares and chances that counting gives', () => {
    expect(draws).toBe(603);
    for (const day of plan.days.filter((_, i) => i % 7 === 0).map((one) => one.day)) {
      const counted = of.boxes.map((one) => Array.from({ length: draws }, (_, k) => enumerated(one, k, day)));
      const good = counted.map((all) => all.map(({ still, out }) => still <= 0.02 && out <= 0.05));
      for (const [b, one] of plan.boxes.entries()) {
        const at = one.days.find((candidate) => candidate.day === day);
        const mean = (of: 'still' | 'out') => counted[b].reduce((sum, draw) => sum + draw[of], 0) / draws;
        expect(at?.stillInBox.mean).toBeCloseTo(mean('still'), 4);
        expect(at?.emerged.mean).toBeCloseTo(mean('out'), 4);
        const sorted = counted[b].map(({ out }) => out).sort((x, y) => x - y);
        const p90 = sorted[541] + 0.8 * (sorted[542] - sorted[541]);
        expect(at?.emerged.p90).toBeCloseTo(p90, 4);
        expect(Math.abs((at?.chance ?? 9) - good[b].filter(Boolean).length / draws)).toBeLessThan(
          1.5 / draws,
        );
      }
      const upper = Array.from({ length: draws }, (_, k) => good[0][k] && good[1][k]);
      const all = upper.map((both, k) => both && good[2][k]);
      const site = plan.sites.find(({ site }) => site === 'upper')?.days.find((one) => one.day === day);
      const whole = plan.days.find((one) => one.day === day);
      expect(Math.abs((site?.chance ?? 9) - upper.filter(Boolean).length / draws)).toBeLessThan(1.5 / draws);
      expect(Math.abs((whole?.chance ?? 9) - all.filter(Boolean).length / draws)).toBeLessThan(1.5 / draws);
    }
  });

  it('recommends days on which the joint chance is what the same winters give together', () => {
    const planned = new Map(plan.boxes.map((one) => [one.box, one.planned]));
    let both = 0;
    for (let k = 0; k < draws; k++) {
      const every = of.boxes.every((one) => {
        const { still, out } = enumerated(one, k, planned.get(one.box) ?? 0);
        return still <= 0.02 && out <= 0.05;
      });
      if (every) both++;
    }
    expect(Math.abs(plan.chance - both / draws)).toBeLessThan(2.5 / draws);
    // Chances of boxes in one river hang together: multiplying them would say less than is so.
    const product = plan.boxes.reduce(
      (all, one) => all * (one.days.find(({ day }) => day === one.planned)?.chance ?? 0),
      1,
    );
    expect(plan.chance).toBeGreaterThan(product);
  });

  it('is no worse than any single day, or any pair of days for the two sites', () => {
    const worth = (upper: number, lower: number) => {
      let good = 0;
      for (let k = 0; k < draws; k++) {
        const days = [upper, upper, lower];
        if (
          of.boxes.every((one, b) => {
            const { still, out } = enumerated(one, k, days[b]);
            return still <= 0.02 && out <= 0.05;
          })
        )
          good++;
      }
      return good / draws;
    };
    const mid = plan.recommended[0].day;
    for (const upper of [mid - 6, mid - 3, mid, mid + 3, mid + 6])
      for (const lower of [mid - 6, mid, mid + 6])
        expect(worth(upper, lower)).toBeLessThanOrEqual(plan.chance + 0.04);
  });

  it('costs alevins earlier and fry later', () => {
    const at = (by: number) => plan.shifts.find((shift) => shift.by === by);
    expect(at(-7)?.stillInBox).toBeGreaterThan(at(0)?.stillInBox ?? 0);
    expect(at(7)?.emerged).toBeGreaterThan(at(0)?.emerged ?? 0);
    expect(at(0)?.chance).toBeCloseTo(plan.chance, 6);
  });
});

describe('how the crew works', () => {
  const many = ['a', 'b', 'c'].flatMap((site) =>
    [1, 2].map((n) => boxAt(`${site}${n}`, site, site === 'c' ? 'T' : 'S')),
  );
  const of = forecastOf(many);

  it('never lifts more boxes than the limit on a day, and keeps a site together where it fits', () => {
    const plan = liftingPlan(question(of, { boxesADay: 2 }));
    expect(plan.recommended.map(({ boxes }) => boxes.length)).toEqual([2, 2, 2]);
    for (const { sites } of plan.recommended) expect(sites).toHaveLength(1);
    const one = liftingPlan(question(of, { boxesADay: 1 }));
    expect(one.recommended).toHaveLength(6);
  });

  it('keeps the sites of one trip on one day', () => {
    const plan = liftingPlan(question(of, { trips: [['a', 'c']], boxesADay: 4 }));
    const day = (name: string) => plan.boxes.find(({ box }) => box === name)?.planned;
    expect(day('a1')).toBe(day('c2'));
    expect(plan.recommended.every(({ boxes }) => boxes.length <= 4)).toBe(true);
  });

  it('never recommends a blocked day', () => {
    const free = liftingPlan(question(of)).recommended[0].day;
    const blocked = [{ site: null, from: free - 2, to: free + 2, reason: 'high water' }];
    const plan = liftingPlan(question(of, { blocked }));
    for (const { day } of plan.recommended) expect(day < free - 2 || day > free + 2).toBe(true);
    expect(plan.days.find(({ day }) => day === free)?.blocked).toBe('high water');
    expect(plan.free).toBeGreaterThanOrEqual(plan.chance);
  });

  it('says so where a blocked-day list blocks every day', () => {
    const blocked = [{ site: null, from: 0, to: 99_999, reason: 'no permit' }];
    const plan = liftingPlan(question(of, { blocked }));
    expect(plan.recommended).toEqual([]);
    expect(plan.without).toHaveLength(6);
    expect(plan.chance).toBe(0);
    expect(plan.free).toBeGreaterThan(0.3);
  });

  it('gives the least bad days where no day keeps both levels', () => {
    const plan = liftingPlan(question(of, { levels: { stillInBox: 0, emerged: 0 } }));
    expect(plan.chance).toBe(0);
    expect(plan.recommended.length).toBeGreaterThan(0);
    const usual = liftingPlan(question(of)).recommended[0].day;
    expect(Math.abs(plan.recommended[0].day - usual)).toBeLessThan(12);
  });

  it('leaves out boxes that are over, and lifts later under the rule after emergence', () => {
    const plan = liftingPlan(question(of, { over: new Set(['a1']) }));
    expect(plan.left).toEqual([{ box: 'a1', site: 'a', why: 'over' }]);
    const after = liftingPlan(question(of, { rule: 'after-emergence' }));
    expect(after.recommended[0].day).toBeGreaterThan(plan.recommended[0].day + 10);
    const planned = after.boxes[0].days.find(({ day }) => day === after.boxes[0].planned);
    expect(planned?.emerged.mean).toBeGreaterThan(0.95);
  });

  it('plans on the stage a table has where it names no emergence, and alone on hatch where it names none after', () => {
    const stages = (...names: string[]) => ({
      ...atlanticSalmon,
      id: 'own',
      stages: atlanticSalmon.stages.filter(({ stage }) => names.includes(stage)),
    });
    const button = liftingPlan(question(forecastOf(many, stages('eye-up', 'hatch', 'button-up'))));
    expect(button.boxes[0].stage).toBe('button-up');
    const hatch = liftingPlan(question(forecastOf(many, stages('eye-up', 'hatch'))));
    expect(hatch.boxes[0].stage).toBeNull();
    expect(hatch.recommended.length).toBeGreaterThan(0);
    const law = atlanticSalmon.stages.flatMap(({ needs }) => ('law' in needs ? [needs] : []))[0];
    const eyeUp = { ...atlanticSalmon.stages[0], needs: law };
    const none = liftingPlan(question(forecastOf(many, { ...atlanticSalmon, id: 'own', stages: [eyeUp] })));
    expect(none.recommended).toEqual([]);
    expect(none.left.every(({ why }) => why === 'no-forecast')).toBe(true);
  });

  it('gives the same answer to the same question, in whatever order boxes stand', () => {
    const turned = liftingPlan(question({ ...of, boxes: [...of.boxes].reverse() }));
    const straight = liftingPlan(question(of));
    expect(turned.chance).toBeCloseTo(straight.chance, 9);
    expect(turned.recommended.map(({ day }) => day)).toEqual(straight.recommended.map(({ day }) => day));
  });
});

describe('a box checked and put back', () => {
  const boxes = [boxAt('A1', 'upper', 'S'), boxAt('A2', 'upper', 'S'), boxAt('C1', 'lower', 'T')];
  const ask = (
    checks: readonly { box: string; day: number; alive: number; empty: number | null }[],
    asOf: string,
  ) => forecast(season({ asOf: dayOf(asOf), stations: STATIONS, lots: [lot()], boxes, checks }));
  const hatchOf = (of: Forecast, at = 0) =>
    of.boxes[at].lots[0].windows.find(({ stage }) => stage === 'hatch')?.median.p50 ?? 0;
  const before = ask([], '2026-04-20');
  const day = Math.floor(hatchOf(before)) + 12;

  it('moves hatch, leaving and the plan later when many are still there, and earlier when few are', () => {
    const asOf = isoOf(day);
    const usual = ask([], asOf);
    const many = ask([{ box: 'A1', day, alive: 700, empty: 100 }], asOf);
    const few = ask([{ box: 'A1', day, alive: 4, empty: 800 }], asOf);
    expect(hatchOf(many)).toBeGreaterThan(hatchOf(few));
    const dayOfPlan = (of: Forecast) => liftingPlan(question(of)).recommended[0].day;
    expect(dayOfPlan(many)).toBeGreaterThan(dayOfPlan(few));
    expect(dayOfPlan(many)).toBeGreaterThanOrEqual(dayOfPlan(usual));
    // The same winter in the other water: it moves too, and not by more.
    expect(hatchOf(many, 2)).toBeGreaterThanOrEqual(hatchOf(few, 2));
  });

  it('is not known before the day it was made, and bears on nothing where the box is unknown', () => {
    const check = { box: 'A1', day, alive: 700, empty: 100 };
    expect(ask([check], '2026-04-20')).toEqual(before);
    expect(ask([{ ...check, box: 'nowhere' }], isoOf(day))).toEqual(ask([], isoOf(day)));
  });
});
