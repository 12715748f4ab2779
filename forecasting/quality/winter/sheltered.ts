import { nearby } from '../expected.js';
import type { Finding } from '../finding.js';
import { firstHourOf, median, startOfHour } from '../hours.js';
import type { Judged } from '../record.js';
import { runs } from './in-air.js';

/** The neighbours have to swing this much in a day before anything can be said, °C (ours). */
const TELLING_SWING = 1;
/** Less than this share of the neighbours' swing is damped; more than twice it was not before (ours). */
const DAMPED = 0.2;
const LEAST_DAYS = 14;

/**
 * Buried by gravel, or lying in a tank: the day's swing is gone while the neighbours have theirs. At a stream station
 * only, and only against what the same logger showed at other times: a spring-fed stream is always damped.
 */
export function sheltered(record: Judged): Finding[] {
  if (record.kind !== 'stream') return [];
  const { days } = record;
  const around = nearby(record);
  const share = days.swing.map((swing, d) => {
    const { waterSwing } = around(days.firstDay + d);
    return waterSwing >= TELLING_SWING ? swing / waterSwing : Number.NaN;
  });
  const free = median(share);
  const usual = median(share.filter((one) => one > DAMPED));
  if (!(usual >= 2 * DAMPED) || !(free >= DAMPED / 2)) return [];
  const damped = share.map((one) => (one <= DAMPED ? 1 : 0));
  const open = share.map((one) => (one > DAMPED ? 1 : 0));
  return runs(Uint8Array.from(damped), 3).flatMap(({ first, last, days: held }): Finding[] => {
    const against = open.subarray(first, last + 1).reduce((sum, one) => sum + one, 0);
    if (held < LEAST_DAYS || against * 4 > held) return [];
    return [
      {
        kind: 'sheltered',
        from: startOfHour(firstHourOf(days.firstDay + first, record.offsetMinutes)),
        to: startOfHour(firstHourOf(days.firstDay + last + 1, record.offsetMinutes)) - 1,
        flag: 3,
        figures: { share: median(share.subarray(first, last + 1)), usual, days: last - first + 1 },
        offer: null,
      },
    ];
  });
}
