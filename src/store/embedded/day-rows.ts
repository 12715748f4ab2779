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
  for await (const piece of pieces) {
    await connections.use(async (connection) => {
      const append = await TypedAppend.to(connection, 'day', TYPES);
      try {
        appendDays(append, station, piece);
      } finally {
        append.close();
      }
    });
  }
}

function appendDays(append: TypedAppend, station: number, days: DaySeries): void {
  const stations = new Int32Array(CHUNK_ROWS).fill(station);
  const numbers = new Int32Array(CHUNK_ROWS);
  const [mean, min, max, coverage] = [0, 1, 2, 3].map(() => new Float64Array(CHUNK_ROWS));
  let rows = 0;
  const flush = () => {
    if (rows > 0) append.append(rows, [stations, numbers, mean, min, max, coverage]);
    rows = 0;
  };
  for (let d = 0; d < days.mean.length; d++) {
    if (days.coverage[d] === 0) continue;
    numbers[rows] = days.firstDay + d;
    mean[rows] = days.mean[d];
    min[rows] = days.min[d];
    max[rows] = days.max[d];
    coverage[rows++] = days.coverage[d];
    if (rows === CHUNK_ROWS) flush();
  }
  flush();
}
