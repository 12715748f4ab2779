import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { EpochMillis } from '../../forecasting/units.js';
import type { KeyedNews } from '../messages/index.js';
import { type NamedAddresses, NetworkFailed } from '../network/index.js';
import type { FeedSetting } from '../settings/index.js';
import type { FeedBook, FeedRow } from '../store/index.js';
import { fetchFeed } from './fetch.js';
import { newFiles } from './folder.js';
import { type PushedReading, Pushes } from './push.js';
import type { FeedRemark } from './remark.js';
import { begun, followed, type Gatherer, goesOn, replaceLoad, type TakenIn, takeIn } from './take-in.js';

const MINUTE = 60_000;
const HOUR = 3_600_000;
/** A provider that answers with a later beginning than asked for has let go of what lies between (ours). */
const GAP = 6 * HOUR;
/** Most hours between tries of a failing feed. */
const LONGEST_PAUSE = 6;
/** Feeds that are asked at the same time: one that keeps us waiting does not hold the others up. */
const AT_ONCE = 4;
/** How long an address may take. */
const SECONDS = 120;

export interface FeedsOptions {
  readonly group: Gatherer;
  readonly book: FeedBook;
  readonly feeds: readonly FeedSetting[];
  readonly named: NamedAddresses;
  readonly megabytes: number;
  readonly seconds?: number;
  /** Keeps what is to be told of feeds. */
  readonly tell: (source: string, mark: string, news: readonly KeyedNews[], at: EpochMillis) => Promise<void>;
  readonly failed: (feed: string, error: unknown) => void;
}

/** A feed as it is stated and as it stands. */
export interface FeedShown {
  readonly id: string;
  readonly from: string;
  readonly row: FeedRow | null;
}

/** Stations whose readings come by themselves: watched, asked on a schedule, told of where they fall silent. */
export class Feeds {
  private readonly rows = new Map<string, FeedRow>();
  private known = false;
  private readonly pushes: Pushes;

  constructor(private readonly options: FeedsOptions) {
    this.pushes = new Pushes(options.group, join(options.group.folder, 'underice.feeds'));
  }

  async list(): Promise<readonly FeedShown[]> {
    await this.remember();
    const stated = this.options.feeds.map(({ id, folder, url }) => ({ id, from: folder ?? url ?? '' }));
    const pushed = [...this.rows.values()].filter(({ id }) => id.startsWith('push '));
    return [
      ...stated.map((one) => ({ ...one, row: shown(this.rows.get(one.id) ?? null) })),
      ...pushed.map((row) => ({ id: row.id, from: 'POST /api/v1/readings', row })),
    ];
  }

  /** Asks every feed that is due. `all`: whatever its schedule says, as after a time out of service. */
  async round(at: EpochMillis, signal: AbortSignal, all = false): Promise<void> {
    await this.remember();
    const due = this.options.feeds.filter(({ id }) => all || (this.rows.get(id)?.next ?? at) <= at);
    const ask = async () => {
      for (let feed = due.shift(); feed !== undefined && !signal.aborted; feed = due.shift()) {
        try {
          await this.askOne(feed, this.rows.get(feed.id) ?? neverAsked(feed.id, at), at, signal);
        } catch (error) {
          this.options.failed(feed.id, error);
        }
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, ask));
  }

  /** Takes readings that a station sent. Sent again, they change nothing. @throws MessagesRefused */
  async push(
    station: string,
    readings: readonly PushedReading[],
    who: string,
    at: EpochMillis,
  ): Promise<TakenIn> {
    await this.remember();
    const taken = await this.pushes.take(station, readings, who);
    const id = `push ${station}`;
    const before = this.rows.get(id) ?? neverAsked(id, at);
    const remark: FeedRemark = { code: 'feed-pushed', with: { readings: taken.fresh } };
    await this.keep({
      ...before,
      state: 'fresh',
      tried: at,
      fresh: at,
      told: null,
      answer: JSON.stringify(remark),
    });
    return taken;
  }

