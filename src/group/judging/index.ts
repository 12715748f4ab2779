import type { DaySeries } from '../../../forecasting/day-series.js';
import type { Season } from '../../season/index.js';
import type { Folder } from '../../store/index.js';
import { inSlices } from '../slices.js';
import type { Thinker } from '../thinker.js';
import { flagsOf } from './flags.js';
import { YearReader } from './record.js';
import { type Standing, spanOf, staleYears, type YearToJudge, yearsToJudge } from './years.js';

/** Readings judged at once after a write (twenty years of hourly ones); the rest waits for a quiet moment. */
const AT_ONCE = 200_000;
/** Whoever shows what is judged behind it is told so often, milliseconds: each time pages are drawn anew. */
const TOLD_EVERY = 10_000;

/** Who the checks are in the list of what was written. */
const CHECKS = 'checks';

/** What was stale when it was last looked, newest first, and what it is judged by: the days as they stood then. */
interface Plan {
  /** Counts writes: a plan of before the last is of no use. */
  readonly ground: number;
  readonly standing: Standing;
  readonly days: ReadonlyMap<string, DaySeries>;
  readonly left: Set<YearToJudge>;
  /** Of the year that is being judged: another year's hours are of no use to it. */
  reader: { readonly year: number; readonly reader: YearReader } | null;
}

/** What became of a turn at judging. */
interface Done {
  /** Years among those wanted that are stale still. */
  readonly left: number;
  readonly changed: boolean;
}

/**
 * Keeps what the quality checks say up to date, year by year of each record. A year's judgement carries what it rests
 * on (loads, neighbours' loads, deployments, rulings); where that is another by now the year is stale and judged again:
 * at once where little was written or somebody asks for it, else behind the answers of the service.
 */
export class Judging {
  /** What is being judged, one year after the other. */
  private running: Promise<unknown> = Promise.resolve();
  /** The loop that judges behind the answers; null where it has nothing to do. */
  private loop: Promise<void> | null = null;
  private plan: Plan | null = null;
  private ground = 0;
  private failure: { readonly error: unknown } | null = null;
  private stopped = false;

  constructor(
    private readonly store: Folder,
    private readonly season: () => Promise<Season>,
    private readonly thinker: Pick<Thinker, 'quality'>,
    /** Told when a flag or a finding became another, and when all that was judged behind the answers is. */
    private readonly changed: () => void,
  ) {}

  /** Years are being judged behind the answers: what they say may become another. */
  get behind(): boolean {
    return this.loop !== null;
  }

  /** Nothing is stale, as far as it was looked since the last write. */
  get settled(): boolean {
    return !this.behind && this.plan?.ground === this.ground && this.plan.left.size === 0;
  }

  /** After a write, whatever came of it: what is stale is another by now. */
  forget(): void {
    this.ground++;
  }

  /** After a write: what is little is judged before it is answered, what is much goes on behind it. */
  async afterWrite(): Promise<void> {
    // What was written stands whatever comes of this: a year that could not be judged stays stale.
    const left = await this.now(() => true, AT_ONCE, false).catch(() => 0);
    if (left > 0) this.begin();
  }

  /** The newest of what is stale, up to as much as is judged at once: for a command that forecasts and ends. */
  async newest(): Promise<void> {
    await this.now(() => true, AT_ONCE).catch(() => 0);
  }

  /** Everything that is stale, in the background: what a service does when it starts. */
  begin(): void {
    if (this.loop !== null || this.stopped) return;
    this.failure = null;
    this.loop = this.yearByYear()
      // What fails stays stale, and is tried again with the next write or question.
      .catch((error: unknown) => {
        this.failure = { error };
      })
      .then(() => {
        this.loop = null;
        if (!this.stopped) this.changed();
      });
  }

  /** Once nothing is stale, however long that takes. @throws what kept a year from being judged */
  async whole(): Promise<void> {
    if (this.settled) return;
    this.begin();
    await this.loop;
    if (this.failure !== null) throw this.failure.error;
  }

  /** What is stale of these stations, however much that is. */
  async stations(ids: readonly string[]): Promise<void> {
    const wanted = new Set(ids);
    await this.now((one) => wanted.has(one.station));
  }

