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

/** A record is looked at for every box and limit: what of it is water is worked out once. */
const waters = new WeakMap<WaterRecord, Readings>();
const ices = new WeakMap<WaterRecord, Readings>();

/** The readings that are of the water: no failed ones, none from air, snow or ice. */
export function inWater(record: WaterRecord): Readings {
  const known = waters.get(record);
  if (known !== undefined) return known;
  const made = masked(record, [...OUT_OF_WATER, ...FROZEN]);
  const { value, usable } = made;
  for (let i = 0; i < value.length; i++) if (value[i] < NO_WATER) usable[i] = 0;
  waters.set(record, made);
  return made;
}

/** The same with those of a logger that is frozen in, for judging whether the eggs beside it are. */
export function inWaterOrIce(record: WaterRecord): Readings {
  const made = ices.get(record) ?? masked(record, OUT_OF_WATER);
  ices.set(record, made);
  return made;
}

function masked(
  { at, value, flag, findings }: WaterRecord,
  kinds: readonly Finding['kind'][],
): Readings & { readonly usable: Uint8Array } {
  const usable = new Uint8Array(flag.length);
  for (let i = 0; i < flag.length; i++) usable[i] = flag[i] <= 3 ? 1 : 0;
  for (const { kind, from, to, flag: found } of findings) {
    if (found < 3 || !kinds.includes(kind)) continue;
    for (let i = firstFrom(at, from); i < at.length && at[i] <= to; i++) usable[i] = 0;
  }
  return { at, value, usable };
}
