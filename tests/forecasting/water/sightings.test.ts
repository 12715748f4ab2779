import { describe, expect, it } from 'vitest';
import { type WaterSighting, waterAt } from '../../../forecasting/index.js';
import { asked, codes, cut, dayOf, meanOf, springs, station, stream } from './invented-network.js';

const brook = station('brook', stream, { to: '2025-12-01' });
const hand = (day: string, celsius: number): WaterSighting => ({
  kind: 'hand',
  station: 'brook',
  day: dayOf(day),
  celsius,
  accuracy: 0.3,
});
const ice = (kind: 'ice-on' | 'ice-out' | 'under-ice', day: string): WaterSighting => ({
  kind,
  station: 'brook',
  day: dayOf(day),
});
const spring = { asOf: dayOf('2026-05-20') };
const water = (sightings: readonly WaterSighting[], target = brook) =>
  waterAt(asked(target, [], { ...spring, sightings }));
const mean = (of: ReturnType<typeof water>, from: string, to: string) =>
  meanOf(cut(of, of.days.mean, from, to));
const spread = (of: ReturnType<typeof water>, from: string, to: string) =>
  meanOf(cut(of, of.days.spread, from, to));

describe('a hand-thermometer reading', () => {
  const without = water([]);
  const usual = mean(without, '2026-05-01', '2026-05-01');
  const warm = water([hand('2026-05-01', usual + 4)]);

  it('draws the water around it towards what was read, and makes it surer', () => {
    expect(mean(warm, '2026-05-01', '2026-05-01')).toBeGreaterThan(usual + 2);
    expect(mean(warm, '2026-05-01', '2026-05-01')).toBeLessThan(usual + 4.1);
    expect(spread(warm, '2026-05-01', '2026-05-01')).toBeLessThan(
      0.7 * spread(without, '2026-05-01', '2026-05-01'),
    );
    expect(codes(warm)).toContain('sightings-used');
    expect(codes(without)).not.toContain('sightings-used');
  });

  it('fades before and after', () => {
    const moved = (day: string) => mean(warm, day, day) - mean(without, day, day);
    expect(moved('2026-05-20')).toBeGreaterThan(0);
    expect(moved('2026-05-20')).toBeLessThan(0.6 * moved('2026-05-01'));
    expect(Math.abs(moved('2026-01-15'))).toBeLessThan(0.3);
  });

  it('moves a filled day too, for the relation may be wrong this year', () => {
    const neighbours = [station('springs', springs)];
    const target = station('brook', (day) => 0.9 * springs(day) + 0.3, { to: '2025-12-01' });
    const of = (sightings: readonly WaterSighting[]) =>
      waterAt(asked(target, neighbours, { ...spring, sightings }));
    const usual = of([]);
    const read = mean(usual, '2026-02-01', '2026-02-01') - 1;
    const moved = of([hand('2026-02-01', read)]);
    expect(mean(moved, '2026-02-01', '2026-02-01')).toBeLessThan(mean(usual, '2026-02-01', '2026-02-01'));
  });

  it('after the as-of day, or at another station, counts for nothing', () => {
    const later = water([hand('2026-05-21', 20)]);
    const elsewhere = water([{ ...hand('2026-05-01', 20), station: 'other' }]);
    expect(later.days.mean).toEqual(without.days.mean);
    expect(elsewhere.traces).toEqual(without.traces);
  });
});

describe('ice that was seen', () => {
  it('holds the water near freezing from ice-on to ice-out, also in a late spring', () => {
    const without = water([]);
    const late = water([ice('ice-on', '2025-12-10'), ice('ice-out', '2026-05-15')]);
    expect(mean(without, '2026-04-25', '2026-05-05')).toBeGreaterThan(2);
    expect(mean(late, '2026-04-25', '2026-05-05')).toBeLessThan(1);
    expect(mean(late, '2026-01-10', '2026-02-10')).toBeLessThan(0.5);
  });

  it('is not believed where the record shows water that does not freeze, and that is said', () => {
    const target = station('brook', (day) => springs(day), { to: '2025-12-01' });
    const seen = water([ice('under-ice', '2026-02-01')], target);
    expect(codes(seen)).toContain('ice-doubted');
    expect(seen.days.mean).toEqual(water([], target).days.mean);
  });
});
