import { dayAndTime } from '../../words/index.js';
import type { View } from '../view.js';

const DAY = 86_400_000;

/** How instants of a series are named in a table of some of them: with the clock where there are several a day. */
export function momentNames(view: View, at: ArrayLike<number>, every: number, zone: string) {
  const [first = 0, last = 0] = [at[0], at[at.length - 1]];
  const apart = (last - first) / Math.max(1, Math.ceil(at.length / every) - 1);
  return (instant: number): string =>
    apart < DAY ? dayAndTime(view.language, instant, zone) : view.long(instant / DAY);
}
