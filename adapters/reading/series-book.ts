import type { SeriesKey } from '../batch.js';
import type { SeriesSummary } from '../download.js';
import type { StationClock } from '../zones/station-clock.js';

/** Where a value falls among those its series already has. */
export type Place = 'new' | 'same' | 'other-value';

/** Values of a series outside these °C are counted: more than half of them, and the file is refused. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export const waterRange: Range = { low: -5, high: 40 };
export const airRange: Range = { low: -60, high: 50 };
export const anything: Range = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

/** The series of a file as they turn up, with the running figures of each. */
export class SeriesBook {
  readonly keys: SeriesKey[] = [];
  /** Times that any series stepped back, and the line of the first. */
  backSteps = 0;
  firstBackStep = 0;
  repeated = 0;
  /** Readings outside their series' range. */
  outside = 0;
  private readonly clocks: (StationClock | null)[] = [];
  private low = new Float64Array(16);
  private high = new Float64Array(16);
  private lastAt = new Float64Array(16);
  private lastValue = new Float64Array(16);
  private lastLine = new Float64Array(16);
  private first = new Float64Array(16);
  private latest = new Float64Array(16);
  private min = new Float64Array(16);
  private max = new Float64Array(16);
  private rows = new Float64Array(16);
  private unordered = new Uint8Array(16);

  /** @param clock null where every row states its offset */
  open(key: SeriesKey, clock: StationClock | null, range: Range = anything): number {
    const index = this.keys.length;
    if (index === this.lastAt.length) this.grow();
    this.keys.push(key);
    this.clocks.push(clock);
    this.low[index] = range.low;
    this.high[index] = range.high;
    this.lastAt[index] = Number.NEGATIVE_INFINITY;
    this.latest[index] = Number.NEGATIVE_INFINITY;
    this.first[index] = Number.POSITIVE_INFINITY;
    this.min[index] = Number.POSITIVE_INFINITY;
    this.max[index] = Number.NEGATIVE_INFINITY;
    return index;
  }

  /** Notes a reading and says whether it is to be handed on. */
  note(series: number, at: number, value: number, line: number): Place {
    const last = this.lastAt[series];
    if (!(at > last)) {
      if (at === last) return this.sameInstant(series, value);
      this.stepBack(series, at, line);
    } else if (this.rows[series] === 0) this.first[series] = at;
    this.lastAt[series] = at;
    this.lastValue[series] = value;
    this.lastLine[series] = line;
    this.rows[series]++;
    if (value < this.low[series] || value > this.high[series]) this.outside++;
    if (value < this.min[series]) this.min[series] = value;
    if (value > this.max[series]) this.max[series] = value;
    return 'new';
  }

  /** Line and value of the newest reading of a series. */
  newest(series: number): { readonly line: number; readonly value: number } {
    return { line: this.lastLine[series], value: this.lastValue[series] };
  }

  get readings(): number {
    return this.rows.reduce((sum, n) => sum + n, 0);
  }

  get ordered(): boolean {
    return !this.unordered.includes(1);
  }

  /** @param offsetZone names the zone where the rows stated their offset themselves */
  summary(series: number, offsetZone = 'UTC'): SeriesSummary {
    return {
      rows: this.rows[series],
      first: this.first[series],
      last: Math.max(this.latest[series], this.lastAt[series]),
      min: this.min[series],
      max: this.max[series],
      zone: this.clocks[series]?.zone.name ?? offsetZone,
      ordered: this.unordered[series] === 0,
    };
  }

  private sameInstant(series: number, value: number): Place {
    if (this.lastValue[series] !== value) return 'other-value';
    this.repeated++;
    return 'same';
  }

  private stepBack(series: number, at: number, line: number): void {
    if (this.backSteps === 0) this.firstBackStep = line;
    this.backSteps++;
    this.unordered[series] = 1;
    this.latest[series] = Math.max(this.latest[series], this.lastAt[series]);
    this.first[series] = Math.min(this.first[series], at);
  }

  private grow(): void {
    const wider = (old: Float64Array<ArrayBuffer>) => {
      const next = new Float64Array(2 * old.length);
      next.set(old);
      return next;
    };
    this.low = wider(this.low);
    this.high = wider(this.high);
    this.lastAt = wider(this.lastAt);
    this.lastValue = wider(this.lastValue);
    this.lastLine = wider(this.lastLine);
    this.first = wider(this.first);
    this.latest = wider(this.latest);
    this.min = wider(this.min);
    this.max = wider(this.max);
    this.rows = wider(this.rows);
    const flags = new Uint8Array(2 * this.unordered.length);
    flags.set(this.unordered);
    this.unordered = flags;
  }
}
