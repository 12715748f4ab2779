import { describe, expect, it } from 'vitest';
import { emptyDays, measuredDays, Origin } from '../../../forecasting/day-series.js';
import { judgeSpells, type SpellInput, UsualSwing } from '../../../forecasting/spells/index.js';
import type { Water } from '../../../forecasting/water.js';
import { BEGIN, DAY, HOUR, held, river } from './eggs.js';

/** Water of which `share` of the possible winters have four days at 18 °C from day 150 on, all else 4 °C. */
function water(share: number, origin: Origin): Water {
  const days = emptyDays(BEGIN / DAY, 260);
  days.mean.fill(4);
  days.origin.fill(origin);
  const traces = Array.from({ length: 51 }, (_, k) =>
    Float64Array.from({ length: 260 }, (_, d) =>
      d >= 225 ? 10 : d >= 150 && d < 154 && k < share * 51 ? 18 : 4,
    ),
  );
  return {
    station: 'own',
    days,
    traces,
    winters: 8,
    stretches: [],
    projection: { kind: 'none' },
    lastMeasured: null,
    lastFilled: null,
    remarks: [],
  };
}

function unmeasured(share: number, origin: Origin): SpellInput {
  const input = river({ from: 0, hours: [] });
  return {
    ...input,
    records: [],
    boxes: input.boxes.map((box) => ({ ...box, water: water(share, origin) })),
  };
}

describe('filled and projected water', () => {
  it.each([
    [Origin.filled, 'filled'],
    [Origin.projected, 'projected'],
  ] as const)('raises at most a possible spell, with how likely it is (%i)', (origin, name) => {
    const found = judgeSpells(unmeasured(0.6, origin)).filter(({ severity }) => severity === 'lethal');
    expect(found).toMatchObject([
      { kind: 'too-warm', certainty: 'possible', origin: name, hours: 96, peak: 18 },
    ]);
    expect(found[0]?.chance).toBeCloseTo(0.6, 1);
    expect(found[0]?.from).toBe(BEGIN + 150 * DAY);
  });
  it('names nothing where one winter in twenty has it', () => {
    expect(judgeSpells(unmeasured(0.05, Origin.filled))).toEqual([]);
  });
  it('is judged by the hours of a day: about a mean below the limit, its usual swing may reach the dose', () => {
    /** Measured days of the season before, warmest hour `swing` above their mean. */
    const swinging = (swing: number) => {
      const before = measuredDays(BEGIN / DAY - 365, new Float64Array(260).fill(4));
      return new UsualSwing([
        { ...before, max: before.mean.map((x) => x + swing), min: before.mean.map((x) => x - swing) },
      ]);
    };
    const judged = (swing: number) => {
      const input = unmeasured(1, Origin.filled);
      const boxes = input.boxes.map((box) => {
        const one = box.water;
        if (one === null) throw new Error('the water is filled');
        const traces = one.traces.map((trace) => trace.map((x) => (x === 18 ? 15 : x)));
        return { ...box, swing: swinging(swing), water: { ...one, traces } };
      });
      return judgeSpells({ ...input, boxes }).filter(({ severity }) => severity === 'lethal');
    };
    // 15 °C goes above 16 for 24/π·acos(1/swing) hours: the dose of 6 h at a swing of 1/cos(π/4) = 1.414.
    expect(judged(1.4)).toEqual([]);
    const [spell] = judged(1.42);
    expect(spell).toMatchObject({ kind: 'too-warm', certainty: 'possible' });
    expect(spell?.peak).toBeCloseTo(16.42, 2);
    expect(spell?.hours).toBeCloseTo((4 * 24 * Math.acos(1 / 1.42)) / Math.PI, 2);
    // Summed minute by minute: the wave's degree-hours above the limit itself.
    const minutes = Array.from({ length: 1440 }, (_, m) => 15 + 1.42 * Math.cos((m / 720) * Math.PI) - 16);
    const sum = (4 * minutes.reduce((all, by) => all + Math.max(0, by), 0)) / 60;
    expect(spell?.degreeHours).toBeCloseTo(sum, 1);
  });
  /** Fry near emergence: below 7.0 °C for a week they do not feed (Elliott 1991); the limit is in the table. */
  it.each([
    [6.7, 0.6, [{ kind: 'too-cold', certainty: 'possible', severity: 'lowers-survival', peak: 6.7 }]],
    [6.9, 1, []],
    [6.7, 0.05, []],
  ] as const)(
    'water of %f °C when the fry leave the gravel, in %f of the winters',
    (celsius, part, expected) => {
      const input = unmeasured(0, Origin.filled);
      const boxes = input.boxes.map((box) => {
        if (box.water === null) throw new Error('the water is filled');
        const traces = box.water.traces.map((trace, k) =>
          trace.map((x, d) => (d >= 200 ? (k < part * 51 ? celsius : 10) : x)),
        );
        // Slow enough that the span of the limit is longer than a week.
        const lots = box.lots.map((lot) => {
          if (lot.draws === null) throw new Error('the lot has winters');
          const { hatch } = lot.draws.stages;
          const earlier = (days: Float64Array) => days.map((day) => day - 60);
          const early = {
            first: earlier(hatch.first),
            median: earlier(hatch.median),
            last: earlier(hatch.last),
          };
          return { ...lot, draws: { ...lot.draws, stages: { ...lot.draws.stages, hatch: early } } };
        });
        return { ...box, lots, water: { ...box.water, traces } };
      });
      const records = river({ from: 0, hours: [] }).records.map((one) => ({
        ...one,
        at: new Float64Array(0),
        value: new Float64Array(0),
        flag: new Uint8Array(0),
      }));
      expect(judgeSpells({ ...input, records, boxes })).toMatchObject(expected);
    },
  );
  it('tells no ice and no sudden change of water that was worked out, however it is', () => {
    const input = unmeasured(0, Origin.filled);
    const boxes = input.boxes.map((box) => {
      if (box.water === null) throw new Error('the water is filled');
      // At the plateau, with a step of 9 °C from one day to the next while the eggs are eyed.
      const traces = box.water.traces.map((trace) =>
        trace.map((_, d) => (d >= 225 ? 10 : d % 40 < 20 ? 0 : 9)),
      );
      return { ...box, water: { ...box.water, traces } };
    });
    expect(judgeSpells({ ...input, boxes })).toEqual([]);
  });
  it('says nothing of days that the box’s own logger has measured', () => {
    const input = unmeasured(1, Origin.filled);
    const { records } = river({ from: 0, hours: [] });
    expect(judgeSpells({ ...input, records })).toEqual([]);
  });
  it('is not what a station further down the list has measured: that is an estimate', () => {
    const { records, boxes, ...rest } = river({ from: 150, hours: held(17, 12) });
    const [own] = records;
    if (own === undefined) throw new Error('the river has a record');
    const standIn = { ...own, station: 'other', lying: [] };
    const input = {
      ...rest,
      records: [standIn],
      boxes: boxes.map((box) => ({ ...box, stations: ['own', 'other'] })),
    };
    const found = judgeSpells(input).filter(({ kind }) => kind === 'too-warm');
    expect(found).toMatchObject([{ certainty: 'estimated', severity: 'lethal', station: 'other' }]);
  });
});

