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

/** A feed's newest load, and those that hold what older ones brought, by month. */
const loadSchema = z.object({
  load: z.string(),
  months: z.record(z.string(), z.number()).default({}),
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
  const old = before === null ? null : loadSchema.parse(JSON.parse(before));
  const numbers = { load: Number(old?.load), after: Number(after.load), name, months: old?.months ?? {} };
  const made = old === null ? {} : await group.gather(numbers, WHO);
  const months = Object.fromEntries(
    Object.entries(made)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .slice(-MONTHS),
  );
  return JSON.stringify({ load: after.load, months });
}
