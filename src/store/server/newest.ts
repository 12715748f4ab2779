import type { SeriesColumns } from '../reading-store.js';
import { rising } from '../rising.js';

/**
 * Several rising columns as one: at an instant that more than one has, the later in the list counts.
 * Columns come oldest load first.
 */
export function newestOf(parts: readonly SeriesColumns[]): SeriesColumns {
  const some = parts.filter(({ at }) => at.length > 0);
  if (some.length === 1) return some[0];
  const length = some.reduce((sum, { at }) => sum + at.length, 0);
  const all = { at: new Float64Array(length), value: new Float64Array(length), load: new Int32Array(length) };
  let filled = 0;
  for (const { at, value, load } of some) {
    all.at.set(at, filled);
    all.value.set(value, filled);
    all.load.set(load, filled);
    filled += at.length;
  }
  // Equal instants keep the order of their columns.
  const { at, value, load } = rising(all);
  let kept = 0;
  for (let i = 0; i < length; i++) {
    if (i + 1 < length && at[i + 1] === at[i]) continue;
    at[kept] = at[i];
    value[kept] = value[i];
    load[kept++] = load[i];
  }
  return { at: at.subarray(0, kept), value: value.subarray(0, kept), load: load.subarray(0, kept) };
}
