import type { Finding } from '../finding.js';
import { DAY } from '../hours.js';
import { type Judged, seesDays } from '../record.js';

/** The last days of a record, in which a failing battery shows (ours). */
const LAST = 4 * DAY;
/** Share of readings missing there, and before, that tells (ours). */
const MISSING = 0.25;
const MISSING_BEFORE = 0.02;

/**
 * A battery dying: a record that was whole loses readings more and more before it ends. The readings between are as
 * good as the others as long as no other test says so.
 */
export function battery(record: Judged): Finding[] {
  const { at, interval } = record;
  const last = at[at.length - 1];
  if (!seesDays(record) || at.length < 200 || last - at[0] < 3 * LAST) return [];
  const end = at.findIndex((one) => one > last - LAST);
  const missing = (first: number, to: number) =>
    1 - (to - first) / Math.max(1, Math.round((at[to] - at[first]) / interval));
  const late = missing(end, at.length - 1);
  // The month before says how whole the record was.
  const start = at.findIndex((one) => one > last - LAST - 30 * DAY);
  if (end - start < 50 || late < MISSING || missing(start, end) > MISSING_BEFORE) return [];
  return [
    {
      kind: 'battery',
      from: at[end],
      to: last,
      flag: 3,
      figures: { missing: late, days: LAST / DAY },
      offer: null,
    },
  ];
}
