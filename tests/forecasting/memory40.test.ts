import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ForecastInput,
  ForecastMemory,
  forecast,
  type StationDays,
  type WaterSighting,
} from '../../forecasting/index.js';
import { box, lot, season } from './invented-river.js';
import { air, dayOf, redNoise, springs, station, stream } from './water/invented-network.js';

/*
 * A forecast that leans on the one before against the same forecast made from nothing: the oracle is the plain forecast,
 * and the answers must be the same to the bit.
 */
const noise = [1, 2, 3].map((seed) => redNoise(seed, 0.7, 0.3));
const brooks = [
  (day: number) => Math.max(0, stream(day) + noise[0](day)),
  (day: number) => Math.max(0, 0.8 * stream(day) + 0.4 + noise[1](day)),
  (day: number) => springs(day) + noise[2](day),
];
const HISTORY = '2022-09-01';
const YEAR = dayOf('2025-09-01');

/** What was read by then: to which day each station was read, a day of a past winter that was put right, ice seen. */
interface Read {
  readonly to: readonly string[];
  readonly putRight: number | null;
  readonly ice: boolean;
  readonly young: string;
}

function inputOf({ to, putRight, ice, young }: Read): ForecastInput {
  const stations: StationDays[] = brooks.map((brook, i) =>
    station(`brook-${i}`, (day) => brook(day) + (i === putRight && day === YEAR - 300 ? 1 : 0), {
      from: HISTORY,
      to: to[i],
    }),
  );
  stations.push(station('air', air, { from: HISTORY, to: to[3], kind: 'air' }));
  // A station of this season alone: others ask the season at hand what it is worth.
  stations.push(station('young', (day) => stream(day) + 0.5, { from: '2025-10-20', to: young }));
  const seen: WaterSighting[] = ice ? [{ kind: 'ice-on', station: 'brook-0', day: dayOf('2026-01-02') }] : [];
  return season({
    stations,
    sightings: seen,
    lots: [lot(), lot({ lot: 'L2', fertilised: dayOf('2025-11-05') })],
    boxes: ['brook-0', 'brook-1', 'brook-2', 'young'].map((id, i) =>
      box({ box: `B${i}`, site: `S${i}`, stations: [id] }),
    ),
  });
}

const whole = ['2026-02-10', '2026-02-10', '2026-02-10', '2026-02-10'];
const plain: Read = { to: whole, putRight: null, ice: false, young: '2026-02-10' };

describe('a forecast that leans on the one before', () => {
  it('is the same as one made from nothing, whatever was read, put right or seen between', () => {
    const day = fc.constantFrom('2025-11-20', '2025-12-20', '2026-01-15', '2026-02-10');
    const read = fc.record<Read>({
      to: fc.tuple(day, day, day, day),
      putRight: fc.option(fc.constantFrom(0, 1, 2), { freq: 3 }),
      ice: fc.boolean(),
      young: fc.constantFrom('2025-11-05', '2025-12-01', '2026-02-10'),
    });
    fc.assert(
      fc.property(fc.array(read, { minLength: 2, maxLength: 3 }), (reads) => {
        const memory = new ForecastMemory();
        for (const one of reads) expect(forecast(inputOf(one), memory)).toEqual(forecast(inputOf(one)));
      }),
      { numRuns: 40 },
    );
  });

  it('works out anew only boxes in water that a download changed', () => {
    const memory = new ForecastMemory();
    const renewed = (read: Read) => {
      expect(forecast(inputOf(read), memory)).toEqual(forecast(inputOf(read)));
      return memory.renewed;
    };
    const upTo = (brook: number, day: string): Read => ({
      ...plain,
      to: whole.map((to, i) => (i === brook ? day : to)),
    });
    expect(renewed(upTo(2, '2026-01-15'))).toHaveLength(4);
    expect(renewed(upTo(2, '2026-01-15'))).toEqual([]);
    // The brooks have nothing to be filled from it; the young station asks the season at hand, so every day read anywhere.
    expect(renewed(plain)).toEqual(['B2', 'B3']);
    // brook-0 lacks days that brook-1 fills: what brook-1 reads on them bears on both.
    expect(renewed({ ...plain, to: ['2025-12-20', '2025-12-20', whole[2], whole[3]] })).toEqual(
      expect.arrayContaining(['B0', 'B1']),
    );
    expect(renewed({ ...plain, to: ['2025-12-20', whole[1], whole[2], whole[3]] })).toEqual(
      expect.arrayContaining(['B0', 'B1']),
    );
  });
});
