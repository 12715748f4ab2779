import type { DailyMeans } from '../accumulate.js';
import type { Eggs } from '../windows/eggs.js';

/**
 * The daily means some eggs lie in from the day of fertilisation to the end of the water: before planting where they
 * were then, afterwards the box's; on the day of planting each by its share.
 */
export function eggWater(eggs: Eggs, box: DailyMeans): DailyMeans {
  const { before, planted, fertilised } = eggs;
  const firstDay = Math.floor(fertilised);
  const length = Math.max(0, box.firstDay + box.mean.length - firstDay);
  const plantingDay = Math.floor(planted);
  const share = planted - plantingDay;
  const mean = Float64Array.from({ length }, (_, d) => {
    const day = firstDay + d;
    const own = valueOn(box, day);
    if (before === null || day > plantingDay) return own;
    const earlier = valueOn(before.days, day);
    return day < plantingDay ? earlier : share * earlier + (1 - share) * own;
  });
  return { firstDay, mean };
}

function valueOn(days: DailyMeans, day: number): number {
  const i = day - days.firstDay;
  return i >= 0 && i < days.mean.length ? days.mean[i] : Number.NaN;
}
