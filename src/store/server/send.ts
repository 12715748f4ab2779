import type { DuckDBConnection } from '@duckdb/node-api';
import { threeColumns } from '../embedded/read-columns.js';
import type { LoadNumber, SeriesNumber } from '../entries.js';
import type { InfluxServer } from './influx-server.js';
import { linePrefix } from './points.js';

/** Lines of one batch: the fastest of 10,000, 20,000 and 50,000. */
const BATCH_LINES = 50_000;
/** Batches on their way at once: the server works on one while the next is made. */
const IN_FLIGHT = 2;

/** Takes lines and keeps two batches on their way. */
class Batches {
  private lines: string[] = [];
  private readonly flying = new Set<Promise<void>>();
  private failed: unknown = null;

  constructor(private readonly server: Pick<InfluxServer, 'write'>) {}

  /** Resolves when the server has every line. @throws what the first failed batch failed with. */
  async finish(): Promise<void> {
    await this.next();
    await this.landed();
    if (this.failed !== null) throw this.failed;
  }

  /** Nothing is on its way any more. */
  async landed(): Promise<void> {
    await Promise.all(this.flying);
  }

  full(): boolean {
    return this.lines.length >= BATCH_LINES;
  }

  push(line: string): void {
    this.lines.push(line);
  }

  async next(): Promise<void> {
    while (this.flying.size >= IN_FLIGHT) await Promise.race(this.flying);
    if (this.failed !== null) throw this.failed;
    if (this.lines.length === 0) return;
    const batch = this.lines.join('\n');
    this.lines = [];
    const sent = this.server
      .write(batch)
      .catch((error: unknown) => {
        this.failed ??= error;
      })
      .finally(() => this.flying.delete(sent));
    this.flying.add(sent);
  }
}

/** Sends all rows of a load that wait in the store file. */
export async function sendLoad(
  server: InfluxServer,
  connection: DuckDBConnection,
  load: LoadNumber,
  tag: string,
  places: ReadonlyMap<SeriesNumber, { readonly station: number; readonly field: string }>,
): Promise<void> {
  const own = (table: string) =>
    `SELECT series, instant::DOUBLE AS instant, value FROM ${table} WHERE load = ${load}`;
  const batches = new Batches(server);
  const prefixes = new Map(
    [...places].map(([series, { station, field }]) => [series, linePrefix(station, tag, field)]),
  );
  const waiting = threeColumns(connection, `${own('visible')} UNION ALL ${own('covered')}`);
  try {
    for await (const [series, at, value] of waiting) {
      for (let i = 0; i < series.length; i++) batches.push(`${prefixes.get(series[i])}${value[i]} ${at[i]}`);
      if (batches.full()) await batches.next();
    }
    await batches.finish();
  } finally {
    await batches.landed();
  }
}
