import { quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  eggOfStage,
  type HindcastOptions,
  type HindcastRow,
  hindcastRows,
} from '../../../forecasting/hindcast/index.js';
import { atlanticSalmon, type StationDays, stageRow } from '../../../forecasting/index.js';
import { dayOf, redNoise, station, stream } from '../water/invented-network.js';

const noise = [51, 52].map((seed) => redNoise(seed, 0.7, 0.3));
const brook = (day: number) => Math.max(0, 0.8 * stream(day) + 0.4 + noise[0](day));
const span = { from: '2018-07-01', to: '2024-12-31' };
const target = station('brook', brook, { ...span, place: [47.5, -66.1] });
const upper = station('upper', (day) => Math.max(0, stream(day) + noise[1](day)), {
  ...span,
  place: [47.6, -66.1],
});
const lower = station('lower', stream, { ...span, place: [47.4, -66.1] });
const all = [target, upper, lower];

const options: HindcastOptions = {
  cases: ['history', 'late-download', 'under-ice'],
  table: atlanticSalmon,
  stages: ['hatch'],
  fertilised: { month: 11, day: 1 },
  leads: [
    { month: 11, day: 1 },
    { month: 12, day: 15 },
    { month: 3, day: 1 },
  ],
  gapDays: [],
  winters: 'leave-one-out',
  seed: 5,
  traces: 31,
};
const rowsOf = (stations: readonly StationDays[], more: Partial<HindcastOptions> = {}) =>
  hindcastRows(stations, { ...options, ...more });

/** Some days of a record written over. */
function with31(of: StationDays, poisoned: (day: number) => boolean): StationDays {
  const mean = of.days.mean.map((value, d) => (poisoned(of.days.firstDay + d) ? 31 : value));
  return { ...of, days: { ...of.days, mean } };
}

/** What a forecaster could know: everything in a row but what came and how it was scored. */
const said = (rows: readonly HindcastRow[], wanted: Partial<HindcastRow>) =>
  rows
    .filter(
      (row) =>
        row.station === 'brook' &&
        row.winter === wanted.winter &&
        (wanted.case === undefined || row.case === wanted.case) &&
        (wanted.lead === undefined || row.lead.month === wanted.lead.month),
    )
    .map(({ p10, p50, p90, winters, reference }) => ({ p10, p50, p90, winters, reference }));

const HIDDEN = 2021;
const seasonEnd = dayOf('2022-09-01');
const leads = [
  [11, '2021-11-01'],
  [12, '2021-12-15'],
  [3, '2022-03-01'],
] as const;

describe('nothing leaks from the hidden days', () => {
  const clean = rowsOf(all).rows;

  it.each(leads)('history, lead in month %i: own days after it are poisoned', (month, from) => {
    const poisoned = with31(target, (day) => day >= dayOf(from) && day < seasonEnd);
    const wanted = { winter: HIDDEN, case: 'history', lead: { month, day: 1 } } as const;
    const rows = said(rowsOf([poisoned], { cases: ['history'] }).rows, wanted);
    // poisoned water hatches at once: only at planting is the stage still to come
    if (month === 11) expect(rows).toHaveLength(1);
    const hidden = said(rowsOf([target], { cases: ['history'] }).rows, wanted);
    expect(hidden).toHaveLength(1);
    if (rows.length > 0) expect(rows).toEqual(hidden);
  });

  it.each(leads)(
    'under-ice, lead in month %i: own days from planting, the others from the lead on',
    (month, from) => {
      const stations = [
        with31(target, (day) => day >= dayOf('2021-11-01') && day < seasonEnd),
        ...[upper, lower].map((of) => with31(of, (day) => day >= dayOf(from) && day < seasonEnd)),
      ];
      const wanted = { winter: HIDDEN, case: 'under-ice', lead: { month, day: 1 } } as const;
      const hidden = said(clean, wanted);
      expect(hidden).toHaveLength(1);
      expect(said(rowsOf(stations, { cases: ['under-ice'] }).rows, wanted)).toEqual(hidden);
    },
  );

  it('late-download: own days after planting', () => {
    const poisoned = with31(target, (day) => day >= dayOf('2021-11-01') && day < seasonEnd);
    const wanted = { winter: HIDDEN, case: 'late-download', lead: { month: 11, day: 1 } } as const;
    const hidden = said(clean, wanted);
    expect(hidden).toHaveLength(1);
    expect(said(rowsOf([poisoned, upper, lower]).rows, wanted)).toEqual(hidden);
  });

  it('the poison is felt where it is known: in other winters, and in the neighbours of a late download', () => {
    const poisoned = with31(target, (day) => day >= dayOf('2021-11-01') && day < seasonEnd);
    const rows = rowsOf([poisoned, upper, lower]).rows;
    expect(said(rows, { winter: 2020 })).not.toEqual(said(clean, { winter: 2020 }));
    const bad = with31(upper, (day) => day >= dayOf('2022-01-01') && day < dayOf('2022-02-01'));
    const late = { winter: HIDDEN, case: 'late-download' } as const;
    expect(said(rowsOf([target, bad]).rows, late)).not.toEqual(said(rowsOf([target, upper]).rows, late));
  });

  it.each(leads.slice(1))('visits, lead in month %i: nothing is seen of the days after it', (month, from) => {
    const asked = { cases: ['under-ice'], visits: true } as const;
    const poisoned = (of: StationDays) => with31(of, (day) => day >= dayOf(from) && day < seasonEnd);
    const wanted = { winter: HIDDEN, case: 'under-ice', lead: { month, day: 1 } } as const;
    const seen = said(rowsOf(all, asked).rows, wanted);
    expect(seen).toHaveLength(1);
    expect(said(rowsOf(all.map(poisoned), asked).rows, wanted)).toEqual(seen);
    expect(seen).not.toEqual(said(clean, wanted));
  });

  it('past only: nothing of the years to come, of any station', () => {
    const future = (of: StationDays) => with31(of, (day) => day >= seasonEnd);
    const past = { winters: 'past-only', cases: ['history', 'under-ice'] } as const;
    const rows = said(rowsOf(all, past).rows, { winter: HIDDEN });
    expect(rows.length).toBeGreaterThan(3);
    expect(said(rowsOf(all.map(future), past).rows, { winter: HIDDEN })).toEqual(rows);
    expect(said(clean, { winter: HIDDEN })).not.toEqual(rows);
  });
});

