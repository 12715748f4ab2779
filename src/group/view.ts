import type { DaySeries } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import { type Season, standardOffset } from '../season/index.js';
import type { Folder } from '../store/index.js';
import { knownDays, knownOn } from './known-days.js';

const DAY = 86_400_000;

/** The day a group is shown as of (today, unless it was opened for a day of its own), and what was known by then. */
export class View {
  constructor(
    private readonly store: Folder,
    private readonly now: () => number,
    private readonly standingAt: DayNumber | null,
  ) {}

  /** Whether the group stands at a day of its own: a logger's days then count only once it had been read. */
  get looksBack(): boolean {
    return this.standingAt !== null;
  }

  /** What is kept of each view apart: the day it stands at, 0 for today. */
  get key(): number {
    return this.standingAt ?? 0;
  }

  /** The day as of which it is shown, in the group's standard time. */
  day(season: Season): DayNumber {
    return this.standingAt ?? Math.floor((this.now() + offset(season)) / DAY);
  }

  /** The instant up to which things are judged: now, or the end of the day it stands at. Epoch milliseconds. */
  instant(season: Season): number {
    return this.standingAt === null ? this.now() : (this.standingAt + 1) * DAY - offset(season) - 1;
  }

  /** Whether a day of a station could be known on a day; everything in the folder is, unless the view looks back. */
  known(season: Season, station: string, day: DayNumber): (day: number) => boolean {
    return this.looksBack ? knownOn(season, station, day) : () => true;
  }

  /**
   * Kept days to the as-of day. Looking back, a logger's days count only once it had been read; today, what is in the
   * folder is what is known.
   */
  async days(
    season: Season,
    asOf: DayNumber,
    looksBack = this.looksBack,
  ): Promise<ReadonlyMap<string, DaySeries>> {
    const kept = await this.store.days();
    return new Map(
      [...kept].map(([station, days]) => [
        station,
        looksBack ? knownDays(days, asOf, knownOn(season, station, asOf)) : knownDays(days, asOf),
      ]),
    );
  }
}

/** The group's standard time east of UTC, milliseconds. */
function offset(season: Season): number {
  return standardOffset(season.group.zone) * 60_000;
}
