import { normals } from './chance.js';
import { FIRST, HOUR, HOURS, type Hourly } from './hours.js';
import { coldness, dailySwing } from './weather.js';

/** How one reach of the invented river answers the air. */
export interface Reach {
  readonly seed: number;
  /** Hours in which the water makes up two thirds of its distance to the air's pull. */
  readonly lag: number;
  /** What the sun adds to the air's pull in June, °C. */
  readonly sun: number;
  /** Share of ground water, at 7 °C. */
  readonly springs: number;
  /** Where the plateau under the ice lies, °C. */
  readonly plateau: number;
  /** How much of the day's swing the open water follows, beyond what the lag leaves. */
  readonly shallow: number;
}

const GROUND_WATER = 7;
/** Share of precipitation-borne snow that lies at the end of winter, in degree-hours of melt. */
const SNOW_PER_COLD_HOUR = 2.4;
const MOST_SNOW = 6500;
/** Degree-hours of thaw that open the ice cover of a whole winter. */
const MOST_ICE = 1100;
/** The bed gives back what it took up over the last weeks: its lag in hours, and its share in the pull. */
const BED_LAG = 24 * 50;
const BED_SHARE = 0.3;

/**
 * Hour-by-hour water of a reach, °C: a lagged pull towards air, sun and springs; ice that holds it at the plateau
 * until it has melted; snow water that keeps it cold through the freshet.
 */
export function waterOf(reach: Reach, air: Hourly): Hourly {
  const draw = normals(reach.seed);
  const out = new Float64Array(HOURS);
  let [water, bed, ice, snow, wander] = [14, 15, 0, 0, 0];
  for (let i = 0; i < HOURS; i++) {
    const at = FIRST + i * HOUR;
    const aloft = air[i]!;
    snow =
      aloft < -0.5 ? Math.min(MOST_SNOW, snow + SNOW_PER_COLD_HOUR) : Math.max(0, snow - Math.max(0, aloft));
    const melting = aloft > 0 && snow > 0 ? Math.min(1, aloft / 6) : 0;
    const sun = (reach.sun * (1 - coldness(at))) / 2;
    const pull = (1 - reach.springs) * (aloft + sun) + reach.springs * GROUND_WATER;
    const cold = pull * (1 - 0.75 * melting) + BED_SHARE * (bed - water);
    bed += (water - bed) / BED_LAG;
    water += (cold - water) / reach.lag;
    if (water <= 0 || ice > 0) {
      ice = Math.min(MOST_ICE, Math.max(0, ice - cold));
      if (ice > 0) water = 0;
      else water = Math.max(0, water);
    }
    wander = 0.97 * wander + 0.24 * Math.sqrt(1 - 0.97 ** 2) * draw();
    const open = Math.min(1, water / 2);
    const swing = reach.shallow * dailySwing(at - 2 * HOUR) * Math.min(1, water / 6);
    out[i] = water + open * (wander + swing) + reach.plateau * (1 - open) + 0.06 * wander * (1 - open);
  }
  return out;
}