describe('what a gauge tells', () => {
  const gauge = (month: number, factor: number) => {
    const begin = Date.UTC(2025, month, 1);
    const length = 24 * 60;
    const input = river({ from: 0, hours: [], days: 230 });
    const value = Float64Array.from({ length }, (_, h) => (h >= 24 * 40 && h < 24 * 42 ? 6 * factor : 6));
    const at = Float64Array.from({ length }, (_, h) => begin + h * HOUR);
    return judgeSpells({ ...input, gauges: [{ station: 'bridge', quantity: 'discharge', at, value }] });
  };
  it.each([
    [10, 3.1, 'break-up'],
    [14, 3.1, 'freshet'],
    [14, 0.3, 'low-water'],
  ] as const)('month %i, %f times the usual flow for two days: %s', (month, factor, kind) => {
    const found = gauge(month, factor);
    expect(found).toMatchObject([{ kind, severity: 'event', boxes: ['B1'], peak: null, mortality: [] }]);
  });
  /** The same at a gauge that has only a level: half a metre above, 0.3 m below the usual 1.2 m (limits ours). */
  const level = (month: number, by: number) => {
    const begin = Date.UTC(2025, month, 1);
    const length = 24 * 60;
    const value = Float64Array.from({ length }, (_, h) => (h >= 24 * 40 && h < 24 * 42 ? 1.2 + by : 1.2));
    const at = Float64Array.from({ length }, (_, h) => begin + h * HOUR);
    const gauges = [{ station: 'bridge', quantity: 'level' as const, at, value }];
    return judgeSpells({ ...river({ from: 0, hours: [], days: 230 }), gauges });
  };
  it.each([
    [10, 0.51, 'break-up', 0.5],
    [14, 0.51, 'freshet', 0.5],
    [14, -0.31, 'low-water', -0.3],
  ] as const)('a level in month %i, %f m off the usual for two days: %s', (month, by, kind, value) => {
    expect(level(month, by)).toMatchObject([
      { kind, severity: 'event', boxes: ['B1'], hours: 47, limit: { unit: 'metres', value }, mortality: [] },
    ]);
  });
  it.each([0.49, -0.29])('a level %f m off the usual is nothing', (by) => {
    expect(level(14, by)).toEqual([]);
  });
  it.each([2.9, 0.4])('%f times the usual flow is nothing', (factor) => {
    expect(gauge(14, factor)).toEqual([]);
  });
});