  /**
   * What is stale of these stations' temperatures since a moment. Whether nothing at all is stale then: what is goes on
   * behind the answer where it is much.
   */
  async since(ids: readonly string[], from: number): Promise<boolean> {
    if (this.settled) return true;
    const wanted = new Set(ids);
    await this.now(
      ({ station, quantity, to }) => wanted.has(station) && quantity === 'temperature' && to >= from,
    );
    const rest = [...(this.plan?.left ?? [])].reduce((sum, { readings }) => sum + readings, 0);
    if (rest <= AT_ONCE) await this.whole();
    else this.begin();
    return this.settled;
  }

  /** Ends after the year at hand; the others stay stale, which the next process finds. */
  async stop(): Promise<void> {
    this.stopped = true;
    await this.running;
    await this.loop;
  }

  private async yearByYear(): Promise<void> {
    let told = performance.now();
    let untold = false;
    for (;;) {
      // A turn for each year, so that whoever asks for one station has one in between.
      const { left, changed } = await this.inTurn(() => this.settle(() => true, 0));
      untold ||= changed;
      if (left === 0 || this.stopped) return;
      if (untold && performance.now() - told > TOLD_EVERY) {
        this.changed();
        [told, untold] = [performance.now(), false];
      }
    }
  }

  /** Judges for somebody who waits for it; gives the years left. */
  private async now(
    wanted: (year: YearToJudge) => boolean,
    most = Number.POSITIVE_INFINITY,
    one = true,
  ): Promise<number> {
    const { left, changed } = await this.inTurn(() => this.settle(wanted, most, one));
    if (changed) this.changed();
    return left;
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.running.then(work);
    this.running = turn.catch(() => undefined);
    return turn;
  }

  /** Judges stale years, newest first, up to so many readings (`one`: one year in any case). */
  private async settle(wanted: (year: YearToJudge) => boolean, most: number, one = true): Promise<Done> {
    const known = this.plan;
    const { plan, changed: gone } =
      known?.ground === this.ground ? { plan: known, changed: false } : await this.planned();
    const asked = [...plan.left].filter(wanted);
    let changed = gone;
    let read = 0;
    let done = 0;
    for (const year of asked) {
      if (this.stopped || ((done > 0 || !one) && read + year.readings > most)) break;
      if (await this.judge(year, plan)) changed = true;
      plan.left.delete(year);
      read += year.readings;
      done++;
      // Between two years others are answered.
      await new Promise((resolve) => setImmediate(resolve));
    }
    if (plan.left.size === 0) plan.reader = null;
    return { left: asked.length - done, changed };
  }

  /** What is stale; what has nothing left to judge is taken away. */
  private async planned(): Promise<{ readonly plan: Plan; readonly changed: boolean }> {
    const { ground } = this;
    const standing = await this.standing();
    const days = await this.store.days();
    const wanted = await inSlices(yearsToJudge(standing));
    const { stale, gone } = staleYears(wanted, await this.store.catalogue.judged());
    for (const year of gone) {
      const offset = standing.stations.find(({ id }) => id === year.station)?.offsetMinutes ?? 0;
      const nothing = { ...year, ...spanOf(year.year, offset), restsOn: null, findings: [], flags: [] };
      await this.store.write(CHECKS, (write) => write.recordJudgement(nothing));
    }
    const plan = { ground, standing, days, left: new Set(stale), reader: null };
    this.plan = plan;
    return { plan, changed: gone.length > 0 };
  }

  private async judge(year: YearToJudge, plan: Plan): Promise<boolean> {
    const { season, loads } = plan.standing;
    if (plan.reader?.year !== year.year)
      plan.reader = { year: year.year, reader: new YearReader(this.store, season, loads, plan.days) };
    const record = await plan.reader.reader.read(year);
    const findings = await this.thinker.quality(record);
    const rulings = season.rulings.filter(
      ({ station, quantity, from }) =>
        station === year.station &&
        quantity === year.quantity &&
        Date.parse(from) >= year.from - 1000 &&
        Date.parse(from) <= year.to,
    );
    const { at } = record;
    const reach = at.length === 0 ? null : { first: at[0], beforeLast: at[at.length - 2] ?? at[0] - 1 };
    const flags = flagsOf(reach, findings, rulings);
    const { changed } = await this.store.write(CHECKS, (write) =>
      write.recordJudgement({ ...year, findings, flags }),
    );
    return changed;
  }

  private async standing(): Promise<Standing> {
    const { catalogue } = this.store;
    const season = await this.season();
    return {
      season,
      stations: await catalogue.stations(),
      loads: await catalogue.loads(),
      deployments: await catalogue.deployments(),
    };
  }
}
