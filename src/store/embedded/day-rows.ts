import { DOUBLE, INTEGER } from '@duckdb/node-api';
import type { DaySeries } from '../../../forecasting/day-series.js';
import type { Connections } from './connections.js';
import { CHUNK_ROWS, TypedAppend } from './typed-append.js';

const TYPES = [INTEGER, INTEGER, DOUBLE, DOUBLE, DOUBLE, DOUBLE];

/** Writes the days that readings cover, wholly or in part; days nothing is known of have no row. */
export async function keepDays(
  connections: Connections,
  station: number,
  pieces: AsyncIterable<DaySeries> | Iterable<DaySeries>,
): Promise<void> {
  const rows = new DayRows(connections, station);
  for await (const piece of pieces) await rows.add(piece);
  await rows.flush();
}

/** Rows on their way to the table of days: a long record comes in a thousand pieces of a few days each. */
class DayRows {
  private readonly stations: Int32Array<ArrayBuffer>;
  private readonly numbers = new Int32Array(CHUNK_ROWS);
  private readonly mean = new Float64Array(CHUNK_ROWS);
  private readonly min = new Float64Array(CHUNK_ROWS);
  private readonly max = new Float64Array(CHUNK_ROWS);
  private readonly coverage = new Float64Array(CHUNK_ROWS);
  private length = 0;

  constructor(
    private readonly connections: Connections,
    station: number,
  ) {
    this.stations = new Int32Array(CHUNK_ROWS).fill(station);
  }

  async add(days: DaySeries): Promise<void> {
    for (let d = 0; d < days.mean.length; d++) {
      if (days.coverage[d] === 0) continue;
      const row = this.length++;
      this.numbers[row] = days.firstDay + d;
      this.mean[row] = days.mean[d];
      this.min[row] = days.min[d];
      this.max[row] = days.max[d];
      this.coverage[row] = days.coverage[d];
      if (this.length === CHUNK_ROWS) await this.flush();
    }
  }

  async flush(): Promise<void> {
    if (this.length === 0) return;
    const { length, stations, numbers, mean, min, max, coverage } = this;
    await this.connections.use(async (connection) => {
      const append = await TypedAppend.to(connection, 'day', TYPES);
      try {
        append.append(length, [stations, numbers, mean, min, max, coverage]);
      } finally {
        append.close();
      }
    });
    this.length = 0;
  }
}