  private async askOne(
    feed: FeedSetting,
    before: FeedRow,
    at: EpochMillis,
    signal: AbortSignal,
  ): Promise<void> {
    const last = feed.station === undefined ? null : await this.lastReading(feed.station);
    const asked =
      feed.folder === undefined
        ? await this.askAddress(feed, feed.url ?? '', before, last, at, signal)
        : await this.askFolder(feed, feed.folder, before);
    if (signal.aborted && asked.state === 'failing') return;
    const failing = asked.state === 'failing';
    const tries = failing ? before.tries + 1 : 0;
    const pause = failing
      ? Math.min(LONGEST_PAUSE * HOUR, MINUTE * 2 ** Math.min(10, tries - 1))
      : feed.everyMinutes * MINUTE;
    // From the first time it is asked on, silence is counted.
    const fresh = asked.fresh ? at : (before.fresh ?? at);
    const row = { ...before, ...asked.kept, state: asked.state, tried: at, fresh, tries, next: at + pause };
    const told = asked.fresh ? null : before.told;
    const hours = (at - fresh) / HOUR;
    const silent = !asked.fresh && told === null && hours > feed.silentHours;
    const news: KeyedNews[] = [
      ...asked.news,
      ...(silent
        ? [
            {
              key: `feed ${feed.id} ${fresh}`,
              news: { kind: 'feed-silent' as const, feed: feed.id, since: fresh, hours },
            },
          ]
        : []),
    ];
    if (news.length > 0) await this.options.tell(`feed ${feed.id}`, String(at), news, at);
    await this.keep({ ...row, told: silent ? at : told, answer: JSON.stringify(asked.remark) });
  }

  private async askAddress(
    feed: FeedSetting,
    url: string,
    before: FeedRow,
    last: number | null,
    at: EpochMillis,
    signal: AbortSignal,
  ): Promise<Asked> {
    const { group, named, megabytes, seconds = SECONDS } = this.options;
    const { etag, modified, seen } = before;
    let fetched: Awaited<ReturnType<typeof fetchFeed>>;
    try {
      const bytes = megabytes * 1_000_000;
      const { keepsDays } = feed;
      fetched = await fetchFeed({
        url,
        etag,
        modified,
        seen,
        last,
        keepsDays,
        now: at,
        named,
        bytes,
        seconds,
        signal,
      });
    } catch (error) {
      if (!(error instanceof NetworkFailed)) throw error;
      return { state: 'failing', remark: error.remark, fresh: false, kept: {}, news: [] };
    }
    if (fetched.kind === 'same') return unchanged({ code: 'feed-same', with: {} });
    if (fetched.kind === 'status') {
      const { status } = fetched;
      const host = new URL(url).host;
      return {
        state: 'failing',
        remark: { code: 'network-status', with: { host, status } },
        fresh: false,
        kept: {},
        news: [],
      };
    }
    if (fetched.body.length === 0)
      return { state: 'refused', remark: { code: 'feed-empty', with: {} }, fresh: false, kept: {}, news: [] };
    const folder = join(group.folder, 'underice.feeds');
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const path = join(folder, `${feed.id}.fetched`);
    await writeFile(path, fetched.body, { mode: 0o600 });
    try {
      const [taken] = await takeIn(
        group,
        [{ path, name: `${feed.id} ${new Date(at).toISOString()}` }],
        feed.station,
      );
      if (taken === undefined) throw new Error('nothing came of the file');
      const kept = {
        etag: fetched.etag,
        modified: fetched.modified,
        seen: fetched.seen,
        load: await replaceLoad(group, feed.id, before.load, taken),
      };
      const state = taken.refused ? 'refused' : taken.fresh > 0 ? 'fresh' : 'unchanged';
      // Half a file, or a page that says "later": the next answer is read anew, whatever its ETag.
      const again = taken.refused ? { etag: null, modified: null, seen: null } : {};
      return {
        state,
        remark: taken.remark,
        fresh: taken.fresh > 0,
        kept: { ...kept, ...again },
        news: gapNews(feed, last, taken),
      };
    } finally {
      await rm(path, { force: true });
    }
  }

  private async askFolder(feed: FeedSetting, folder: string, before: FeedRow): Promise<Asked> {
    const seen = before.seen === null ? {} : seenSchema.parse(JSON.parse(before.seen));
    let found: Awaited<ReturnType<typeof newFiles>>;
    try {
      found = await newFiles(folder, seen, Date.now());
    } catch {
      return {
        state: 'failing',
        remark: { code: 'feed-no-folder', with: { folder } },
        fresh: false,
        kept: {},
        news: [],
      };
    }
    const { files, there } = found;
    if (files.length === 0) return unchanged({ code: 'feed-same', with: {} });
    const taken = await takeIn(this.options.group, files, feed.station);
    const readings = taken.reduce((sum, { fresh }) => sum + fresh, 0);
    const refused = taken.filter((one) => one.refused);
    const loads = await this.keepFiles(
      feed,
      before.load === null ? {} : seenSchema.parse(JSON.parse(before.load)),
      files.flatMap(({ name }, i) => (taken[i] === undefined ? [] : [{ name, taken: taken[i] }])),
    );
    const known = { ...there, ...Object.fromEntries(files.map(({ name, stamp }) => [name, stamp])) };
    const kept = {
      seen: JSON.stringify(known),
      load: JSON.stringify(Object.fromEntries(Object.entries(loads).filter(([name]) => name in known))),
    };
    const [only] = refused;
    const remark: FeedRemark =
      files.length === 1 && only !== undefined
        ? only.remark
        : { code: 'feed-files', with: { files: files.length, readings, refused: refused.length } };
    const state = refused.length === files.length ? 'refused' : readings > 0 ? 'fresh' : 'unchanged';
    return { state, remark, fresh: readings > 0, kept, news: [] };
  }

