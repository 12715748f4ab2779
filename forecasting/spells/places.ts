import { inWater } from './in-water.js';
import type { BoxAtRisk, LotAtRisk, SpellInput, WaterRecord } from './input.js';
import type { Readings } from './runs.js';
import { common, covered, type Stretch, united, without } from './stretches.js';

const AT_THE_EGGS: readonly WaterRecord['kind'][] = ['stream', 'gravel', 'tank'];

/** Some eggs in the water a station recorded, and when. */
export interface Place {
  readonly box: BoxAtRisk;
  readonly lot: LotAtRisk;
  readonly record: WaterRecord;
  readonly water: Readings;
  /** The box's own station, or one that stands in for it. */
  readonly own: boolean;
  readonly when: readonly Stretch[];
}

/** A record's readings of the water, and where it speaks. */
interface Spoken {
  readonly record: WaterRecord;
  readonly water: Readings;
  readonly covers: readonly Stretch[];
}

/**
 * Which record speaks for which eggs, and when: of a box's stations, in order of trust, the first that has readings of
 * the water; before planting, the hatchery's. In steps.
 */
export function* places(input: SpellInput): Generator<undefined, Place[]> {
  const spoken = new Map<string, Spoken>();
  for (const record of input.records) {
    spoken.set(record.station, speaking(record));
    yield;
  }
  const all: Place[] = [];
  for (const box of input.boxes) {
    all.push(...placesOf(box, input.now, spoken));
    yield;
  }
  return all;
}

function placesOf(box: BoxAtRisk, now: number, spoken: ReadonlyMap<string, Spoken>): Place[] {
  const end = Math.min(now, box.lifted ?? Number.POSITIVE_INFINITY);
  const trusted = byTrust(box, spoken);
  return box.lots.flatMap((lot) => {
    const inBox = [{ from: Math.max(lot.planted, lot.fertilised), to: end }];
    const beside = trusted.map(({ record, water, covers, own }) => ({
      box,
      lot,
      record,
      water,
      own,
      when: common(covers, inBox),
    }));
    return [...beside, ...hatchery(box, lot, spoken)].filter(({ when }) => when.length > 0);
  });
}

/** When measured water speaks for a box, whichever of its stations has it. */
export function measuredFor(all: readonly Place[], box: string): Stretch[] {
  return united(all.filter((place) => place.box.box === box).flatMap(({ when }) => when));
}

function speaking(record: WaterRecord): Spoken {
  const water = inWater(record);
  return { record, water, covers: covered(water) };
}

function byTrust(box: BoxAtRisk, spoken: ReadonlyMap<string, Spoken>): (Spoken & { own: boolean })[] {
  const taken: Stretch[] = [];
  return box.stations.flatMap((station, i) => {
    const known = spoken.get(station);
    if (known === undefined || !AT_THE_EGGS.includes(known.record.kind)) return [];
    const covers = without(known.covers, united(taken));
    taken.push(...known.covers);
    return [{ ...known, covers, own: i === 0 }];
  });
}

function hatchery(box: BoxAtRisk, lot: LotAtRisk, spoken: ReadonlyMap<string, Spoken>): Place[] {
  const known = lot.hatchery === null ? undefined : spoken.get(lot.hatchery);
  if (known === undefined || lot.planted <= lot.fertilised) return [];
  const when = common(known.covers, [{ from: lot.fertilised, to: lot.planted }]);
  return [{ box, lot, record: known.record, water: known.water, own: true, when }];
}
