import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normals } from '../../sample-logs/chance.js';

export const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** From 1 October to 30 June. */
export const WINTER_DAYS = 272;
/** A winter with more days missing than this is not looked at. */
const MISSING = 20;

/** One station's winter as daily means, gaps of up to a few days bridged. */
export interface DailyWinter {
  readonly station: string;
  /** Day number of 1 October. */
  readonly firstDay: number;
  readonly water: Float64Array;
  readonly air: Float64Array;
}

/** A winter as a logger would have kept it. */
export interface HourlyWinter {
  readonly station: string;
  readonly firstDay: number;
  readonly at: Float64Array;
  readonly water: Float64Array;
  readonly air: Float64Array;
}

/** Equally likely numbers from 0 to 1. */
export function uniform(seed: number): () => number {
  const source = xoroshiro128plus(seed);
  for (let i = 0; i < 32; i++) source.next();
  return () => uniformFloat64(source);
}

/** Whole winters of a file `station,latitude,longitude,date,water_c,air_c`. */
export function wholeWinters(file: string): DailyWinter[] {
  const bytes = readFileSync(file);
  const text = (file.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8');
  const stations = new Map<string, Map<number, { water: number; air: number }>>();
  for (const line of text.split('\n').slice(1)) {
    const [station, , , date, water, air] = line.split(',');
    if (station === undefined || date === undefined || !water || !air) continue;
    const days = stations.get(station) ?? new Map();
    days.set(Date.parse(`${date}T00:00Z`) / DAY, { water: Number(water), air: Number(air) });
    stations.set(station, days);
  }
  return [...stations].flatMap(([station, days]) => {
    const years = new Set([...days.keys()].map((day) => new Date(day * DAY).getUTCFullYear()));
    return [...years].flatMap((year): DailyWinter[] => {
      const firstDay = Date.UTC(year, 9, 1) / DAY;
      const column = (key: 'water' | 'air') =>
        Float64Array.from({ length: WINTER_DAYS }, (_, d) => days.get(firstDay + d)?.[key] ?? Number.NaN);
      const [water, air] = [bridged(column('water')), bridged(column('air'))];
      if (water === null || air === null) return [];
      return [{ station, firstDay, water, air }];
    });
  });
}

/** Short gaps by a straight line; null where too much is missing. */
function bridged(values: Float64Array): Float64Array | null {
  const known = [...values.keys()].filter((d) => !Number.isNaN(values[d]));
  if (values.length - known.length > MISSING || known.length === 0) return null;
  for (let d = 0; d < values.length; d++) {
    if (!Number.isNaN(values[d])) continue;
    const before = known.findLast((one) => one < d) ?? known[0];
    const after = known.find((one) => one > d) ?? known[known.length - 1];
    if (after - before > 8) return null;
    const share = after === before ? 0 : (d - before) / (after - before);
    values[d] = values[before] + share * (values[after] - values[before]);
  }
  return values;
}

/** How a place answers the sun, and what its logger is like; drawn from the station's name. */
function placeOf(station: string) {
  const draw = uniform(seedOf(station));
  return {
    /** Share of the usual swing: shade, depth, springs. */
    swing: 0.4 + 1.2 * draw(),
    /** Hours that its day comes later. */
    late: -1.5 + 3 * draw(),
    decimals: draw() < 0.4 ? 1 : 2,
    noise: 0.01 + 0.02 * draw(),
    bias: -0.15 + 0.3 * draw(),
  };
}

export function seedOf(text: string): number {
  let hash = 2166136261;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16777619);
  return hash | 0;
}

/**
 * Hours from daily means: the means as they were observed, a day's swing made up (a clear day swings more; water near
 * 0 °C hardly; each place has its share and its hour), noise and resolution of a logger. `days` is the network's
 * own weather: neighbours share it.
 */
export function hourly(winter: DailyWinter): HourlyWinter {
  const { station, firstDay, water, air } = winter;
  const place = placeOf(station);
  const noise = normals(seedOf(`${station} ${firstDay}`));
  const length = WINTER_DAYS * 24;
  const at = new Float64Array(length);
  const [kept, airKept] = [new Float64Array(length), new Float64Array(length)];
  const clear = Float64Array.from({ length: WINTER_DAYS }, (_, d) => uniform(firstDay * 1000 + d)());
  const [waterHours, airHours] = [meanKeeping(water), meanKeeping(air)];
  for (let i = 0; i < length; i++) {
    const d = Math.floor(i / 24);
    const hour = i % 24;
    at[i] = (firstDay * 24 + i) * HOUR;
    const season = 0.35 + 0.65 * Math.max(0, Math.cos(((d - 272) / 365) * 2 * Math.PI));
    const open = Math.max(0, Math.min(1, (waterHours[i] - 0.3) / 3));
    const amplitude = 1.6 * place.swing * season * open * (0.25 + clear[d]);
    const phase = Math.cos(((hour - 16 - place.late) / 24) * 2 * Math.PI);
    const shown = Math.max(-0.02, waterHours[i] + amplitude * phase) + place.bias + place.noise * noise();
    kept[i] = rounded(shown, place.decimals);
    const airSwing = (2 + 5 * clear[d]) * Math.cos(((hour - 15) / 24) * 2 * Math.PI);
    airKept[i] = rounded(airHours[i] + airSwing + 0.5 * noise(), 1);
  }
  return { station, firstDay, at, water: kept, air: airKept };
}

/** Through the days' noons in straight lines. */
function meanKeeping(days: Float64Array): Float64Array {
  return Float64Array.from({ length: days.length * 24 }, (_, i) => {
    const noon = (i - 11.5) / 24;
    const d = Math.max(0, Math.min(days.length - 2, Math.floor(noon)));
    const share = Math.max(0, Math.min(1, noon - d));
    return days[d] + share * (days[d + 1] - days[d]);
  });
}

export function rounded(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals) / 10 ** decimals;
}
