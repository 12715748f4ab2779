import { BIGINT, DOUBLE, type DuckDBConnection, INTEGER } from '@duckdb/node-api';
import type { LoadNumber, SeriesNumber } from '../entries.js';
import type { LoadWriter, ReadingRun, SeriesOutcome, WriterOutcome } from '../reading-store.js';
import { coverOlder } from './resolve.js';
import { oneRow, rows } from './sql.js';
import { CHUNK_ROWS, TypedAppend, WholeNumbers } from './typed-append.js';

const DUPLICATES_SHOWN = 5;

type SeriesFigures = { -readonly [Figure in keyof SeriesOutcome]: SeriesOutcome[Figure] };

function noFigures(series: SeriesNumber): SeriesFigures {
  return {
    series,
    readings: 0,
    first: 0,
    last: 0,
    min: Number.POSITIVE_INFINITY,
    max: Number.NEGATIVE_INFINITY,
    overlapping: 0,
    differing: 0,
    largestDifference: 0,
  };
}

/**
 * Appends a load's readings straight to the visible table: the newest load is visible at all its instants. Runs
 * that do not rise go through a temporary table first, where instants given twice are settled.
 */
export class EmbeddedLoadWriter implements LoadWriter {
  private straight: TypedAppend | null = null;
  private unsorted: TypedAppend | null = null;
  private readonly seriesOf = new Int32Array(CHUNK_ROWS);
  private readonly loadOf: Int32Array<ArrayBuffer>;
  private readonly instants = new WholeNumbers();
  private readonly values = new Float64Array(CHUNK_ROWS);
  private readonly lines = new Float64Array(CHUNK_ROWS);
  private rowsTaken = 0;
  /** What has come of each series; right as it is where all of it came in order. */
  private readonly figures = new Map<SeriesNumber, SeriesFigures>();

  constructor(
    private readonly connection: DuckDBConnection,
    private readonly load: LoadNumber,
  ) {
    this.loadOf = new Int32Array(CHUNK_ROWS).fill(load);
  }

  async append(run: ReadingRun): Promise<void> {
    this.rowsTaken += run.length;
    if (run.line === null) {
      this.straight ??= await TypedAppend.to(this.connection, 'visible', [INTEGER, INTEGER, BIGINT, DOUBLE]);
    } else if (this.unsorted === null) {
      await this.connection.run(
        'CREATE OR REPLACE TEMP TABLE unsorted (series INTEGER, load INTEGER, instant BIGINT, value DOUBLE, line DOUBLE)',
      );
      this.unsorted = await TypedAppend.to(this.connection, 'unsorted', [
        INTEGER,
        INTEGER,
        BIGINT,
        DOUBLE,
        DOUBLE,
      ]);
    }
    for (let from = 0; from < run.length; from += CHUNK_ROWS) this.appendChunk(run, from);
  }

  private figuresOf(series: SeriesNumber): SeriesFigures {
    const known = this.figures.get(series);
    if (known !== undefined) return known;
    const fresh = noFigures(series);
    this.figures.set(series, fresh);
    return fresh;
  }

  private appendChunk(run: ReadingRun, from: number): void {
    const count = Math.min(CHUNK_ROWS, run.length - from);
    const figures = this.figuresOf(run.series);
    this.seriesOf.fill(run.series, 0, count);
    for (let i = 0; i < count; i++) {
      this.instants.set(i, run.at[from + i]);
      const value = run.value[from + i];
      this.values[i] = value;
      if (value < figures.min) figures.min = value;
      if (value > figures.max) figures.max = value;
    }
    if (figures.readings === 0) figures.first = run.at[from];
    figures.last = run.at[from + count - 1];
    figures.readings += count;
    const columns = [this.seriesOf, this.loadOf, this.instants.column, this.values];
    if (run.line === null) {
      this.straight?.append(count, columns);
      return;
    }
    for (let i = 0; i < count; i++) this.lines[i] = run.line[from + i];
    this.unsorted?.append(count, [...columns, this.lines]);
  }

  async startAgain(): Promise<void> {
    this.closeAppenders();
    if (this.rowsTaken > 0) await this.connection.run(`DELETE FROM visible WHERE load = ${this.load}`);
    this.rowsTaken = 0;
    this.figures.clear();
  }

  async finish(): Promise<WriterOutcome> {
    const sorted = this.unsorted === null;
    this.closeAppenders();
    const duplicates = sorted ? { count: 0, examples: [] } : await this.settleUnsorted();
    const own = sorted ? [...this.figures.values()] : await this.summarise();
    const over = await coverOlder(this.connection, this.load, own);
    return { series: own.map((series) => ({ ...series, ...over.get(series.series) })), duplicates };
  }

  private closeAppenders(): void {
    this.straight?.close();
    this.unsorted?.close();
    this.straight = null;
    this.unsorted = null;
  }

  /** Rows already visible came on earlier lines of the file, so they are the ones kept. */
  private async settleUnsorted(): Promise<WriterOutcome['duplicates']> {
    const { connection, load } = this;
    await connection.run(`CREATE OR REPLACE TEMP TABLE settled AS
      SELECT u.series, u.instant, u.value, u.line,
        coalesce(v.value, first_value(u.value) OVER same) AS kept,
        v.value IS NULL AND row_number() OVER same = 1 AS stays
      FROM unsorted u LEFT JOIN visible v ON v.load = ${load} AND v.series = u.series AND v.instant = u.instant
      WINDOW same AS (PARTITION BY u.series, u.instant ORDER BY u.line)`);
    await connection.run(`INSERT INTO visible
      SELECT series, ${load}, instant, value FROM settled WHERE stays ORDER BY series, instant`);
    const left = await oneRow(connection, 'SELECT count(*) AS number FROM settled WHERE NOT stays');
    const examples = await rows(
      connection,
      `SELECT * FROM settled WHERE NOT stays ORDER BY line LIMIT ${DUPLICATES_SHOWN}`,
    );
    await connection.run('DROP TABLE settled');
    await connection.run('DROP TABLE unsorted');
    return {
      count: left.number('number'),
      examples: examples.map((row) => ({
        line: row.number('line'),
        series: row.number('series'),
        at: row.number('instant'),
        kept: row.number('kept'),
        left: row.number('value'),
      })),
    };
  }

  private async summarise(): Promise<SeriesOutcome[]> {
    const found = await rows(
      this.connection,
      `SELECT series, count(*) AS readings, min(instant) AS first, max(instant) AS last, min(value) AS least,
        max(value) AS greatest FROM visible WHERE load = ${this.load} GROUP BY series ORDER BY series`,
    );
    return found.map((row) => ({
      ...noFigures(row.number('series')),
      readings: row.number('readings'),
      first: row.number('first'),
      last: row.number('last'),
      min: row.number('least'),
      max: row.number('greatest'),
    }));
  }
}
