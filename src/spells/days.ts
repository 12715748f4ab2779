import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import { standardOffset } from '../season/index.js';

/** Midnight of a local standard day. */
export const beginOfDay = (day: DayNumber, zone: string): EpochMillis =>
  day * 86_400_000 - standardOffset(zone) * 60_000;

/** The local standard day, with the fraction of it gone, that a moment falls in. */
export const dayTimeOf = (at: EpochMillis, zone: string): DayNumber =>
  (at + standardOffset(zone) * 60_000) / 86_400_000;