describe('the rows', () => {
  const { rows, notes } = rowsOf(all);

  it('are the same for the same question and for any order of the stations', () => {
    expect(rowsOf(all).rows).toEqual(rows);
    expect(rowsOf([lower, target, upper]).rows).toEqual(rows);
  });

  it('in two parts are together the whole', () => {
    const parts = [0, 1].flatMap((part) => hindcastRows(all, options, { part, of: 2 }).rows);
    const key = (row: HindcastRow) => `${row.station} ${row.winter} ${row.case} ${row.lead.month}`;
    const sorted = (of: readonly HindcastRow[]) => [...of].sort((a, b) => (key(a) < key(b) ? -1 : 1));
    expect(sorted(parts)).toEqual(sorted(rows));
  });

  it('hold each whole winter, with the date that the law summed over its measured days gives', () => {
    expect(new Set(rows.map(({ winter }) => winter))).toEqual(new Set([2018, 2019, 2020, 2021, 2022, 2023]));
    expect(notes).toEqual([]);
    for (const winter of [2019, 2022]) {
      let left = 1;
      let at = 0;
      for (let day = dayOf(`${winter}-11-01`); left > 0; day++, at++) {
        // Crisp 1981 (coefficients: memory), 1 November whole
        left -= 1 / 10 ** (5.1908 - 2.6562 * Math.log10(brook(day) + 11));
      }
      const observed =
        rows.find((row) => row.station === 'brook' && row.winter === winter)?.observed ?? Number.NaN;
      expect(observed).toBeGreaterThan(at - 1);
      expect(observed).toBeLessThanOrEqual(at);
    }
  });

  it('can be of the last hatch and the first emergence, which lifting waits for', () => {
    const stages = ['hatch', 'last-hatch', 'emergence', 'first-emergence'];
    const found = rowsOf([target, lower], {
      cases: ['late-download'],
      leads: [{ month: 3, day: 1 }],
      stages,
    });
    const at = (stage: string) =>
      found.rows.find((row) => row.station === 'brook' && row.winter === 2019 && row.stage === stage);
    const spread = stageRow(atlanticSalmon, 'hatch')?.eggSpread ?? Number.NaN;
    // 95 % of eggs: 1.645 standard deviations of progress more than the median egg needs.
    let left = 1 + 1.644854 * spread;
    let days = 0;
    for (let day = dayOf('2019-11-01'); left > 0; day++, days++)
      left -= 1 / 10 ** (5.1908 - 2.6562 * Math.log10(brook(day) + 11));
    const last = at('last-hatch');
    expect(last?.observed).toBeGreaterThan(days - 1);
    expect(last?.observed).toBeLessThanOrEqual(days);
    expect(last?.p50).toBeGreaterThan(at('hatch')?.p50 ?? Number.NaN);
    expect(at('first-emergence')?.p50).toBeLessThan(at('emergence')?.p50 ?? Number.NaN);
    expect(Math.abs((last?.p50 ?? 0) - (last?.observed ?? 999))).toBeLessThan(3);
    expect(eggOfStage(atlanticSalmon, 'last-smolt')).toBeNull();
    expect(eggOfStage(atlanticSalmon, 'last-hatch')).toEqual({ stage: 'hatch', egg: 'last' });
  });

  it('the plain ensemble is the median of the other winters spliced on at the lead date', () => {
    const hatch = (course: (day: number) => number, from: number) => {
      let left = 1;
      for (let d = 0; ; d++) {
        const rate = 1 / 10 ** (5.1908 - 2.6562 * Math.log10(course(from + d) + 11));
        if (rate >= left) return d + left / rate;
        left -= rate;
      }
    };
    const lead = dayOf('2021-12-15');
    const answers = [2018, 2019, 2020, 2022, 2023]
      .map((year) => {
        const shift = dayOf(`${year}-11-01`) - dayOf('2021-11-01');
        return hatch((day) => brook(day < lead ? day : day + shift), dayOf('2021-11-01'));
      })
      .sort((a, b) => a - b);
    const row = rows.find(
      (of) => of.station === 'brook' && of.winter === 2021 && of.case === 'history' && of.lead.month === 12,
    );
    expect(row?.reference.ensemble).toBeCloseTo(quantileSorted(answers, 0.5), 1);
  });

  it('a neighbour that says exactly the same leaves a late download next to nothing to err by', () => {
    const twin = station('twin', brook, { ...span, place: [47.51, -66.1] });
    for (const row of rowsOf([target, twin], { cases: ['late-download'] }).rows)
      expect(Math.abs(row.p50 - (row.observed ?? Number.NaN))).toBeLessThan(0.5);
  });

  it('a record that ends before the stage is a row without a date, not dropped', () => {
    const cold = station('cold', () => 0, { from: '2018-07-01', to: '2021-06-30' });
    const { rows: never } = rowsOf([cold], { stages: ['emergence'], cases: ['history'] });
    expect(never.length).toBeGreaterThan(0);
    for (const row of never) {
      expect(row.observed).toBeNull();
      expect(row.crps).toBeNull();
      expect(row.p50).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it('a stage that had come by the lead date is asked under the ice alone, where nobody could know', () => {
    const warm = station('warm', (day) => 9 + noise[0](day), span);
    const { rows: passed } = rowsOf([warm, upper], { leads: [{ month: 3, day: 1 }] });
    const own = passed.filter((row) => row.station === 'warm');
    expect(new Set(own.map((row) => row.case))).toEqual(new Set(['under-ice']));
    expect(own.every((row) => row.passed && (row.observed ?? Number.NaN) < 120)).toBe(true);
  });

  it('one winter only, or none, is said', () => {
    const one = station('one', brook, { from: '2020-07-01', to: '2021-09-30' });
    const none = station('none', brook, { from: '2020-12-01', to: '2021-09-30' });
    expect(rowsOf([one, none]).notes).toEqual([
      { kind: 'no-whole-winter', station: 'none', winter: null },
      { kind: 'one-winter', station: 'one', winter: 2020 },
    ]);
    for (const row of rowsOf([one]).rows)
      for (const value of [row.p10, row.p50, row.p90]) expect(value).not.toBeNaN();
  });
});

describe('gaps', () => {
  const gaps = { cases: ['gaps'], gapDays: [7, 30, 120] } as const;
  const hidden = rowsOf(all, gaps).gaps;

  it('have every length, from November to April, of days that were measured', () => {
    expect(new Set(hidden.map(({ days }) => days))).toEqual(new Set([7, 30, 120]));
    expect(new Set(hidden.map(({ from }) => new Date(from * 86_400_000).getUTCMonth() + 1))).toEqual(
      new Set([11, 12, 1, 2, 3, 4]),
    );
    for (const row of hidden) expect(row.n).toBe(row.days);
  });

  it('are filled better than by a straight line', () => {
    const sum = (days: number, of: 'own' | 'plain') =>
      hidden.filter((row) => row.days === days).reduce((total, row) => total + row.line[of], 0);
    for (const days of [30, 120]) expect(sum(days, 'own')).toBeLessThan(0.5 * sum(days, 'plain'));
  });

  it('the straight line is exact where the water is straight', () => {
    // a ramp of 0.01 °C a day, and a neighbour that follows it loosely
    const start = dayOf(span.from);
    const ramp = station('ramp', (day) => 3 + 0.002 * (day - start), span);
    const near = station('near', (day) => 3 + 0.002 * (day - start) + noise[0](day), span);
    for (const row of rowsOf([ramp, near], gaps).gaps.filter((of) => of.station === 'ramp')) {
      expect(row.line.n).toBe(row.days);
      expect(row.line.plain).toBeLessThan(1e-12);
    }
  });

  it('nothing of the hidden stretch is used to fill it', () => {
    const first = dayOf('2021-12-01');
    const poisoned = with31(target, (day) => day >= first && day < first + 30);
    const row = (stations: readonly StationDays[]) =>
      rowsOf(stations, gaps).gaps.find((of) => of.station === 'brook' && of.days === 30 && of.from === first);
    const clean = row(all);
    const other = row([poisoned, upper, lower]);
    expect(clean?.width).toBeGreaterThan(0);
    expect(other?.width).toBe(clean?.width);
  });
});
