import type { Finding } from '../finding.js';
import { DAY } from '../hours.js';
import { type Judged, type LoggerBattery, seesDays } from '../record.js';

/** Stretches at the end of a record in which a failing battery shows, the shortest first (ours). */
const LAST = [4 * DAY, 8 * DAY, 16 * DAY];
/** Share of readings missing there that tells by itself, and where the file says that the battery is low (ours). */
const MISSING = 0.25;
const MISSING_WHERE_LOW = 0.1;
/** A record that missed more than this in the month before was never whole (ours). */
const MISSING_BEFORE = 0.02;
/** Holes it takes at least: one outage is no battery (ours). */
const HOLES = 3;

/**
 * A battery this much below its highest voltage is low (ours). Loggers do not say what cells they have: lithium cells
 * end at 2.0 of 3.6 or 3.0 V, an alkaline cell at 0.9 of 1.5 V, lead at 10.5 of 12 V (common practice), and each is
 * near its end, or half used, below 0.85. The cold of a winter takes less than that off (ours).
 */
export const LOW_SHARE = 0.85;
/** Or this little of its charge, in % (common practice). */
export const LOW_PERCENT = 20;
/** What a file says more than this after the record's last reading is not of this record (ours). */
const LATER = 30 * DAY;

/**
 * A battery dying: a record that was whole loses readings more and more before it ends, or the file says by its
 * battery column or a remark that it is low. Readings missing make the last days suspect; a low battery alone is for
 * information: the readings are as good as the others as long as no other test says so.
 */
export function battery(record: Judged): Finding[] {
  const { at } = record;
  const told = saidOf(record);
  const gaps = growingGaps(record, told.low ? MISSING_WHERE_LOW : MISSING);
  const to = at[at.length - 1];
  if (gaps !== null)
    return [
      {
        kind: 'battery',
        from: gaps.from,
        to,
        flag: 3,
        figures: { ...gaps.figures, ...told.figures },
        offer: null,
      },
    ];
  if (!told.low) return [];
  const early = endedEarly(record);
  const from = Math.min(to, Math.max(at[0], told.since));
  return [
    {
      kind: 'battery',
      from,
      to,
      flag: 1,
      figures: { ...told.figures, ...(early === null ? {} : { early }) },
      offer: null,
    },
  ];
}

interface Said {
  readonly low: boolean;
  readonly since: number;
  readonly figures: Readonly<Record<string, number>>;
}

/** What the newest file that speaks of the battery says of it. */
function saidOf({ at, batteries }: Judged): Said {
  const [first, end] = [at[0], at[at.length - 1]];
  const about = batteries.filter(({ last, low }) => {
    const when = Math.max(last?.at ?? Number.NEGATIVE_INFINITY, low ?? Number.NEGATIVE_INFINITY);
    return when >= first && when <= end + LATER;
  });
  const newest = about.at(-1);
  if (newest === undefined) return { low: false, since: end, figures: {} };
  const { unit, highest, last, low } = newest;
  const figures = {
    ...(last === null ? {} : { last: last.value, percent: unit === '%' ? 1 : 0 }),
    ...(last === null || highest === null ? {} : { highest }),
    ...(low === null ? {} : { remark: 1 }),
    limit: unit === '%' ? LOW_PERCENT : LOW_SHARE,
  };
  return { low: low !== null || isLow(newest), since: low ?? last?.at ?? end, figures };
}

/** Whether the last figure is below the limit. */
export function isLow({ unit, highest, last }: LoggerBattery): boolean {
  if (last === null || highest === null) return false;
  return unit === '%' ? last.value <= LOW_PERCENT : last.value < LOW_SHARE * highest;
}

/** The stretch before the end that misses readings, more of them in its second half; null where there is none. */
function growingGaps(
  record: Judged,
  limit: number,
): { readonly from: number; readonly figures: Readonly<Record<string, number>> } | null {
  const { at, interval } = record;
  const end = at.length - 1;
  if (!seesDays(record) || at.length < 200) return null;
  const missing = (first: number, to: number) =>
    to <= first ? 0 : 1 - (to - first) / Math.max(1, Math.round((at[to] - at[first]) / interval));
  for (const length of LAST) {
    if (at[end] - at[0] < 3 * length) return null;
    const from = at.findIndex((one) => one > at[end] - length);
    const half = at.findIndex((one) => one > at[end] - length / 2);
    const before = at.findIndex((one) => one > at[end] - length - 30 * DAY);
    if (from - before < 50 || missing(before, from) > MISSING_BEFORE) continue;
    const late = missing(from, end);
    if (late < limit || missing(half, end) < missing(from, half)) continue;
    const holes = [...at.subarray(from, end).keys()].filter(
      (i) => at[from + i + 1] - at[from + i] > 1.5 * interval,
    );
    if (holes.length < HOLES) continue;
    return { from: at[from + holes[0]], figures: { missing: late, days: length / DAY } };
  }
  return null;
}

/** Days between the last reading and the day the logger was taken out; null where less than two, or nobody says. */
function endedEarly({ at, deployments }: Judged): number | null {
  const end = at[at.length - 1];
  const lay = deployments.find(({ from, to }) => from <= end && to !== null && to >= end);
  if (lay?.to == null) return null;
  const days = (lay.to - end) / DAY;
  return days >= 2 ? Math.floor(days) : null;
}
