import { describe, expect, it } from 'vitest';
import { Origin, type StationDays, waterAt } from '../../../forecasting/index.js';
import {
  asked,
  codes,
  cut,
  dayOf,
  daysFrom,
  meanOf,
  redNoise,
  springs,
  station,
  stream,
} from './invented-network.js';

const noise = [41, 42, 43, 44].map((seed) => redNoise(seed, 0.7, 0.3));
const brook = (day: number) => Math.max(0, 0.8 * stream(day) + 0.4 + noise[0](day));
const target = station('brook', brook, { to: '2025-12-01' });
const named = (name: string, of: (day: number) => number) => station(name, of);
const upper = named('upper', (day) => Math.max(0, stream(day) + noise[1](day)));
const lower = named('lower', (day) => Math.max(0, 1.1 * stream(day) + noise[2](day)));
const third = (day: number) => Math.max(0, 0.9 * stream(day) + noise[3](day));
const since = dayOf('2025-12-15');

/** Root mean square error of the filled days of this winter. */
function error(neighbours: readonly StationDays[]): number {
  const water = waterAt(asked(target, neighbours, { asOf: dayOf('2026-04-30') }));
  const days = daysFrom('2025-12-02', '2026-04-30');
  return Math.sqrt(meanOf(days.map((day) => (water.days.mean[day - water.days.firstDay] - brook(day)) ** 2)));
}

describe('a neighbour that goes bad this winter', () => {
  const good = error([upper, lower, named('third', third)]);
  const twoGood = error([upper, lower]);
  const bad: [string, (day: number) => number][] = [
    ['stuck at about 12 °C', (day) => 12 + 0.05 * Math.sin(day)],
    ['shifted by 5 °C', (day) => third(day) + 5],
    ['read in °F', (day) => 32 + 1.8 * third(day)],
  ];
  it.each(bad)('%s does not ruin the answer, and is said', (_, gone) => {
    const neighbours = [upper, lower, named('third', (day) => (day < since ? third(day) : gone(day)))];
    expect(error(neighbours)).toBeLessThan(1.3 * Math.max(good, twoGood) + 0.1);
    const water = waterAt(asked(target, neighbours, { asOf: dayOf('2026-04-30') }));
    expect(water.remarks.find(({ code }) => code === 'neighbour-doubted')?.with).toMatchObject({
      station: 'third',
    });
  });

  it('one that was always a day late is merely a neighbour that errs a little more', () => {
    const late = named('third', (day) => third(day - 1));
    expect(error([upper, lower, late])).toBeLessThan(1.15 * twoGood);
  });

  it('one replaced half-way by a warmer place errs in its cross-validation and loses its weight', () => {
    const moved = named('third', (day) => (day < dayOf('2022-09-01') ? third(day) : springs(day) + 2));
    const water = waterAt(asked(target, [upper, lower, moved]));
    const weight = (name: string) =>
      water.stretches[0].sources.find(({ station: s }) => s === name)?.weight ?? 0;
    expect(weight('third')).toBeLessThan(0.1);
    expect(weight('upper') + weight('lower')).toBeGreaterThan(0.9);
  });

  it('one that never changes (below a dam, or stuck for ever) is no candidate', () => {
    const water = waterAt(asked(target, [named('dam', () => 4)]));
    expect(water.stretches).toEqual([]);
    expect(water.projection.kind).toBe('own-history');
  });
});

describe('the same logger under another name', () => {
  it('is said', () => {
    const water = waterAt(asked(target, [named('copy', brook), upper]));
    expect(water.remarks.find(({ code }) => code === 'same-logger')?.with).toEqual({
      station: 'brook',
      as: 'copy',
    });
    expect(codes(waterAt(asked(target, [upper, lower])))).not.toContain('same-logger');
  });
});

describe('little to go by', () => {
  it('coordinates are not needed', () => {
    const nowhere = (of: StationDays): StationDays => ({ ...of, latitude: null, longitude: null });
    const placed = waterAt(asked(target, [upper, lower]));
    const water = waterAt(asked(nowhere(target), [upper, lower].map(nowhere)));
    expect(water.days.mean).toEqual(placed.days.mean);
  });

  it('one autumn of its own beside a long neighbour: learnt from this season alone, and said', () => {
    const young = station('brook', brook, { from: '2025-09-15', to: '2025-12-01' });
    const water = waterAt(asked(young, [upper]));
    expect(codes(water)).toContain('this-season-only');
    const days = cut(water, water.days.origin, '2025-12-02', '2026-02-15');
    expect(days).toEqual(days.map(() => Origin.filled));
    const truth = daysFrom('2025-12-02', '2026-02-15').map(brook);
    const filled = cut(water, water.days.mean, '2025-12-02', '2026-02-15');
    expect(meanOf(filled.map((value, d) => Math.abs(value - truth[d])))).toBeLessThan(0.8);
  });

  it('one past winter and no neighbour is an answer from one winter', () => {
    const water = waterAt(asked(station('brook', brook, { from: '2024-09-02', to: '2025-12-01' }), []));
    expect(water.winters).toBe(1);
    expect(water.traces.every((trace) => trace.every(Number.isFinite))).toBe(true);
  });

  it('no overlap: a neighbour of other years than the own record fills nothing and never gives a NaN', () => {
    const old = station('old', stream, { from: '2015-09-01', to: '2018-06-30' });
    const water = waterAt(asked(target, [old]));
    expect(water.stretches).toEqual([]);
    expect(water.projection.kind).toBe('own-history');
    expect(water.days.mean.every(Number.isFinite)).toBe(true);
  });

  it('a station given twice counts once', () => {
    expect(waterAt(asked(target, [upper, upper, lower]))).toEqual(waterAt(asked(target, [upper, lower])));
  });
});
