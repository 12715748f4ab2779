import { normals } from './chance.js';
import { type Kept, rounded } from './download.js';
import { type Hourly, moments, valueAt } from './hours.js';

/** What stands between the water and what a logger keeps of it. */
export interface Instrument {
  readonly seed: number;
  /** Its error, the same all winter, °C. */
  readonly bias: number;
  /** From reading to reading, one standard deviation, °C. */
  readonly noise: number;
  readonly decimals: number;
  /** Milliseconds between readings. */
  readonly interval: number;
  /** Seconds its clock runs ahead. */
  readonly fast?: number;
}

/** What the instrument kept from `from` up to and without `to`, at the times its own clock showed. */
export function keptBy(
  instrument: Instrument,
  water: Hourly | ((at: number) => number),
  from: number,
  to: number,
): Kept[] {
  const draw = normals(instrument.seed);
  const truth = typeof water === 'function' ? water : (at: number) => valueAt(water, at);
  return moments(from, to, instrument.interval).map((at) => {
    const there = truth(at - (instrument.fast ?? 0) * 1000);
    const shown = there + instrument.bias + instrument.noise * draw();
    return { at, value: rounded(shown, instrument.decimals) };
  });
}
