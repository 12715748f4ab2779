import { type DaySeries, Origin } from '../day-series.js';
import { type Candidate, ENOUGH_ELSEWHERE, LEAST_DAYS } from '../gaps/candidate.js';
import type { Place } from '../place.js';
import type { PossibleWaters } from '../possible-waters.js';
import type { FilledStretch, ProjectionSource, WaterInput, WaterRemark } from '../water.js';
import type { SeenWater } from './sightings.js';

/** What of the possible waters is told in words. */
type Told = Pick<PossibleWaters, 'origin' | 'spread' | 'estimate'>;

/** Two records that differ by less than this, °C, on a line through 0 with slope 1 are one logger's. */
const SAME_ERROR = 0.03;
const SAME_SLOPE = 0.01;
const SAME_DAYS = 60;
/** Days on which a neighbour was not believed, from which on it is said. */
const DOUBTED_DAYS = 7;
const NAMED = 3;

/** Where the projected days come from. */
export function projectionSource(input: WaterInput, place: Place, waters: Told): ProjectionSource {
  const { members } = place;
  const projects = waters.origin.includes(Origin.projected);
  if (!projects && waters.origin.includes(Origin.none)) return { kind: 'none' };
  if (members.length === 0) return curveOrNone(input, place);
  const winters = members.map(({ season }) => season);
  const own = members.filter(({ measured, days }) => measured >= days / 2).length;
  if (own >= members.length / 2) return { kind: 'own-history', winters };
  return { kind: 'neighbour-history', winters, stations: speaking(place, waters) };
}

function curveOrNone(input: WaterInput, place: Place): ProjectionSource {
  if (place.curve) return { kind: 'stated-curve' };
  const known = place.normals.mean.some((value) => !Number.isNaN(value));
  return known && input.target.days.mean.length > 0 ? { kind: 'own-history', winters: [] } : { kind: 'none' };
}

/** The stations that carry the most weight, best first; all candidates where none spoke this season. */
function speaking(place: Place, { estimate }: Told): string[] {
  const ranked = place.stack.candidates
    .map(({ neighbour }, k) => ({ station: neighbour.station, share: estimate.share[k] }))
    .sort((a, b) => b.share - a.share);
  const spoke = ranked.filter(({ share }) => share > 0);
  return (spoke.length > 0 ? spoke : ranked).slice(0, NAMED).map(({ station }) => station);
}

/** What the water rests on, in the order a person would ask. */
export function waterRemarks(
  input: WaterInput,
  place: Place,
  waters: Told,
  stretches: readonly FilledStretch[],
  seen: SeenWater,
): WaterRemark[] {
  const station = input.target.station;
  const remarks: WaterRemark[] = [...fillRemarks(place, waters, stretches)];
  const source = projectionSource(input, place, waters);
  if (source.kind === 'none') remarks.push({ code: 'no-water', with: { station } });
  else if (waters.origin.includes(Origin.projected)) remarks.push(projectionRemark(source));
  if (source.kind === 'none' || source.kind === 'stated-curve') remarks.push(...historiesNotShared(input));
  for (const candidate of place.stack.candidates) {
    if (sameLogger(candidate)) {
      remarks.push({ code: 'same-logger', with: { station, as: candidate.neighbour.station } });
    }
  }
  for (const [k, { neighbour }] of place.stack.candidates.entries()) {
    const days = waters.estimate.doubted[k];
    if (days >= DOUBTED_DAYS)
      remarks.push({ code: 'neighbour-doubted', with: { station: neighbour.station, days } });
  }
  if (seen.used > 0) remarks.push({ code: 'sightings-used', with: { count: seen.used } });
  if (seen.iceDoubted) remarks.push({ code: 'ice-doubted', with: { station } });
  return remarks;
}

/** Neighbours whose record would say what is to come, had they been there together with the station for some weeks. */
function historiesNotShared({ target, neighbours }: WaterInput): WaterRemark[] {
  const told = new Map<string, WaterRemark>();
  for (const { station, kind, days } of neighbours) {
    const long = daysOf(days) >= ENOUGH_ELSEWHERE;
    if (!long || kind === 'tank' || kind === 'air' || station === target.station) continue;
    const shared = sharedDays(target.days, days);
    if (shared < LEAST_DAYS)
      told.set(station, {
        code: 'history-not-shared',
        with: { station: target.station, other: station, shared, least: LEAST_DAYS },
      });
  }
  return [...told.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .slice(0, NAMED)
    .map(([, remark]) => remark);
}

function daysOf({ mean }: DaySeries): number {
  return mean.reduce((count, value) => (Number.isNaN(value) ? count : count + 1), 0);
}

function sharedDays(one: DaySeries, other: DaySeries): number {
  const ahead = one.firstDay - other.firstDay;
  return one.mean.reduce(
    (count, value, i) =>
      Number.isNaN(value) || Number.isNaN(other.mean[i + ahead] ?? Number.NaN) ? count : count + 1,
    0,
  );
}

function projectionRemark(source: Exclude<ProjectionSource, { kind: 'none' }>): WaterRemark {
  if (source.kind === 'stated-curve') return { code: 'stated-curve', with: {} };
  const winters = source.winters.length;
  if (source.kind === 'own-history') return { code: 'own-history', with: { winters } };
  return { code: 'neighbour-history', with: { winters, stations: source.stations.join(', ') } };
}

function fillRemarks(place: Place, waters: Told, stretches: readonly FilledStretch[]): WaterRemark[] {
  if (stretches.length === 0) return [];
  const stations = speaking(place, waters).join(', ');
  const used = place.stack.candidates.filter((_, k) => waters.estimate.share[k] > 0);
  if (used.every(({ n }) => n === 0)) {
    return [{ code: 'as-it-stands', with: { stations, error: used[0]?.error ?? Number.NaN } }];
  }
  let squares = 0;
  let days = 0;
  for (const { from, to } of stretches) {
    const first = place.axis.first + place.window.start;
    for (let d = from - first; d <= to - first; d++) {
      squares += waters.spread[d] ** 2;
      days++;
    }
  }
  const remarks: WaterRemark[] = [
    { code: 'filled-from', with: { stations, days, error: Math.sqrt(squares / days) } },
  ];
  if (used.every(({ asksSeason }) => asksSeason))
    remarks.push({ code: 'this-season-only', with: { stations } });
  return remarks;
}

/** A neighbour that says the same to a few hundredths of a degree is the same logger under another name. */
export function sameLogger({ relation, error, n }: Candidate): boolean {
  return n >= SAME_DAYS && error < SAME_ERROR && Math.abs(relation.overall.slope - 1) < SAME_SLOPE;
}
