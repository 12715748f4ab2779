import { describe, expect, it } from 'vitest';
import { Origin, waterAt } from '../../../forecasting/index.js';
import {
  asked,
  between,
  codes,
  cut,
  dayOf,
  daysFrom,
  meanOf,
  station,
  stream,
  widthOf,
} from './invented-network.js';

const AHEAD: [string, string] = ['2026-02-16', '2026-06-30'];
const monthly = [0.5, 0.5, 1, 3, 7, 11, 14, 14, 11, 7, 3.5, 1.5];

const yearOf = (day: number) => new Date(day * 86_400_000).getUTCFullYear();

describe('where the days to come take their water from', () => {
  it("the station's own past winters first", () => {
    const water = waterAt(asked(station('brook', stream, { to: '2026-02-15' }), []));
    expect(water.projection).toEqual({
      kind: 'own-history',
      winters: [2018, 2019, 2020, 2021, 2022, 2023, 2024],
    });
    expect(water.winters).toBe(7);
    const usual = daysFrom('2026-05-01', '2026-05-31').map((day) =>
      meanOf([1, 2, 3, 4, 5, 6, 7].map((back) => stream(Math.round(day - 365.25 * back)))),
    );
    // far from today's departure the forecast is what is usual, give or take the mean of seven winters' weather
    expect(
      Math.abs(meanOf(cut(water, water.days.mean, '2026-05-01', '2026-05-31')) - meanOf(usual)),
    ).toBeLessThan(0.8);
  });

  it("then the neighbours' past winters through the relation of this autumn", () => {
    const brook = station('brook', (day) => 0.8 * stream(day) + 0.5, {
      from: '2025-09-10',
      to: '2026-02-15',
    });
    const water = waterAt(asked(brook, [station('reporting', stream, { to: '2026-02-15' })]));
    expect(water.projection).toMatchObject({ kind: 'neighbour-history', stations: ['reporting'] });
    expect(water.winters).toBe(7);
    expect(codes(water)).toContain('neighbour-history');
    expect(cut(water, water.days.origin, ...AHEAD)).not.toContain(Origin.none);
  });

  it('then the seasonal curve that was stated, on its monthly values', () => {
    const brook = station('brook', stream, { from: '2026-01-20', to: '2026-02-15' });
    const water = waterAt(asked(brook, [], { curve: { monthly, spread: 1 } }));
    expect(water.projection).toEqual({ kind: 'stated-curve' });
    expect(codes(water)).toContain('stated-curve');
    // five months on nothing is left of today's departure
    const [july] = cut(water, water.days.mean, '2026-07-15', '2026-07-15');
    expect(july).toBeGreaterThan(13);
    expect(july).toBeLessThan(15);
    expect(water.winters).toBe(0);
  });

  it('past winters that lack the cold months take those from the stated curve, and only those', () => {
    const dry = (day: number) => between(day, `${yearOf(day)}-01-05`, `${yearOf(day)}-05-05`);
    const brook = station('brook', (day) => (dry(day) ? Number.NaN : stream(day)), { to: '2025-12-31' });
    const ask = { asOf: dayOf('2025-12-31') };
    const without = waterAt(asked(brook, [], ask));
    expect(cut(without, without.days.mean, '2026-03-05', '2026-03-05')).toEqual([Number.NaN]);
    const monthlyOdd = [3, 3, 3, 3, 20, 20, 20, 20, 20, 20, 20, 3];
    const water = waterAt(asked(brook, [], { ...ask, curve: { monthly: monthlyOdd, spread: 1 } }));
    const [march, july] = ['2026-03-05', '2026-07-15'].map((day) => cut(water, water.days.mean, day, day)[0]);
    expect(march).toBeCloseTo(3, 0);
    expect(july).toBeLessThan(16);
    expect(water.winters).toBe(7);
  });

  it('then nothing, and it says so rather than guess', () => {
    const water = waterAt(asked(station('brook', stream, { from: '2026-01-20', to: '2026-02-15' }), []));
    expect(water.projection).toEqual({ kind: 'none' });
    expect(codes(water)).toContain('no-water');
    const july = cut(water, water.days.origin, '2026-07-01', '2026-07-31');
    expect(july).toEqual(july.map(() => Origin.none));
    expect(cut(water, water.days.mean, '2026-07-15', '2026-07-15')).toEqual([Number.NaN]);
  });

  it('a neighbour whose past winters share no day with it is named, with what would make them count', () => {
    const brook = station('brook', stream, { from: '2025-10-28', to: '2026-02-15' });
    const weir = (to: string) => station('weir', stream, { to });
    const told = (to: string) =>
      waterAt(asked(brook, [weir(to)])).remarks.filter(({ code }) => code === 'history-not-shared');
    const figures = { station: 'brook', other: 'weir', least: 20 };
    expect(told('2025-09-30')).toEqual([{ code: 'history-not-shared', with: { ...figures, shared: 0 } }]);
    expect(told('2025-11-05')).toEqual([{ code: 'history-not-shared', with: { ...figures, shared: 9 } }]);
    expect(told('2026-02-15')).toEqual([]);
  });

  it('a station of which nothing at all is known has no traces', () => {
    const water = waterAt(
      asked(
        station('brook', () => Number.NaN),
        [],
      ),
    );
    expect(water.traces).toEqual([]);
    expect(water.projection).toEqual({ kind: 'none' });
    expect(water.lastMeasured).toBeNull();
  });

  it('a station without a day of its own borrows the nearest stream as it stands, and says how unsure that is', () => {
    const nowhere = station('brook', () => Number.NaN, { place: [47.5, -66.1] });
    const water = waterAt(
      asked(nowhere, [
        station('near', stream, { place: [47.51, -66.1] }),
        station('far', (day) => stream(day) + 2, { place: [48.9, -66.1] }),
      ]),
    );
    expect(codes(water)).toContain('as-it-stands');
    expect(water.stretches[0].sources.map((source) => source.station)).toEqual(['near']);
    expect(meanOf(cut(water, water.days.spread, '2025-11-05', '2026-02-10'))).toBeGreaterThan(1);
  });
});

