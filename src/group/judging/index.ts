import type { Season } from '../../season/index.js';
import type { Folder } from '../../store/index.js';
import type { Thinker } from '../thinker.js';
import { flagsOf } from './flags.js';
import { YearReader } from './record.js';
import { type Standing, spanOf, staleYears, type YearToJudge, yearsToJudge } from './years.js';

/** Readings judged at once after a write (twenty years of hourly ones); the rest waits for a quiet moment. */
const AT_ONCE = 200_000;

/** Who the checks are in the list of what was written. */
const CHECKS = 'checks';

/**
 * Keeps what the quality checks say up to date, year by year of each record. A year's judgement carries what it rests
 * on (loads, neighbours' loads, deployments, rulings); where that is another by now the year is stale and judged again:
 * at once where little was written, else between two answers of the service, or when somebody asks.
 */
export class Judging {
  /** What is being judged, one year after the other. */
  private running: Promise<unknown> = Promise.resolve();
  private stopped = false;

  constructor(
    private readonly store: Folder,
    private readonly season: () => Promise<Season>,
    private readonly thinker: Pick<Thinker, 'quality'>,
    /** Told when a flag or a finding became another. */
    private readonly changed: () => void,
  ) {}

  /** After a write: what is little is judged before it is answered, what is much goes on behind it. */
  async afterWrite(): Promise<void> {
    // What was written stands whatever comes of this: a year that could not be judged stays stale.
    const left = await this.inTurn(() => this.settle(() => true, AT_ONCE, false)).catch(() => 0);
    if (left > 0) this.begin();
  }

  /** The newest of what is stale, up to as much as is judged at once: for a command that forecasts and ends. */
  async newest(): Promise<void> {
    await this.inTurn(() => this.settle(() => true, AT_ONCE)).catch(() => 0);
  }

  /** Everything that is stale, in the background: what a service does when it starts. */
  begin(): void {
    const slice = async (): Promise<void> => {
      // In slices, so that whoever asks for one station has a turn between them.
      if ((await this.inTurn(() => this.settle(() => true, AT_ONCE))) > 0 && !this.stopped) await slice();
    };
    // What fails stays stale, and is tried again with the next write or question.
    slice().catch(() => undefined);
  }

  /** What is stale of these stations, however much that is. */
  stations(ids: readonly string[]): Promise<number> {
    const wanted = new Set(ids);
    return this.inTurn(() => this.settle((one) => wanted.has(one.station), Number.POSITIVE_INFINITY));
  }

  /** Ends after the year at hand; the others stay stale, which the next process finds. */
  async stop(): Promise<void> {
    this.stopped = true;
    await this.running;
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.running.then(work);
    this.running = turn.catch(() => undefined);
    return turn;
  }

  /** Judges stale years, newest first, up to so many readings (`one`: one year in any case); gives the years left. */
  private async settle(wanted: (year: YearToJudge) => boolean, most: number, one = true): Promise<number> {
    const standing = await this.standing();
    const { stale, gone } = staleYears(yearsToJudge(standing), await this.store.catalogue.judged());
    let changed = false;
    for (const year of gone) {
      const offset = standing.stations.find(({ id }) => id === year.station)?.offsetMinutes ?? 0;
      const nothing = { ...year, ...spanOf(year.year, offset), restsOn: null, findings: [], flags: [] };
      await this.store.write(CHECKS, (write) => write.recordJudgement(nothing));
      changed = true;
    }
    const asked = stale.filter(wanted);
    if (asked.length === 0) {
      if (changed) this.changed();
      return 0;
    }
    const { season, loads } = standing;
    const reader = new YearReader(this.store, season, loads, await this.store.days());
    let read = 0;
    let done = 0;
    for (const year of asked) {
      if (this.stopped || ((done > 0 || !one) && read + year.readings > most)) break;
      if (await this.judge(year, reader, season)) changed = true;
      read += year.readings;
      done++;
      // Between two years others are answered.
      await new Promise((resolve) => setImmediate(resolve));
    }
    if (changed) this.changed();
    return asked.length - done;
  }

  private async judge(year: YearToJudge, reader: YearReader, season: Season): Promise<boolean> {
    const record = await reader.read(year);
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
