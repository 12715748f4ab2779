import type { CheckKind, LoggerBattery } from '../../forecasting/quality/index.js';
import { normals } from '../../sample-logs/chance.js';
import { HOUR, type HourlyWinter, rounded, uniform, WINTER_DAYS } from './network.js';

/** A fault put into a clean winter, where it lies, and which checks count as having found it. */
export interface Faulted {
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly from: number;
  readonly to: number;
  /** What the file says of the battery, where it does. */
  readonly battery?: LoggerBattery;
}

export interface Fault {
  readonly name: string;
  readonly found: readonly CheckKind[];
  /** Told only beside neighbours: not put where no other station has the winter. */
  readonly beside?: true;
  /** null where the winter gives no room for it (no ice for slush). */
  readonly put: (winter: HourlyWinter, seed: number) => Faulted | null;
}

/** Faults begin between 5 November and 20 April. */
const FIRST = 35;
const LAST = 201;

const between = (draw: () => number, low: number, high: number) => low + (high - low) * draw();
const sign = (draw: () => number) => (draw() < 0.5 ? -1 : 1);

/** Hours of a stretch replaced. */
function replaced(winter: HourlyWinter, day: number, days: number, value: (i: number) => number): Faulted {
  const [first, end] = [Math.round(day * 24), Math.min(WINTER_DAYS * 24, Math.round((day + days) * 24))];
  const changed = Float64Array.from(winter.water);
  for (let i = first; i < end; i++) changed[i] = rounded(value(i), 2);
  return { at: winter.at, value: changed, from: winter.at[first], to: winter.at[end - 1] };
}

