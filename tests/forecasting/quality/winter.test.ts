import { describe, expect, test } from 'vitest';
import { uniform } from '../../../bench/quality/network.js';
import {
  type Finding,
  fillsAt,
  judgeStation,
  type LoggerBattery,
  type RecordToJudge,
} from '../../../forecasting/quality/index.js';
import { beside, DAY, HOUR, record, river, START, valley, weather } from './invented-record.js';

const WINTER = 250;
const near = valley(WINTER);
const clean = (wanted: Parameters<typeof record>[0] = {}) => record({ days: WINTER, ...near, ...wanted });
const doubted = (made: RecordToJudge): Finding[] =>
  judgeStation(made).filter(({ flag }) => flag === 3 || flag === 4);
const within = (day: number, days: number) => (at: number) =>
  at >= START + day * DAY && at < START + (day + days) * DAY;
const logger = { from: START, to: null, iceBath: null, memory: null, intervalMinutes: null, lifted: null };

describe('a stream logger in winter', () => {
  test('a whole clean winter, five months of it at 0 °C, is not doubted', () => {
    expect(doubted(clean())).toEqual([]);
    // At 0.1 °C as well, where most readings on the plateau are equal.
    expect(doubted(clean({ decimals: 1 }))).toEqual([]);
  });

  test('lying in air for ten days: found to a few hours, fails, and says how it swung', () => {
    for (const day of [20, 100, 215]) {
      const inside = within(day, 10);
      const found = doubted(clean({ at: (_, at) => (inside(at) ? weather(at) : null) }));
      expect({ day, found: found.map(({ kind }) => kind) }).toEqual({ day, found: ['in-air'] });
      const [one] = found;
      expect(one).toMatchObject({ kind: 'in-air', flag: 4 });
      expect(Math.abs(one.from - (START + day * DAY))).toBeLessThanOrEqual(DAY);
      expect(Math.abs(one.to - (START + (day + 10) * DAY))).toBeLessThanOrEqual(DAY);
      expect(one.figures.swing).toBeGreaterThan(8);
    }
  });

  test('lying in air in its first hours: every figure is a number, also where the record begins in mid-day', () => {
    // It went into the water at six: how that day ended gives no hour to begin from.
    const inside = (at: number) => at < START + 18 * HOUR;
    const air24 = (at: number) => 8 + 6 * Math.sin((2 * Math.PI * at) / DAY);
    const whole = record({ days: WINTER, at: (_, at) => (inside(at) ? air24(at) : null) });
    const cut = whole.at.findIndex((at) => at >= START + 8 * HOUR);
    const made = { ...whole, at: whole.at.subarray(cut), value: whole.value.subarray(cut) };
    const air = judgeStation(made).filter(({ kind }) => kind === 'in-air');
    expect(air).toHaveLength(1);
    expect(air[0].from).toBeGreaterThanOrEqual(made.at[0] - HOUR);
    expect(Object.values(air[0].figures).every(Number.isFinite)).toBe(true);
  });

  /**
   * Bands of 0 to −0.2 nothing, −0.2 to −0.7 "frozen in?", −0.7 for an hour possible freezing (ours; flowing water
   * supercools by at most about 0.04 °C, Osterkamp et al. 1983).
   */
  test('frozen in: just above −0.2 nothing, just below suspect; hours at −0.7 are told', () => {
    const held = (celsius: number) => {
      const inside = within(100, 3);
      return doubted(clean({ at: (_, at) => (inside(at) ? celsius : null), noise: 0.005 }));
    };
    expect(held(-0.18)).toEqual([]);
    expect(held(-0.24)).toMatchObject([
      { kind: 'frozen-in', flag: 3, figures: { hours: 72, freezing: 0, limit: -0.2 } },
    ]);
    expect(held(-0.75)).toMatchObject([{ kind: 'frozen-in', flag: 3, figures: { freezing: 72 } }]);
  });

  test('a logger biased by −0.25 °C is not taken for one in ice: its plateau is its zero', () => {
    const found = judgeStation(clean({ water: (at) => river(at) - 0.25 }));
    expect(found.filter(({ kind }) => kind === 'frozen-in')).toEqual([]);
    // Bias at the plateau, a free calibration (ours): beyond the stated accuracy it is suspect, and offered.
    const [bias] = found.filter(({ kind }) => kind === 'plateau-bias');
    expect(bias).toMatchObject({ flag: 3, offer: { quantity: 'temperature', course: 'check' } });
    expect(bias.offer?.add).toBeCloseTo(0.25, 1);
  });

  test('a bias within the accuracy is offered and not doubted; a small one is not mentioned', () => {
    const bias = (by: number) =>
      judgeStation(clean({ water: (at) => river(at) + by })).filter(({ kind }) => kind === 'plateau-bias');
    expect(bias(0.1)).toMatchObject([{ flag: 1, figures: { bias: 0.1 }, offer: { add: -0.1 } }]);
    expect(bias(0.02)).toEqual([]);
  });

  test('snow on the bank follows the air, damped and late: it fails', () => {
    const inside = within(110, 8);
    const dayBefore = (at: number) =>
      Array.from({ length: 24 }, (_, h) => weather(at - h * HOUR)).reduce((sum, one) => sum + one, 0) / 24;
    const [one, ...others] = doubted(clean({ at: (_, at) => (inside(at) ? 0.3 * dayBefore(at) : null) }));
    expect(one).toMatchObject({ kind: 'in-snow', flag: 4 });
    expect(one.figures.share).toBeGreaterThan(0.15);
    expect(others).toEqual([]);
  });

  test('buried while the neighbours swing: the swing is gone', () => {
    const inside = within(5, 25);
    const smooth = (at: number) =>
      9 - ((at - START) / DAY) * 0.14 + 0.05 * Math.cos(((at / HOUR - 20) / 24) * 2 * Math.PI);
    const found = doubted(clean({ at: (_, at) => (inside(at) ? smooth(at) : null) }));
    expect(found.map(({ kind }) => kind)).toContain('sheltered');
  });

  test('a clock that jumps back three hours is found, and the hours to add are offered', () => {
    const jump = START + 30 * DAY;
    const made = clean({ water: (at) => river(at < jump ? at : at - 3 * HOUR) });
    const [one] = doubted(made).filter(({ kind }) => kind === 'clock');
    expect(one).toMatchObject({
      flag: 3,
      offer: { quantity: 'clock', course: 'step' },
      figures: { change: 1 },
    });
    expect(Math.abs((one.offer?.add ?? 0) / HOUR + 3)).toBeLessThanOrEqual(0.25);
    // Under the plateau nothing can be said: the swing of October and of May tell.
    expect(one.from).toBeGreaterThan(START + 15 * DAY);
  });

  test('a clock of another zone, and one that drifts, are told apart', () => {
    const [zone] = doubted(clean({ water: (at) => river(at + 5 * HOUR) })).filter(
      ({ kind }) => kind === 'clock',
    );
    expect(zone.figures).toMatchObject({ hours: -5, change: 0 });
    expect(zone.offer).toMatchObject({ add: 5 * HOUR, course: 'step' });
    const length = WINTER * DAY;
    const drifting = clean({ water: (at) => river(at - (3 * HOUR * (at - START)) / length) });
    const [drift] = doubted(drifting).filter(({ kind }) => kind === 'clock');
    expect(drift.figures.change).toBe(2);
    expect(drift.offer).toMatchObject({ quantity: 'clock', course: 'rising' });
    expect(Math.abs((drift.offer?.add ?? 0) / HOUR + 3)).toBeLessThanOrEqual(0.8);
  });

  test('a battery that dies loses more and more readings before the end', () => {
    const whole = clean({});
    const last = whole.at.length - 1;
    const kept = [...whole.at.keys()].filter((i) => last - i > 72 || i % 3 === 0);
    const dying = {
      ...whole,
      at: whole.at.filter((_, i) => kept.includes(i)),
      value: whole.value.filter((_, i) => kept.includes(i)),
    };
    expect(doubted(dying).map(({ kind }) => kind)).toEqual(['battery']);
  });

  test('a battery dying over ten days: gaps that grow from none to most', () => {
    const whole = clean({});
    const last = whole.at.length - 1;
    const draw = uniform(3);
    const lost = (i: number) => i > last - 240 && i < last && draw() < (0.8 * (i - last + 240)) / 240;
    const kept = [...whole.at.keys()].filter((i) => !lost(i));
    const dying = {
      ...whole,
      at: Float64Array.from(kept, (i) => whole.at[i]),
      value: Float64Array.from(kept, (i) => whole.value[i]),
    };
    const [one, ...others] = doubted(dying);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ kind: 'battery', flag: 3, to: whole.at[last] });
    expect(one.from).toBeGreaterThan(whole.at[last] - 17 * DAY);
    // A single outage of two days is none.
    const out = whole.at.findIndex((at) => at > whole.at[last] - 3 * DAY);
    const outage = {
      ...whole,
      at: whole.at.filter((_, i) => i < out || i > out + 36),
      value: whole.value.filter((_, i) => i < out || i > out + 36),
    };
    expect(doubted(outage)).toEqual([]);
  });

  /** Limits ours: below 0.85 of its highest voltage, or 20 % of its charge and less (common practice). */
  test('a battery the file calls low is told for information, just beyond the limit and not before', () => {
    const whole = clean({});
    const end = whole.at[whole.at.length - 1];
    const said = (one: Partial<LoggerBattery>, more: Partial<RecordToJudge> = {}) =>
      judgeStation({
        ...whole,
        ...more,
        batteries: [{ unit: 'V', highest: 3.6, last: { value: 3.6, at: end }, low: null, ...one }],
      }).filter(({ kind }) => kind === 'battery');
    expect(said({ last: { value: 3.07, at: end } })).toEqual([]);
    expect(said({ last: { value: 3.05, at: end } })).toMatchObject([
      { flag: 1, figures: { last: 3.05, highest: 3.6, limit: 0.85, percent: 0 } },
    ]);
    expect(said({ unit: '%', highest: 100, last: { value: 21, at: end } })).toEqual([]);
    expect(said({ unit: '%', highest: 100, last: { value: 20, at: end } })).toMatchObject([
      { flag: 1, figures: { last: 20, percent: 1 } },
    ]);
    expect(said({ unit: null, highest: null, last: null, low: end - 9 * DAY })).toMatchObject([
      { flag: 1, from: end - 9 * DAY, figures: { remark: 1 } },
    ]);
    // Of another winter: not this record's.
    expect(said({ last: { value: 2, at: end + 200 * DAY } })).toEqual([]);
    // It lay on for twelve days without a reading.
    const lain = { deployments: [{ ...logger, to: end + 12.5 * DAY }] };
    expect(said({ last: { value: 2.5, at: end } }, lain)).toMatchObject([{ figures: { early: 12 } }]);
  });

  test('fewer gaps are enough where the file says that the battery is low', () => {
    const whole = clean({});
    const last = whole.at.length - 1;
    const kept = [...whole.at.keys()].filter((i) => last - i > 48 || (last - i) % 4 !== 1);
    const dying = {
      ...whole,
      at: Float64Array.from(kept, (i) => whole.at[i]),
      value: Float64Array.from(kept, (i) => whole.value[i]),
    };
    expect(doubted(dying)).toEqual([]);
    const batteries = [
      { unit: 'V' as const, highest: 3.6, last: { value: 2.7, at: whole.at[last] }, low: null },
    ];
    expect(doubted({ ...dying, batteries })).toMatchObject([
      { kind: 'battery', flag: 3, figures: { last: 2.7, highest: 3.6, days: 4 } },
    ]);
  });

  test('hours in the truck are proposed for trimming where no deployment says when it was placed', () => {
    const inTruck = within(0, 0.25);
    const made = clean({ at: (_, at) => (inTruck(at) ? 19 : null) });
    const [one, ...others] = doubted(made);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ kind: 'outside-deployment', flag: 4, from: START, figures: { after: 0 } });
    expect(one.to).toBe(START + 6 * HOUR - 1);
    // The deployment says it: the store trims, and nothing is proposed.
    const said = { ...made, deployments: [{ ...logger, from: START + 6 * HOUR }] };
    expect(doubted(said).filter(({ kind }) => kind === 'outside-deployment')).toEqual([]);
  });

  test('the ice bath before and after: drift beyond the accuracy is suspect', () => {
    const bath = (before: number, after: number) =>
      judgeStation({ ...clean(), deployments: [{ ...logger, iceBath: { before, after } }] }).filter(
        ({ kind }) => kind === 'ice-bath-bias',
      );
    expect(bath(0.1, 0.25)).toMatchObject([{ flag: 1, figures: { before: 0.1, after: 0.25 } }]);
    expect(bath(0.1, 0.45)).toMatchObject([{ flag: 3, offer: null }]);
  });

  /** 43,000 readings at one every 5 minutes are 149.3 days: arithmetic. */
  test('memory and interval give the day a logger fills; it is told where that is before the lifting', () => {
    const laid = { ...logger, from: Date.UTC(2025, 9, 28), memory: 43_000, intervalMinutes: 5 };
    const full = fillsAt(laid);
    expect(full === null ? null : new Date(full).toISOString().slice(0, 10)).toBe('2026-03-26');
    const empty = { ...record({ days: 1 }), at: new Float64Array(0), value: new Float64Array(0) };
    const june = Date.UTC(2026, 5, 16);
    expect(judgeStation({ ...empty, deployments: [{ ...laid, lifted: june }] })).toMatchObject([
      { kind: 'memory', from: full, to: june, flag: 2 },
    ]);
    expect(judgeStation({ ...empty, deployments: [{ ...laid, intervalMinutes: 60, lifted: june }] })).toEqual(
      [],
    );
  });

  test('a sensor that slips by 2 °C is seen beside its neighbours', () => {
    const slip = START + 40 * DAY;
    const found = doubted(clean({ water: (at) => river(at) + (at < slip ? 0 : 2) }));
    expect(found.map(({ kind }) => kind)).toContain('neighbour');
  });

  test('what a neighbour in air says does not make a good record doubted', () => {
    const inside = within(100, 20);
    const bad = beside(
      'bank',
      record({ days: WINTER, seed: 15, at: (_, at) => (inside(at) ? weather(at) : null) }),
    );
    expect(doubted(clean({ neighbours: [...near.neighbours, bad] }))).toEqual([]);
  });
});