  /**
   * What becomes of the loads of a folder's files. A file that is written anew again and again follows itself, as what
   * an address gives does. A file of another name that goes on where one before it ended follows that one: a folder that
   * gets a new file every hour has one standing load a month. Every other file keeps a load of its own.
   */
  private async keepFiles(
    feed: FeedSetting,
    before: Readonly<Record<string, string>>,
    files: readonly { readonly name: string; readonly taken: TakenIn }[],
  ): Promise<Record<string, string>> {
    const { group } = this.options;
    const loads = { ...before };
    const waiting = [...files];
    for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
      const own = loads[file.name];
      if (own !== undefined) {
        loads[file.name] = (await replaceLoad(group, `${feed.id} ${file.name}`, own, file.taken)) ?? own;
        continue;
      }
      const from = Object.keys(loads).findLast((one) => goesOn(loads[one] ?? '', file.taken));
      // The files right behind it that go on from it are gathered with it, in one write.
      const row = [file];
      for (let [next] = waiting; next !== undefined && loads[next.name] === undefined; [next] = waiting) {
        const reached = begun(row.at(-1)?.taken ?? file.taken);
        if (reached === null || !goesOn(reached, next.taken)) break;
        row.push(next);
        waiting.shift();
      }
      const kept = await followed(
        group,
        stationsOf(feed, file.taken),
        from === undefined ? null : (loads[from] ?? null),
        row.map(({ taken }) => taken),
      );
      if (from !== undefined) delete loads[from];
      if (kept !== null) loads[row.at(-1)?.name ?? file.name] = kept;
    }
    return loads;
  }

  private async lastReading(station: string): Promise<number | null> {
    const row = (await this.options.group.stations()).find((one) => one.station === station);
    const lasts = (row?.records ?? []).map(({ last }) => last);
    return lasts.length === 0 ? null : Math.max(...lasts);
  }

  private async remember(): Promise<void> {
    if (this.known) return;
    for (const row of await this.options.book.feeds()) this.rows.set(row.id, row);
    this.known = true;
  }

  private async keep(row: FeedRow): Promise<void> {
    await this.options.book.keepFeed(row);
    this.rows.set(row.id, row);
  }
}

/** Silence is counted from the first time a feed is asked: until it has given anything, that is no new reading. */
function shown(row: FeedRow | null): FeedRow | null {
  if (row === null || row.state === 'fresh' || (row.load !== null && row.load !== '{}')) return row;
  return { ...row, fresh: null };
}

interface Asked {
  readonly state: FeedRow['state'];
  readonly remark: FeedRemark;
  readonly fresh: boolean;
  readonly kept: Partial<FeedRow>;
  readonly news: readonly KeyedNews[];
}

/** What a folder's gathered loads are called before their month. */
function stationsOf({ id, station }: FeedSetting, { series }: TakenIn): string {
  return station === undefined ? `${id} ${[...new Set(series.map((one) => one.station))].join(' ')}` : id;
}

const seenSchema = z.record(z.string(), z.string());

function unchanged(remark: FeedRemark): Asked {
  return { state: 'unchanged', remark, fresh: false, kept: {}, news: [] };
}

function neverAsked(id: string, at: EpochMillis): FeedRow {
  return {
    id,
    state: 'never',
    etag: null,
    modified: null,
    seen: null,
    tried: null,
    fresh: null,
    tries: 0,
    next: at,
    told: null,
    load: null,
    answer: null,
  };
}

/** What the provider no longer keeps: between our last reading and the first it gave. */
function gapNews(feed: FeedSetting, last: number | null, taken: TakenIn): readonly KeyedNews[] {
  if (feed.station === undefined || last === null || taken.fresh === 0) return [];
  const firsts = taken.series.filter(({ station }) => station === feed.station).map(({ first }) => first);
  if (firsts.length === 0) return [];
  const first = Math.min(...firsts);
  if (first - last <= GAP) return [];
  return [
    {
      key: `gap ${feed.id} ${last} ${first}`,
      news: { kind: 'feed-gap', feed: feed.id, station: feed.station, from: last, to: first },
    },
  ];
}
