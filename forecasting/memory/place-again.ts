import { ENOUGH_ELSEWHERE, type NeighbourRecord } from '../gaps/candidate.js';
import { daysIn, pairSums, sumsWithout } from '../gaps/pair-sums.js';
import type { Place, Window } from '../place.js';
import type { SeasonAxis } from '../season-axis.js';
import type { Changes } from './changes.js';

/**
 * A place as it was made before, with what neighbours have read since. A place is made from the other seasons (see
 * `Place`), so what the season at hand brings to neighbours leaves it as it was.
 *
 * @param neighbour the neighbour of that name as it stands now; null where it is none
 * @returns null where what it was made from may have changed: the station itself, another season, or a neighbour that
 *   shares so little with it elsewhere that the season at hand is asked
 */
export function placeAgain(
  before: Place,
  at: { readonly axis: SeasonAxis; readonly window: Window; readonly station: string },
  changes: Changes,
  neighbour: (station: string) => NeighbourRecord | null,
): Place | null {
  const { axis, window, station } = at;
  if (changes.has(station) || !sameSpan(before, axis, window)) return null;
  const seasonBegins = axis.starts(before.season);
  const now = new Map<string, NeighbourRecord>();
  for (const [changed, first] of changes) {
    if (first < seasonBegins) return null;
    const record = neighbour(changed);
    if (record === null) continue;
    const elsewhere = sumsWithout(pairSums(axis, record.mean, before.target), [before.season]);
    if (daysIn(elsewhere) < ENOUGH_ELSEWHERE) return null;
    now.set(changed, record);
  }
  if (!before.stack.candidates.some(({ neighbour: { station } }) => now.has(station))) return before;
  const candidates = before.stack.candidates.map((candidate) => {
    const record = now.get(candidate.neighbour.station);
    return record === undefined ? candidate : { ...candidate, neighbour: record };
  });
  return { ...before, stack: { ...before.stack, candidates } };
}

function sameSpan(before: Place, axis: SeasonAxis, window: Window): boolean {
  return (
    before.axis.first === axis.first &&
    before.axis.length === axis.length &&
    before.window.start === window.start &&
    before.window.from === window.from &&
    before.window.to === window.to &&
    before.season === axis.season[window.start]
  );
}
