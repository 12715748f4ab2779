import type { Finding } from '../quality/finding.js';
import type { Celsius } from '../units.js';
import type { WaterRecord } from './input.js';
import { firstFrom, type Readings } from './runs.js';

/** What a logger tells that is not in running water. */
const OUT_OF_WATER: readonly Finding['kind'][] = ['in-air', 'in-snow', 'outside-deployment'];
/** What one tells that is frozen in: not the water, but it may well be what the eggs are in. */
const FROZEN: readonly Finding['kind'][] = ['frozen-in'];

/** Flowing water supercools by about 0.04 °C (Osterkamp et al. 1983): what reads colder than this is not in it. */
const NO_WATER: Celsius = -0.7;

/** The readings that are of the water: no failed ones, none from air, snow or ice. */
export function inWater(record: WaterRecord): Readings {
  const { at, value, usable } = masked(record, [...OUT_OF_WATER, ...FROZEN]);
  return { at, value, usable: usable.map((used, i) => (value[i] < NO_WATER ? 0 : used)) };
}

/** The same with those of a logger that is frozen in, for judging whether the eggs beside it are. */
export function inWaterOrIce(record: WaterRecord): Readings {
  return masked(record, OUT_OF_WATER);
}

function masked(
  { at, value, flag, findings }: WaterRecord,
  kinds: readonly Finding['kind'][],
): Readings & { readonly usable: Uint8Array } {
  const usable = Uint8Array.from(flag, (code) => (code <= 3 ? 1 : 0));
  for (const { kind, from, to, flag: found } of findings) {
    if (found < 3 || !kinds.includes(kind)) continue;
    for (let i = firstFrom(at, from); i < at.length && at[i] <= to; i++) usable[i] = 0;
  }
  return { at, value, usable };
}
