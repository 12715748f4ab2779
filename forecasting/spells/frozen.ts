import type { HarmLimit } from '../table.js';
import type { Celsius } from '../units.js';
import type { Candidate } from './candidate.js';
import { inWaterOrIce } from './in-water.js';
import type { Lying, SpellInput, WaterRecord } from './input.js';
import { candidate, longEnough, spanOf } from './measured.js';
import type { Place } from './places.js';
import { firstFrom, HOLE, type Readings, type Run, runsBeyond } from './runs.js';
import { meet, type Stretch } from './stretches.js';

const HOUR = 3_600_000;
/** Ice beside eggs warms and cools slowly: no more than this within a day (ours). */
const DAMPED: Celsius = 1;
/** Ice in a stream bed is no colder than this; what is, is in air or under snow on the bank (ours). */
const COLDEST_ICE: Celsius = -4;
/** A record that goes with the air by a third of its size is in it (ours). */
const FOLLOWS_SLOPE = 0.3;
const FOLLOWS_R2 = 0.6;
/** Hours of both that a comparison with the air needs (ours). */
const COMPARED = 12;

/**
 * Freezing, by the bands of the table: at or below its lethal limit for its hours, damped and not following the air,
 * measured where the eggs lie. A logger elsewhere in the stream that freezes in says nothing of the boxes.
 */
export function freezingSpells(all: readonly Place[], input: SpellInput): Candidate[] {
  const air = input.records.find(({ kind }) => kind === 'air') ?? null;
  return all.flatMap((place) =>
    place.lot.table.harm.flatMap((limit) => {
      if (limit.kind !== 'freezing' || limit.severity === 'advice') return [];
      const water = inWaterOrIce(place.record);
      return spanOf({ ...place, when: whole(place, input) }, limit, input.dayOffset).flatMap((stretch) =>
        frozenRuns(water, place.record, limit, stretch)
          .filter((run) => longEnough(run, limit) && isIce(water, run, air))
          .flatMap((run) => {
            const beside = lyingWith(place.record, place.box.box, run);
            if (beside === 'elsewhere' || (beside === 'not-said' && !place.own)) return [];
            const own = place.own && beside === 'with-eggs';
            return [candidate({ ...place, own }, limit, 'freezing', input.dayOffset, run)];
          }),
      );
    }),
  );
}

/** Ice hides water: all of the time the eggs were there counts, not only what is known to be of the water. */
function whole({ box, lot }: Place, { now }: SpellInput): Stretch[] {
  return [
    {
      from: Math.max(lot.planted, lot.fertilised),
      to: Math.min(now, box.lifted ?? Number.POSITIVE_INFINITY),
    },
  ];
}

export function frozenRuns(
  water: Readings,
  { accuracy }: WaterRecord,
  { limit }: Pick<HarmLimit, 'limit'>,
  stretch: Stretch,
): readonly Run[] {
  return runsBeyond(water, { side: 'below', limit, accuracy, ...stretch });
}

/** Where the logger lay during a run: with the eggs of this box, somewhere else, or nobody said. */
export function lyingWith(
  { kind, lying }: Pick<WaterRecord, 'kind' | 'lying'>,
  box: string,
  run: Stretch,
): 'with-eggs' | 'elsewhere' | 'not-said' {
  const then = lying.filter((one) => meet(one, run));
  if (then.length === 0) return kind === 'gravel' ? 'with-eggs' : 'not-said';
  return then.some((one) => kind === 'gravel' || withBox(one, box)) ? 'with-eggs' : 'elsewhere';
}

/** Whether a logger lay in a box, was tied to it, or lay in the gravel beside it. */
export function withBox({ lay, box: named }: Lying, box: string): boolean {
  return ['in-box', 'tied-to-box', 'gravel'].includes(lay) && (named === null || named === box);
}

/** Damped, no colder than ice in a bed gets, and not going with the air where the air is known. */
export function isIce(water: Readings, run: Run, air: WaterRecord | null): boolean {
  return run.peak >= COLDEST_ICE && isDamped(water, run) && !followsAir(water, run, air);
}

function isDamped({ at, value, usable }: Readings, { from, to }: Stretch): boolean {
  let begin = firstFrom(at, from);
  for (let i = begin; i < at.length && at[i] <= to; i++) {
    if (usable !== null && usable[i] === 0) continue;
    while (at[begin] < at[i] - 24 * HOUR) begin++;
    for (let k = begin; k < i; k++) {
      if ((usable === null || usable[k] !== 0) && Math.abs(value[i] - value[k]) > DAMPED) return false;
    }
  }
  return true;
}

function followsAir(water: Readings, { from, to }: Stretch, air: WaterRecord | null): boolean {
  if (air === null) return false;
  const pairs: [number, number][] = [];
  for (let t = from; t <= to; t += HOUR) {
    const [w, a] = [valueNear(water, t), valueNear({ ...air, usable: null }, t)];
    if (w !== null && a !== null) pairs.push([a, w]);
  }
  if (pairs.length < COMPARED) return false;
  const mean = (which: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[which], 0) / pairs.length;
  const [ma, mw] = [mean(0), mean(1)];
  let [saa, sww, saw] = [0, 0, 0];
  for (const [a, w] of pairs) {
    saa += (a - ma) ** 2;
    sww += (w - mw) ** 2;
    saw += (a - ma) * (w - mw);
  }
  if (saa <= 0 || sww <= 0) return false;
  return saw / saa > FOLLOWS_SLOPE && saw ** 2 / (saa * sww) > FOLLOWS_R2;
}

/** The reading next before a moment, if it is near enough to speak for it. */
function valueNear({ at, value, usable }: Readings, t: number): number | null {
  let i = firstFrom(at, t + 1) - 1;
  while (i >= 0 && usable !== null && usable[i] === 0) i--;
  return i >= 0 && t - at[i] <= HOLE ? value[i] : null;
}
