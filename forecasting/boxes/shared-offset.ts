import type { StationDays } from '../day-series.js';
import type { BoxInput, ForecastRemark } from '../forecast.js';
import type { Celsius } from '../units.js';
import { measuredDays } from './leading-station.js';

/** Taken where a station states no accuracy (ours; common for the loggers these groups use). */
const ACCURACY_NOT_STATED: Celsius = 0.2;
/**
 * Gravel 20 cm deep was 0.5 °C warmer than the stream from October to February and 0.4 °C colder from May to August
 * (Crisp 1990, Freshwater Biology, abstract). Boxes lie between stream and that depth: half of it, on either side
 * (ours).
 */
const GRAVEL: Celsius = 0.25;
/** How far the mean of a winter at one place in a stream lies from that at another that stands for it (ours). */
const ELSEWHERE: Celsius = 0.5;

export interface SharedOffset {
  /** One standard deviation of the offset, drawn once a winter, °C. */
  readonly spread: Celsius;
  readonly remarks: readonly ForecastRemark[];
}

/**
 * What may lie between the water a station reports and the water the eggs are in, the same all winter long: the
 * logger's stated accuracy, a limit and so a rectangle of standard deviation a / sqrt(3) (JCGM 100:2008, 4.3.7);
 * the gravel, where the logger is not with the eggs; and the place, where the box's own logger has nothing yet and
 * another station stands for it.
 */
export function sharedOffset(box: BoxInput, leading: StationDays): SharedOffset {
  const { station, kind, accuracy } = leading;
  const remarks: ForecastRemark[] = [];
  const stated = accuracy > 0 && Number.isFinite(accuracy);
  // A station without a single day has no logger to be wrong: others stand for it, and the water says which.
  if (measuredDays(leading) > 0) {
    remarks.push(
      stated
        ? { code: 'logger-accuracy', with: { station, accuracy } }
        : { code: 'accuracy-not-stated', with: { station, assumed: ACCURACY_NOT_STATED } },
    );
  }
  let variance = (stated ? accuracy : ACCURACY_NOT_STATED) ** 2 / 3;
  if (kind !== 'gravel' && !(box.withEggs ?? []).includes(station)) {
    variance += GRAVEL ** 2;
    remarks.push({ code: 'gravel-offset', with: { station, spread: GRAVEL } });
  }
  const first = box.stations[0];
  if (first !== undefined && first !== station) {
    variance += ELSEWHERE ** 2;
    remarks.push({ code: 'leads-instead', with: { station, first, spread: ELSEWHERE } });
  }
  return { spread: Math.sqrt(variance), remarks };
}
