import type { TemperatureUnit } from '../download.js';

/** Temperatures are kept to a ten-thousandth of a degree: finer than any logger, and small on disk. */
const KEPT = 1e4;
/** Absolute zero in °C, and kelvins at 0 °C. */
export const ABSOLUTE_ZERO = -273.15;

/** °C rounded to 1e-4. */
export function celsius(value: number, unit: TemperatureUnit): number {
  const c = unit === 'C' ? value : unit === 'F' ? ((value - 32) * 5) / 9 : value + ABSOLUTE_ZERO;
  return Math.round(c * KEPT) / KEPT + 0;
}
