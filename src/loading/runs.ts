import type { ReadingBatch } from '../../adapters/index.js';
import type { FileRun } from './messages.js';

/** Readings of a series that travel together. */
const RUN_ROWS = 32_768;

type Columns = Pick<FileRun, 'at' | 'value' | 'line'>;

interface Filling extends Columns {
  length: number;
}

/**
 * Sorts the rows of batches into runs of one series each, so that the store lays a station's readings side by
 * side also where a file has a station in every column.
 */
export class Runs {
  private readonly filling: (Filling | null)[] = [];
  private readonly last: number[] = [];
  private readonly rises: boolean[] = [];
  private readonly spare: Columns[] = [];

  constructor(private readonly send: (run: FileRun) => void) {}

  take(batch: ReadingBatch): void {
    const { length, series, at, value, line } = batch;
    for (let i = 0; i < length; i++) {
      const s = series[i];
      const instant = at[i];
      if (!(instant > (this.last[s] ?? Number.NEGATIVE_INFINITY)) && this.rises[s] !== false) {
        this.flush(s);
        this.rises[s] = false;
      }
      this.last[s] = instant;
      const columns = this.filling[s] ?? this.begin(s);
      columns.at[columns.length] = instant;
      columns.value[columns.length] = value[i];
      columns.line[columns.length++] = line[i];
      if (columns.length === RUN_ROWS) this.flush(s);
    }
  }

  flushAll(): void {
    for (let s = 0; s < this.filling.length; s++) this.flush(s);
  }

  forget(): void {
    this.filling.length = 0;
    this.last.length = 0;
    this.rises.length = 0;
  }

  /** Columns that were taken can be filled again. */
  giveBack({ at, value, line }: FileRun): void {
    this.spare.push({ at, value, line });
  }

  private begin(s: number): Filling {
    const columns = this.spare.pop() ?? {
      at: new Float64Array(RUN_ROWS),
      value: new Float64Array(RUN_ROWS),
      line: new Float64Array(RUN_ROWS),
    };
    const filling = { ...columns, length: 0 };
    this.filling[s] = filling;
    return filling;
  }

  private flush(s: number): void {
    const columns = this.filling[s];
    if (columns === undefined || columns === null) return;
    this.filling[s] = null;
    if (columns.length > 0) this.send({ ...columns, series: s, rises: this.rises[s] !== false });
  }
}
