import { nearby } from '../expected.js';
import type { Finding } from '../finding.js';
import { extremes, HOUR, median, startOfHour } from '../hours.js';
import type { Judged } from '../record.js';
import { runs } from './in-air.js';
import { zeroOf } from './plateau.js';

/**
 * Bands below 0 °C (ours; flowing water supercools by at most about 0.04 °C in bulk, Osterkamp et al. 1983): to −0.2
 * nothing is said; −0.2 to −0.7 suspect, "frozen in?"; −0.7 and below for an hour, damped: freezing is possible.
 */
export const FROZEN_IN = -0.2;
export const FREEZING = -0.7;
/** A stretch goes on while readings stay below this: ice warms and cools within it, °C (ours). */
const STILL_FROZEN = -0.1;
/** Shorter stretches are frazil passing by, hours (ours). */
const LEAST_HOURS = 4;
/** Snow lets this much of the air's change through, from a day's mean to the next (ours); ice in water much less. */
const SNOW_SHARE = 0.08;

/**
 * Frozen in or lying in snow: below what water can be, and hardly swinging. Measured from the logger's own plateau, so
 * that a bias is not taken for ice. Snow and slush follow the air, damped and late; ice that water touches does not.
 */
export function frozenIn(record: Judged): Finding[] {
  if (record.kind === 'air') return [];
  const { hours } = record;
  const zero = Math.max(-0.5, Math.min(0.5, zeroOf(record)));
  const found: Finding[] = [];
  let first = -1;
  let reached = false;
  let last = -1;
  const close = () => {
    if (first >= 0 && reached && last - first + 1 >= LEAST_HOURS)
      found.push(...findings(record, first, last, zero));
    first = -1;
    reached = false;
  };
  for (let i = 0; i < hours.mean.length; i++) {
    const below = hours.mean[i] - zero;
    if (Number.isNaN(below)) {
      if (first >= 0 && i - last > 6) close();
      continue;
    }
    if (below > STILL_FROZEN) {
      close();
      continue;
    }
    if (first < 0) first = i;
    last = i;
    // By more than the last digit, and below 0 as it was read: a biased logger on the plateau is not frozen.
    if (below < FROZEN_IN - record.resolution / 4 && hours.mean[i] <= STILL_FROZEN / 2) reached = true;
  }
  close();
  return joined(found);
}

/**
 * A stretch that lies at −0.2 or above for most of its hours is the plateau of a noisy logger, a normal winter: of it only
 * hours in a row below that are told.
 */
function findings(record: Judged, first: number, last: number, zero: number): Finding[] {
  const whole = finding(record, first, last, zero);
  if (whole.kind === 'in-snow' || whole.figures.level < FROZEN_IN) return [whole];
  const below = Uint8Array.from(record.hours.mean.subarray(first, last + 1), (one) =>
    Number(one < FROZEN_IN),
  );
  return runs(below, 0)
    .filter(({ days: hours }) => hours >= LEAST_HOURS)
    .map((run) => finding(record, first + run.first, first + run.last, zero));
}

function finding(record: Judged, first: number, last: number, zero: number): Finding {
  const { hours } = record;
  const held = hours.mean.subarray(first, last + 1);
  const { low } = extremes(held);
  let freezing = 0;
  for (const one of held) if (one - zero <= FREEZING) freezing++;
  const share = followsAir(record, first, last);
  const snow = low - zero <= FREEZING && share >= SNOW_SHARE;
  return {
    kind: snow ? 'in-snow' : 'frozen-in',
    from: startOfHour(hours.first + first),
    to: startOfHour(hours.first + last) + HOUR - 1,
    // Snow is no water; ice may be what the eggs lie in, and spells have to see it.
    flag: snow ? 4 : 3,
    figures: {
      low,
      level: median(held),
      hours: last - first + 1,
      zero,
      freezing,
      limit: FROZEN_IN,
      ...(Number.isNaN(share) ? {} : { share }),
    },
    offer: null,
  };
}

/** How much of a change of the air, day by day, shows in the record: slope through the days of the stretch. */
function followsAir(record: Judged, first: number, last: number): number {
  const around = nearby(record);
  const shift = Math.round(record.offsetMinutes / 60);
  const day = (i: number) => Math.floor((record.hours.first + i + shift) / 24);
  const pairs: [number, number][] = [];
  for (let d = day(first); d <= day(last); d++) {
    const mean = record.days.mean[d - record.days.firstDay];
    // Snow answers late: half of the day before counts.
    const air = (around(d).air + around(d - 1).air) / 2;
    if (Number.isFinite(mean) && Number.isFinite(air)) pairs.push([Math.min(0, air), mean]);
  }
  if (pairs.length < 2) return Number.NaN;
  const [mx, my] = [0, 1].map((at) => pairs.reduce((sum, pair) => sum + pair[at], 0) / pairs.length);
  const sxx = pairs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  return sxx < 1 ? Number.NaN : pairs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
}

/** Stretches of the same kind less than half a day apart are one. */
function joined(found: readonly Finding[]): Finding[] {
  const kept: Finding[] = [];
  for (const one of found) {
    const before = kept.at(-1);
    if (before === undefined || before.kind !== one.kind || one.from - before.to > 12 * HOUR) {
      kept.push(one);
      continue;
    }
    const hours = before.figures.hours + one.figures.hours;
    kept[kept.length - 1] = {
      ...before,
      to: one.to,
      figures: {
        ...before.figures,
        hours,
        low: Math.min(before.figures.low, one.figures.low),
        level: (before.figures.level * before.figures.hours + one.figures.level * one.figures.hours) / hours,
        freezing: before.figures.freezing + one.figures.freezing,
      },
    };
  }
  return kept;
}
