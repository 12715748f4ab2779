import { z } from 'zod';
import type { Group } from '../group/index.js';
import type { FileOutcome } from '../loading/index.js';
import { say } from '../words/index.js';
import type { FeedRemark } from './remark.js';

/** Who a feed's loads are by. */
const WHO = 'feed';

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

/** What one load of a feed brought, as it is remembered until the next. */
const loadSchema = z.object({
  load: z.string(),
  series: z.array(
    z.object({
      station: z.string(),
      quantity: z.string(),
      first: z.number(),
      last: z.number(),
      readings: z.number(),
    }),
  ),
});

/**
 * Takes back the load that a new one of the same feed covers wholly: a feed that gives the season so far every hour has
 * one standing load and not thousands. Nothing changes of what is visible.
 */
export async function replaceLoad(
  group: Group,
  before: string | null,
  after: TakenIn,
): Promise<string | null> {
  if (after.load === null) return before;
  const old = before === null ? null : loadSchema.parse(JSON.parse(before));
  const covered = old?.series.every((one) =>
    after.series.some(
      (now) =>
        now.station === one.station &&
        now.quantity === one.quantity &&
        now.first <= one.first &&
        now.last >= one.last &&
        now.overlapping >= one.readings,
    ),
  );
  if (old !== null && covered === true) {
    const standing = (await group.loads()).find(({ load }) => load === old.load);
    if (standing?.withdrawn === null) await group.withdraw(old.load, WHO);
  }
  const series = after.series.map(({ station, quantity, first, last, readings }) => ({
    station,
    quantity,
    first,
    last,
    readings,
  }));
  return JSON.stringify({ load: after.load, series });
}
