import { MINUTE } from '../fields/civil.js';
import { NO_OFFSET } from '../fields/clock-text.js';
import type { RowTime } from './row-time.js';
import type { Station, Stations } from './stations.js';

/** The instant of a row: from the offset it states itself, else from its station's clock. */
export class RowInstant {
  /** Milliseconds since 1970-01-01T00:00Z; NaN for an hour that the zone's clocks skipped. */
  at = Number.NaN;
  /** The first offset that a row stated in minutes, and whether another followed. */
  firstOffset = NO_OFFSET;
  offsetsVary = false;

  constructor(
    private readonly time: RowTime,
    private readonly stations: Stations,
  ) {}

  /** Works out `at` for the row read last, at a station. */
  settle(station: Station): void {
    const { local, offset } = this.time;
    if (offset !== NO_OFFSET) {
      this.note(offset);
      this.at = local - offset * MINUTE;
      return;
    }
    const clock = station.clock ?? this.stations.clockOf(station, local);
    this.at = local >= clock.calmFrom && local < clock.calmTo ? local - clock.offset : clock.convert(local);
    clock.lastLocal = local;
    clock.lastAt = this.at;
  }

  /** Every row before stated its offset and this one does not. */
  get lostOffset(): boolean {
    return this.firstOffset !== NO_OFFSET && this.time.offset === NO_OFFSET;
  }

  private note(offset: number): void {
    if (offset === this.firstOffset) return;
    if (this.firstOffset === NO_OFFSET) this.firstOffset = offset;
    else this.offsetsVary = true;
  }
}
