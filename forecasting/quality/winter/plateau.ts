import { nearby } from '../expected.js';
import type { Finding } from '../finding.js';
import { DAY, firstHourOf, HOUR, median, startOfHour } from '../hours.js';
import { PLATEAU } from '../limits.js';
import type { Judged } from '../record.js';
import { runs } from './in-air.js';

/** A reading that far off 0 may still be the plateau of a biased logger, °C (ours). */
const BIAS_REACH = 0.6;
/** The plateau hardly swings in a day, °C (ours). */
const STILL = 0.2;
/** Days a plateau has to last to calibrate by, with and without somebody beside it that says the water froze (ours). */
const LEAST_DAYS = 5;
const LEAST_DAYS_ALONE = 20;
/** Smaller corrections are not worth a person's while, °C (ours). */
const LEAST_OFFER = 0.05;
/** Air this cold, as a daily mean, freezes what it touches, °C (ours). */
const FREEZING_AIR = -4;

/** A stretch of the freezing plateau: first and last day (index of the record's days), and what the logger showed. */
export interface PlateauRun {
  readonly first: number;
  readonly last: number;
  readonly level: number;
  readonly sure: boolean;
}

/** Days in a row on which a river under ice stands at 0 °C, whatever the logger makes of it. */
export function plateaus(record: Judged): PlateauRun[] {
  const { days } = record;
  const around = nearby(record);
  const still = new Uint8Array(days.mean.length);
  const sure = new Uint8Array(days.mean.length);
  for (let d = 0; d < still.length; d++) {
    if (!(Math.abs(days.mean[d]) <= BIAS_REACH && days.swing[d] <= STILL)) continue;
    const { water, air } = around(days.firstDay + d);
    if (Math.abs(water) > PLATEAU) continue;
    still[d] = 1;
    if (Math.abs(water) <= PLATEAU || air <= FREEZING_AIR) sure[d] = 1;
  }
  return runs(still, 1).map(({ first, last }) => {
    const vouched = sure.subarray(first, last + 1).reduce((sum, one) => sum + one, 0);
    return {
      first,
      last,
      level: median(days.mean.subarray(first, last + 1)),
      sure: vouched >= LEAST_DAYS || last - first + 1 >= LEAST_DAYS_ALONE,
    };
  });
}

/** What the logger shows where the water is at 0 °C: the middle of its plateaus; 0 where there was none. */
export function zeroOf(record: Judged, found: readonly PlateauRun[] = plateaus(record)): number {
  const levels = found.flatMap(({ first, last, sure }) =>
    sure ? [...record.days.mean.subarray(first, last + 1)] : [],
  );
  return levels.length === 0 ? 0 : median(levels);
}

/**
 * Bias at the freezing plateau, one finding a winter and deployment: rivers under ice stand at 0.00 °C for weeks, so
 * what a logger shows there is its error. Doubted only where it goes beyond the stated accuracy; the correction is
 * offered.
 */
export function plateauBias(record: Judged): Finding[] {
  if (record.kind === 'air' || record.kind === 'tank') return [];
  const { days, offsetMinutes, accuracy, resolution } = record;
  const winters = new Map<string, PlateauRun[]>();
  for (const run of plateaus(record)) {
    if (!run.sure) continue;
    const middle = (days.firstDay + (run.first + run.last) / 2) * DAY;
    const lay = record.deployments.findIndex(
      ({ from, to }) => middle >= from && (to === null || middle <= to),
    );
    const winter = Math.floor((middle / DAY + 10_957.5 - 10_957.5 - 212) / 365.2425);
    const key = `${lay} ${winter}`;
    winters.set(key, [...(winters.get(key) ?? []), run]);
  }
  return [...winters.values()].flatMap((found): Finding[] => {
    const all = found.flatMap(({ first, last }) => [...days.mean.subarray(first, last + 1)]);
    const level = Math.round(median(all) * 100) / 100;
    if (Math.abs(level) < Math.max(LEAST_OFFER, 0.75 * resolution)) return [];
    const { first } = found[0];
    const { last } = found[found.length - 1];
    return [
      {
        kind: 'plateau-bias',
        from: startOfHour(firstHourOf(days.firstDay + first, offsetMinutes)),
        to: startOfHour(firstHourOf(days.firstDay + last + 1, offsetMinutes)) - HOUR / 60,
        flag: Math.abs(level) > accuracy ? 3 : 1,
        figures: { bias: level, days: all.length, accuracy },
        offer: { quantity: 'temperature', add: -level, course: 'check' },
      },
    ];
  });
}
