import type { TemperatureUnit } from '../download.js';

/** Temperatures are kept to a ten-thousandth of a degree: finer than any logger, and small on disk. */
const KEPT = 1e4;
/** Levels and discharges are kept to a millionth of their unit. */
const KEPT_OTHERS = 1e6;
/** Everything in °C outside this span is no reading of water or air anywhere on earth. */
export const COLDEST = -90;
export const WARMEST = 100;
/** Absolute zero in °C, and kelvins at 0 °C. */
export const ABSOLUTE_ZERO = -273.15;

/** °C rounded to 1e-4. */
export function celsius(value: number, unit: TemperatureUnit): number {
  const c = unit === 'C' ? value : unit === 'F' ? ((value - 32) * 5) / 9 : value + ABSOLUTE_ZERO;
  return Math.round(c * KEPT) / KEPT + 0;
}

/** A level or discharge in m or m³/s, rounded to a millionth. */
export const inMetres = (value: number, factor: number): number =>
  Math.round(value * factor * KEPT_OTHERS) / KEPT_OTHERS + 0;