describe("today's departure", () => {
  const usual = station('brook', stream, { to: '2026-05-10' });
  const warm = station('brook', (day) => stream(day) + (day > dayOf('2026-04-10') ? 3 : 0), {
    to: '2026-05-10',
  });
  const of = (target: typeof usual) => waterAt(asked(target, [], { asOf: dayOf('2026-05-10') }));

  it('is carried into tomorrow and fades', () => {
    const apart = (from: string, to: string) =>
      meanOf(cut(of(warm), of(warm).days.mean, from, to)) -
      meanOf(cut(of(usual), of(usual).days.mean, from, to));
    const tomorrow = apart('2026-05-11', '2026-05-13');
    const later = apart('2026-07-20', '2026-07-30');
    expect(tomorrow).toBeGreaterThan(1);
    expect(tomorrow).toBeLessThan(3);
    expect(later).toBeGreaterThanOrEqual(0);
    expect(later).toBeLessThan(0.5 * tomorrow);
  });
});

describe('few winters', () => {
  const since = (from: string) => waterAt(asked(station('brook', stream, { from, to: '2026-02-15' }), []));

  it('one past winter gives an answer, counts as one and is wide', () => {
    const water = since('2024-09-02');
    expect(water.winters).toBe(1);
    expect(water.projection).toEqual({ kind: 'own-history', winters: [2024] });
    expect(widthOf(water, ...AHEAD)).toBeGreaterThan(widthOf(since('2018-09-02'), ...AHEAD));
  });

  it('no finite day is lost to a NaN, however few winters there are', () => {
    for (const from of ['2024-09-02', '2023-09-02', '2022-09-02']) {
      const water = since(from);
      expect(water.traces.every((trace) => trace.every(Number.isFinite))).toBe(true);
      expect(water.days.spread.every(Number.isFinite)).toBe(true);
    }
  });
});
