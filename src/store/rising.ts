import type { SeriesColumns } from './reading-store.js';

/** The same rows by rising instant. Already rising columns come back as they are. */
export function rising(columns: SeriesColumns): SeriesColumns {
  const { at, value, load } = columns;
  let sorted = true;
  for (let i = 1; i < at.length && sorted; i++) sorted = at[i] > at[i - 1];
  if (sorted) return columns;
  const order = mergedOrder(at);
  const ordered = {
    at: new Float64Array(at.length),
    value: new Float64Array(at.length),
    load: new Int32Array(at.length),
  };
  for (let i = 0; i < order.length; i++) {
    ordered.at[i] = at[order[i]];
    ordered.value[i] = value[order[i]];
    ordered.load[i] = load[order[i]];
  }
  return ordered;
}

/** Natural merge sort: neighbouring rising runs are merged in pairs until one is left. */
function mergedOrder(at: Float64Array): Uint32Array {
  let from = Uint32Array.from(at, (_, i) => i);
  let starts = [0];
  for (let i = 1; i < at.length; i++) if (at[i] < at[i - 1]) starts.push(i);
  while (starts.length > 1) {
    const into = new Uint32Array(at.length);
    const merged: number[] = [];
    for (let run = 0; run < starts.length; run += 2) {
      const start = starts[run];
      const middle = starts[run + 1] ?? at.length;
      merged.push(start);
      mergeRuns(at, from, into, start, middle, starts[run + 2] ?? at.length);
    }
    from = into;
    starts = merged;
  }
  return from;
}

function mergeRuns(
  at: Float64Array,
  from: Uint32Array,
  into: Uint32Array,
  start: number,
  middle: number,
  end: number,
): void {
  let left = start;
  let right = middle;
  for (let i = start; i < end; i++) {
    const takeLeft = right >= end || (left < middle && at[from[left]] <= at[from[right]]);
    into[i] = takeLeft ? from[left++] : from[right++];
  }
}
