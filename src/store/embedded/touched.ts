import type { DaySeries } from '../../../forecasting/day-series.js';
import type { Catalogue } from '../catalogue.js';

/**
 * The kept days of every station, read again only where a write touched them: a series stays the same object until then.
 * And how often each station was touched, for whoever keeps what else was made of its readings.
 */
export class TouchedStations {
  private times = new Map<string, number>();
  private timesAll = 0;
  private held: ReadonlyMap<string, DaySeries> = new Map();
  /** Stations whose held days may be other by now; null: any of them. */
  private stale: Set<string> | null = null;
  private reading: Promise<unknown> = Promise.resolve();

  /** Once a write stands: of these stations (null: of all) something else is said from now on. */
  touch(stations: ReadonlySet<string> | null): void {
    if (stations === null) {
      this.timesAll++;
      this.stale = null;
      return;
    }
    for (const station of stations) {
      this.times.set(station, (this.times.get(station) ?? 0) + 1);
      this.stale?.add(station);
    }
  }

  /** Rises with everything that bears on the station's readings or days. */
  revision(station: string): number {
    return this.timesAll + (this.times.get(station) ?? 0);
  }

  days(catalogue: Catalogue): Promise<ReadonlyMap<string, DaySeries>> {
    const turn = this.reading.then(() => this.read(catalogue));
    this.reading = turn.catch(() => undefined);
    return turn;
  }

  private async read(catalogue: Catalogue): Promise<ReadonlyMap<string, DaySeries>> {
    const { stale } = this;
    if (stale !== null && stale.size === 0) return this.held;
    // What is touched while it is read is stale again.
    this.stale = new Set();
    try {
      const fresh = await catalogue.days(stale === null ? undefined : [...stale]);
      this.held = stale === null ? fresh : renewed(this.held, stale, fresh);
      return this.held;
    } catch (error) {
      this.touchAgain(stale);
      throw error;
    }
  }

  private touchAgain(stale: ReadonlySet<string> | null): void {
    if (stale === null || this.stale === null) this.stale = null;
    else for (const station of stale) this.stale.add(station);
  }
}

function renewed(
  held: ReadonlyMap<string, DaySeries>,
  stale: ReadonlySet<string>,
  fresh: ReadonlyMap<string, DaySeries>,
): ReadonlyMap<string, DaySeries> {
  const days = new Map([...held].filter(([station]) => !stale.has(station)));
  for (const [station, series] of fresh) days.set(station, series);
  return days;
}
