import type { ReadingBatch, SeriesKey } from '../batch.js';

/** Rows handed on at once, about. */
export const BATCH_ROWS = 16_384;

/** Readings as growing columns; the arrays are used again after each hand-over. */
export class BatchColumns {
  length = 0;
  private capacity = 2 * BATCH_ROWS;
  private series = new Uint32Array(this.capacity);
  private at = new Float64Array(this.capacity);
  private value = new Float64Array(this.capacity);
  private line = new Float64Array(this.capacity);

  add(series: number, at: number, value: number, line: number): void {
    const n = this.length;
    if (n === this.capacity) this.grow();
    this.series[n] = series;
    this.at[n] = at;
    this.value[n] = value;
    this.line[n] = line;
    this.length = n + 1;
  }

  batch(keys: readonly SeriesKey[]): ReadingBatch {
    const { length, series, at, value, line } = this;
    return { length, keys, series, at, value, line };
  }

  clear(): void {
    this.length = 0;
  }

  private grow(): void {
    const larger = 2 * this.capacity;
    const { series, at, value, line } = this;
    this.series = new Uint32Array(larger);
    this.series.set(series);
    this.at = new Float64Array(larger);
    this.at.set(at);
    this.value = new Float64Array(larger);
    this.value.set(value);
    this.line = new Float64Array(larger);
    this.line.set(line);
    this.capacity = larger;
  }
}
