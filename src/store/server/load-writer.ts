import type { Write } from '../catalogue.js';
import { connectionsOf } from '../embedded/catalogue.js';
import { doubleColumns } from '../embedded/read-columns.js';
import type { LoadNumber } from '../entries.js';
import type {
  LoadWriter,
  ReadingRun,
  SeriesColumns,
  SeriesOutcome,
  WriterOutcome,
} from '../reading-store.js';
import type { ServerReadings } from './readings.js';

/** Values are kept to 1e-4: whatever lies further apart than half of that is another value. */
const SAME_VALUE = 0.00005;

type Overlap = Pick<SeriesOutcome, 'overlapping' | 'differing' | 'largestDifference'>;

/** Keeps a load's readings in the store file until its write commits, and says how far they overlap those on the server. */
export class ServerLoadWriter implements LoadWriter {
  constructor(
    private readonly waiting: LoadWriter,
    private readonly write: Write,
    private readonly load: LoadNumber,
    private readonly store: ServerReadings,
  ) {}

  append(run: ReadingRun): Promise<void> {
    return this.waiting.append(run);
  }

  startAgain(): Promise<void> {
    return this.waiting.startAgain();
  }

  async finish(): Promise<WriterOutcome> {
    const { series, duplicates } = await this.waiting.finish();
    const compared: SeriesOutcome[] = [];
    for (const one of series) compared.push({ ...one, ...(await this.overlap(one)) });
    return { series: compared, duplicates };
  }

  private async overlap(own: SeriesOutcome): Promise<Overlap> {
    const { overlapping, differing, largestDifference } = own;
    const sum = { overlapping, differing, largestDifference };
    const standing = await this.store.held(this.write, own.series);
    const reach = standing.filter(({ first, last }) => first <= own.last && last >= own.first);
    if (reach.length === 0) return sum;
    for (const [at, value] of await this.pieces(own)) {
      const older = await this.store.onServer(this.write, own.series, at[0], at[at.length - 1] + 1);
      add(sum, at, value, older);
    }
    return sum;
  }

  /** The load's own rows; gathered first, since the write has one connection. */
  private pieces({ series }: SeriesOutcome): Promise<(readonly [Float64Array, Float64Array])[]> {
    return connectionsOf(this.write).use(async (connection) => {
      const pieces: (readonly [Float64Array, Float64Array])[] = [];
      const query = `SELECT instant::DOUBLE AS instant, value FROM visible
        WHERE load = ${this.load} AND series = ${series} ORDER BY instant`;
      for await (const piece of doubleColumns(connection, query)) pieces.push(piece);
      return pieces;
    });
  }
}

function add(
  sum: { -readonly [Figure in keyof Overlap]: Overlap[Figure] },
  at: Float64Array,
  value: Float64Array,
  older: SeriesColumns,
): void {
  let j = 0;
  for (let i = 0; i < at.length; i++) {
    while (j < older.at.length && older.at[j] < at[i]) j++;
    if (older.at[j] !== at[i]) continue;
    sum.overlapping++;
    const difference = Math.abs(older.value[j] - value[i]);
    if (difference > SAME_VALUE) sum.differing++;
    sum.largestDifference = Math.max(sum.largestDifference, Math.round(difference * 1e4) / 1e4);
  }
}
