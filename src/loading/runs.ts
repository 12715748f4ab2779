import type { ReadingBatch } from '../../adapters/index.js';
import type { FileRun } from './messages.js';

/** Readings of a series that travel together. */
const RUN_ROWS = 32_768;

type Columns = Pick<FileRun, 'at' | 'value'>;

interface Filling extends Columns {
  readonly line: FileRun['line'];
  length: number;
}

/**
 * Sorts the rows of batches into runs of one series each, so that the store lays a station's readings side by
 * side also where a file has a station in every column. Once a series goes back in time its runs carry lines.
 */
export class Runs {
  private readonly filling: (Filling | undefined)[] = [];
  private readonly last: number[] = [];
  private readonly goesBack: boolean[] = [];
  private readonly spare: Columns[] = [];

  constructor(private readonly send: (run: FileRun) => void) {}

  take(batch: ReadingBatch): void {
    const { series, length } = batch;
    for (let from = 0; from < length; ) {
      const s = series[from];
      if (this.goesBack[s] === true) {
        from = this.copy(batch, s, from, endOf(batch, from));
        continue;
      }
      from = this.copy(batch, s, from, this.riseEnd(batch, from));
      if (from === length || series[from] !== s) continue;
      // What came in order goes before what did not.
      this.flush(s);
      this.goesBack[s] = true;
    }
  }

  flushAll(): void {
    for (let s = 0; s < this.filling.length; s++) this.flush(s);
  }

  forget(): void {
    this.filling.length = 0;
    this.last.length = 0;
    this.goesBack.length = 0;
  }

  /** Columns that were taken can be filled again. */
  giveBack({ at, value }: FileRun): void {
    this.spare.push({ at, value });
  }

  /** Where the rows of one series that follow each other end, or no longer rise. */
  private riseEnd({ at, series, length }: ReadingBatch, from: number): number {
    const s = series[from];
    let last = this.last[s] ?? Number.NEGATIVE_INFINITY;
    let to = from;
    while (to < length && series[to] === s && at[to] > last) last = at[to++];
    this.last[s] = last;
    return to;
  }

  /** Copies rows into the run of their series, which goes off when it is full. Returns `to`. */
  private copy(batch: ReadingBatch, s: number, from: number, to: number): number {
    for (let next = from; next < to; ) {
      const columns = this.filling[s] ?? this.begin(s);
      const end = Math.min(to, next + RUN_ROWS - columns.length);
      lay(columns, batch, next, end);
      next = end;
      if (columns.length === RUN_ROWS) this.flush(s);
    }
    return to;
  }

  private begin(s: number): Filling {
    const columns = this.spare.pop() ?? { at: new Float64Array(RUN_ROWS), value: new Float64Array(RUN_ROWS) };
    const line = this.goesBack[s] === true ? new Float64Array(RUN_ROWS) : null;
    const filling = { ...columns, line, length: 0 };
    this.filling[s] = filling;
    return filling;
  }

  private flush(s: number): void {
    const columns = this.filling[s];
    this.filling[s] = undefined;
    if (columns !== undefined && columns.length > 0) this.send({ ...columns, series: s });
  }
}

/** Rows of a table with a station in every column come one by one: for so few a loop is far quicker. */
const FEW = 16;

function lay(columns: Filling, { at, value, line }: ReadingBatch, from: number, to: number): void {
  const place = columns.length;
  columns.length += to - from;
  if (to - from > FEW) {
    columns.at.set(at.subarray(from, to), place);
    columns.value.set(value.subarray(from, to), place);
    columns.line?.set(line.subarray(from, to), place);
    return;
  }
  for (let i = 0; i < to - from; i++) {
    columns.at[place + i] = at[from + i];
    columns.value[place + i] = value[from + i];
    if (columns.line !== null) columns.line[place + i] = line[from + i];
  }
}

function endOf({ series, length }: ReadingBatch, from: number): number {
  let to = from + 1;
  while (to < length && series[to] === series[from]) to++;
  return to;
}
