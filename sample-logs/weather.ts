import { normals } from './chance.js';
import { DAY, FIRST, HOUR, HOURS, type Hourly, midnight, STANDARD_OFFSET } from './hours.js';

/** Invented air of a cold valley: year mean 6.2 °C, January about -8, July about 20. */
const YEAR_MEAN = 6.2;
const YEAR_SWING = 14.0;
/** Coldest about 20 January. */
const COLDEST_DAY = 20;
/** Weather lasts: what is left of a day's departure on the next. */
const PERSISTENCE = 0.72;

/** A spell of early heat, the hottest part in the middle: local dates and °C above what the weather was. */
const HEAT = { from: midnight('2026-05-28'), to: midnight('2026-06-03'), most: 9 };

/** Hour-by-hour air temperature of the valley, °C. */
export function airOfTheValley(seed: number): Hourly {
  const draw = normals(seed);
  const days = Math.ceil((HOURS * HOUR) / DAY) + 2;
  const departure = new Float64Array(days);
  let weather = 0;
  let winter = 0;
  for (let d = 0; d < days; d++) {
    // Each winter leans warm or cold as a whole.
    if (d % 365 === 0) winter = 1.2 * draw();
    weather = PERSISTENCE * weather + Math.sqrt(1 - PERSISTENCE ** 2) * 3.8 * draw();
    departure[d] = weather + winter * coldness(FIRST + d * DAY);
  }
  return Float64Array.from({ length: HOURS }, (_, i) => {
    const at = FIRST + i * HOUR;
    const day = Math.floor(i / 24);
    const share = (i % 24) / 24;
    const mean = YEAR_MEAN - YEAR_SWING * coldness(at);
    return mean + departure[day]! * (1 - share) + departure[day + 1]! * share + dailySwing(at) + heat(at);
  });
}

/** 1 on the coldest day of the year, -1 half a year later. */
export function coldness(at: number): number {
  const dayOfYear = ((at + STANDARD_OFFSET) / DAY) % 365.2425;
  return Math.cos((2 * Math.PI * (dayOfYear - COLDEST_DAY)) / 365.2425);
}

/** Warmest at three in the afternoon; half as wide under the low sun. */
export function dailySwing(at: number): number {
  const hour = ((at + STANDARD_OFFSET) % DAY) / HOUR;
  return (4.2 - 1.6 * coldness(at)) * Math.cos((2 * Math.PI * (hour - 15)) / 24);
}

function heat(at: number): number {
  if (at < HEAT.from || at > HEAT.to) return 0;
  return HEAT.most * Math.sin((Math.PI * (at - HEAT.from)) / (HEAT.to - HEAT.from)) ** 2;
}