export const faults: readonly Fault[] = [
  {
    name: 'air',
    found: ['in-air', 'in-snow', 'outside-deployment'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const noise = normals(seed);
      return replaced(
        winter,
        between(draw, FIRST, LAST),
        between(draw, 4, 25),
        (i) => winter.air[i] + 0.3 * noise(),
      );
    },
  },
  {
    name: 'slush',
    found: ['frozen-in', 'in-snow'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const noise = normals(seed);
      const cold = Array.from({ length: LAST - FIRST }, (_, d) => FIRST + d).filter((d) =>
        [0, 1, 2].every((next) => mean(winter.water, d + next) < 0.6 && mean(winter.air, d + next) < -2),
      );
      if (cold.length === 0) return null;
      const day = cold[Math.floor(draw() * cold.length)];
      return replaced(winter, day + draw() / 2, between(draw, 3, 9), (i) => {
        const air = Math.max(-18, Math.min(0, winter.air[Math.max(0, i - 4)]));
        return -0.2 + 0.016 * air + 0.012 * noise();
      });
    },
  },
  {
    name: 'snow on the bank',
    found: ['in-snow', 'in-air', 'frozen-in'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const noise = normals(seed);
      const cold = Array.from({ length: LAST - FIRST }, (_, d) => FIRST + d).filter((d) =>
        [0, 1, 2, 3].every((next) => mean(winter.air, d + next) < -3),
      );
      if (cold.length === 0) return null;
      const day = cold[Math.floor(draw() * cold.length)];
      return replaced(winter, day, between(draw, 4, 10), (i) => {
        const before = Array.from({ length: 24 }, (_, h) => winter.air[Math.max(0, i - h)]);
        return Math.min(0, 0.3 * (before.reduce((sum, one) => sum + one, 0) / 24)) + 0.02 * noise();
      });
    },
  },
  {
    name: 'clock drift',
    beside: true,
    found: ['clock'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const hours = sign(draw) * between(draw, 2, 4);
      const { at } = winter;
      const whole = at[at.length - 1] - at[0];
      const moved = at.map((one) => one + (hours * HOUR * (one - at[0])) / whole);
      return { at: moved, value: winter.water, from: at[0], to: at[at.length - 1] };
    },
  },
  {
    name: 'clock jump',
    beside: true,
    found: ['clock'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const hours = sign(draw) * Math.round(between(draw, 1, 6));
      const { at } = winter;
      const from = at[Math.round(between(draw, 20, WINTER_DAYS - 30) * 24)];
      const moved = Float64Array.from(at, (one) => (one < from ? one : one + hours * HOUR));
      // Set back, the clock writes hours a second time: the first stand.
      const kept = [...moved.keys()].filter(
        (i) => i === 0 || moved[i] > Math.max(...moved.subarray(Math.max(0, i - 12), i)),
      );
      return {
        at: Float64Array.from(kept, (i) => moved[i]),
        value: Float64Array.from(kept, (i) => winter.water[i]),
        from,
        to: at[at.length - 1],
      };
    },
  },
  {
    name: 'clock of another zone',
    beside: true,
    found: ['clock'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const hours = sign(draw) * Math.round(between(draw, 5, 9));
      const at = winter.at.map((one) => one + hours * HOUR);
      return { at, value: winter.water, from: at[0], to: at[at.length - 1] };
    },
  },
  {
    name: 'sensor drift',
    beside: true,
    found: ['neighbour', 'plateau-bias'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const day = between(draw, FIRST, 120);
      const days = between(draw, 60, 120);
      const most = sign(draw) * between(draw, 2, 3.5);
      return replaced(
        winter,
        day,
        WINTER_DAYS - day,
        (i) => winter.water[i] + most * Math.min(1, (i / 24 - day) / days),
      );
    },
  },
  {
    name: 'sensor jump',
    beside: true,
    found: ['neighbour', 'plateau-bias'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const day = between(draw, FIRST, LAST);
      const by = sign(draw) * between(draw, 1.5, 3);
      return replaced(winter, day, WINTER_DAYS - day, (i) => winter.water[i] + by);
    },
  },
  {
    name: 'spikes',
    found: ['spike'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const value = Float64Array.from(winter.water);
      const places = Array.from({ length: 5 }, () => Math.round(between(draw, FIRST, LAST) * 24)).sort(
        (a, b) => a - b,
      );
      for (const i of places) value[i] += sign(draw) * between(draw, 3.5, 12);
      return { at: winter.at, value, from: winter.at[places[0]], to: winter.at[places[4]] };
    },
  },
  {
    name: 'battery dying, told by gaps',
    found: ['battery'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      return dying(winter, draw, between(draw, 3, 14), between(draw, 0.6, 0.95));
    },
  },
  {
    name: 'battery dying, few gaps and a column of volts',
    found: ['battery'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const put = dying(winter, draw, between(draw, 3, 14), between(draw, 0.25, 0.5));
      return {
        ...put,
        battery: { unit: 'V', highest: 3.6, last: { value: between(draw, 2.2, 3), at: put.to }, low: null },
      };
    },
  },
  {
    name: 'stuck',
    found: ['flat-line'],
    put: (winter, seed) => {
      const draw = uniform(seed);
      const open = Array.from({ length: WINTER_DAYS - 45 }, (_, d) => 30 + d).filter(
        (d) => mean(winter.water, d) > 0.8,
      );
      if (open.length === 0) return null;
      const day = open[Math.floor(draw() * open.length)] + draw() / 2;
      const value = winter.water[Math.round(day * 24)];
      return Math.abs(value) <= 0.3 ? null : replaced(winter, day, between(draw, 2, 10), () => value);
    },
  },
];

/** The record ends in spring, and before that loses more and more of its readings. */
function dying(winter: HourlyWinter, draw: () => number, days: number, most: number): Faulted {
  const end = Math.round(between(draw, 120, WINTER_DAYS - 1) * 24);
  const begin = end - Math.round(days * 24);
  const kept = Array.from({ length: end + 1 }, (_, i) => i).filter(
    (i) => i < begin || i === end || draw() > (most * (i - begin)) / (end - begin),
  );
  return {
    at: Float64Array.from(kept, (i) => winter.at[i]),
    value: Float64Array.from(kept, (i) => winter.water[i]),
    from: winter.at[begin],
    to: winter.at[end],
  };
}

function mean(hours: Float64Array, day: number): number {
  return hours.subarray(day * 24, day * 24 + 24).reduce((sum, one) => sum + one, 0) / 24;
}
