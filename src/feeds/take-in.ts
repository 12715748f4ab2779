import { z } from 'zod';
import type { Group } from '../group/index.js';
import type { FileOutcome, ToGather } from '../loading/index.js';
import { say } from '../words/index.js';
import type { FeedRemark } from './remark.js';

/** Who a feed's loads are by. */
const WHO = 'feed';

/** A group that gathers what loads of a feed have brought. */
export interface Gatherer extends Group {
  gather(loads: ToGather, who: string): Promise<ToGather['months']>;
}

export interface TakenIn {
  readonly remark: FeedRemark;
  /** Readings that stood nowhere before. */
  readonly fresh: number;
  readonly refused: boolean;
  readonly load: string | null;
  readonly series: FileOutcome['stations'];
}

/** Loads what a feed gave, through the same door as every download. */
export async function takeIn(
  group: Group,
  files: readonly { readonly path: string; readonly name: string }[],
  station: string | undefined,
  who = WHO,
): Promise<readonly TakenIn[]> {
  const outcomes = await group.load({
    files: files.map((file) => ({ ...file, ...(station === undefined ? {} : { station }) })),
    asked: {},
    createStations: false,
    dryRun: false,
    who,
    progress: null,
  });
  return outcomes.map(takenIn);
}

function takenIn(outcome: FileOutcome): TakenIn {
  const { refused, stations, unusable, alreadyLoaded, load } = outcome;
  if (refused !== null) {
    const why = { en: say('en', refused.reason), fr: say('fr', refused.reason) };
    return {
      remark: { code: 'feed-refused', with: { why } },
      fresh: 0,
      refused: true,
      load: null,
      series: [],
    };
  }
  const fresh = alreadyLoaded ? 0 : stations.reduce((sum, one) => sum + one.readings - one.overlapping, 0);
  const figures = { readings: fresh, unusable: unusable.count };
  return {
    remark:
      fresh > 0
        ? { code: 'feed-fresh', with: figures }
        : { code: 'feed-nothing-new', with: { unusable: unusable.count } },
    fresh,
    refused: false,
    load: alreadyLoaded || load === null ? null : String(load),
    series: stations,
  };
}

/** What a file brought to one series: enough to see whether the next file goes on from it. */
const reachSchema = z.object({
  station: z.string(),
  quantity: z.string(),
  span: z.string(),
  first: z.number(),
  last: z.number(),
});

/** A feed's newest load, those that hold what older ones brought, by month, and how far the newest reaches. */
const loadSchema = z.object({
  load: z.string(),
  months: z.record(z.string(), z.number()).default({}),
  reach: z.array(reachSchema).default([]),
});

/** Months whose gathered loads are remembered: an older one is never added to again. */
const MONTHS = 6;

/**
 * Once a feed's new load stands, the one before it goes: what it still shows is gathered by month. A feed that gives
 * the season so far, or the last thirty days, every hour has a few standing loads and not thousands. Nothing changes of
 * what is visible.
 */
export async function replaceLoad(
  group: Gatherer,
  name: string,
  before: string | null,
  after: TakenIn,
): Promise<string | null> {
  if (after.load === null) return before;
  return followed(group, name, before, [after]);
}

/** The same for several loads at once, oldest first, each of which goes on from the one before it. */
export async function followed(
  group: Gatherer,
  name: string,
  before: string | null,
  after: readonly TakenIn[],
): Promise<string | null> {
  const taken = after.flatMap((one) => (one.load === null ? [] : [{ ...one, load: one.load }]));
  const newest = taken.at(-1);
  if (newest === undefined) return before;
  const old = before === null ? null : loadSchema.parse(JSON.parse(before));
  const loads = [...(old === null ? [] : [old]), ...taken.slice(0, -1)].map(({ load }) => Number(load));
  const numbers = { loads, after: Number(newest.load), name, months: old?.months ?? {} };
  const made = loads.length === 0 ? {} : await group.gather(numbers, WHO);
  const months = Object.fromEntries(
    Object.entries(made)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .slice(-MONTHS),
  );
  return JSON.stringify({ load: newest.load, months, reach: newest.series.map(reachOf) });
}

/**
 * A file that brings more days than this beyond the one before it is a download of its own, which a person may want to
 * take back; a load for each is not many (ours).
 */
const PIECE_DAYS = 8;
/** The next piece begins at most this many hours after the last reading of the one before it (ours). */
const JOIN_HOURS = 26;

const HOUR = 3_600_000;

function reachOf({ station, quantity, span, first, last }: TakenIn['series'][number]) {
  return { station, quantity, span, first, last };
}

/** What is remembered of a load that follows no other; null where nothing was loaded. */
export function begun({ load, series }: TakenIn): string | null {
  return load === null ? null : JSON.stringify({ load, months: {}, reach: series.map(reachOf) });
}

/** Whether a file goes on where what was kept of another ends: the same series, little more of it, without a hole. */
export function goesOn(before: string, after: TakenIn): boolean {
  const { reach } = loadSchema.parse(JSON.parse(before));
  const next = after.series.map(reachOf);
  if (after.load === null || next.length === 0 || next.length !== reach.length) return false;
  return next.every((one) =>
    reach.some(
      (old) =>
        old.station === one.station &&
        old.quantity === one.quantity &&
        old.span === one.span &&
        one.first >= old.first - PIECE_DAYS * 24 * HOUR &&
        one.first <= old.last + JOIN_HOURS * HOUR &&
        one.last >= old.last &&
        one.last <= old.last + PIECE_DAYS * 24 * HOUR,
    ),
  );
}
