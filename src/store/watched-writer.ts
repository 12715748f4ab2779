import type { Series, SeriesNumber, Station } from './entries.js';
import { FreshDays } from './fresh-days.js';
import type { LoadWriter, ReadingRun, WriterOutcome } from './reading-store.js';

/** A load's writer that also works out the days of what passes through. */
export class WatchedWriter implements LoadWriter {
  private readonly days = new Map<SeriesNumber, FreshDays | null>();

  constructor(
    private readonly writer: LoadWriter,
    private readonly find: (series: SeriesNumber) => Promise<{ series: Series; station: Station }>,
  ) {}

  async append(run: ReadingRun): Promise<void> {
    if (!this.days.has(run.series)) this.days.set(run.series, await this.watch(run.series));
    // Readings out of order settle only when all are there.
    if (run.line !== null) this.days.set(run.series, null);
    round(run.value, run.length);
    this.days.get(run.series)?.take(run.at, run.value, run.length);
    await this.writer.append(run);
  }

  async startAgain(): Promise<void> {
    this.days.clear();
    await this.writer.startAgain();
  }

  finish(): Promise<WriterOutcome> {
    return this.writer.finish();
  }

  /** The days of a series whose readings all came in order; null where they did not. */
  daysOf(series: SeriesNumber): FreshDays | null {
    return this.days.get(series) ?? null;
  }

  private async watch(number: SeriesNumber): Promise<FreshDays | null> {
    const { series, station } = await this.find(number);
    const watched = series.quantity === 'temperature' && series.span === 'instant';
    return watched ? new FreshDays(station.offsetMinutes) : null;
  }
}

/** To 1e-4, in place: in full, a °F reading's binary fraction would cost three times the space. */
function round(value: Float64Array, length: number): void {
  // + 0 turns −0, which rounding makes of −0.00001, into 0.
  for (let i = 0; i < length; i++) value[i] = Math.round(value[i] * 1e4) / 1e4 + 0;
}
