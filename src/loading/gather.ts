import { createHash } from 'node:crypto';
import type { Folder, Load, LoadNumber, Series, SeriesColumns, Write } from '../store/index.js';
import { isoDay } from '../words/index.js';

const DAY = 86_400_000;

/** A load of a feed that a newer one has followed, and where its readings are to go. */
export interface ToGather {
  readonly load: LoadNumber;
  /** The newer one. */
  readonly after: LoadNumber;
  /** What the gathered loads are called, before their month. */
  readonly name: string;
  /** The feed's gathered loads, by month ("2026-01"). */
  readonly months: Readonly<Record<string, LoadNumber>>;
}

interface Piece {
  readonly series: Series;
  readonly at: number[];
  readonly value: number[];
}

/**
 * What an older load of a feed still shows goes into the feed's load of that month, and the older one is taken back: a
 * file that holds the last thirty days and is read every hour leaves one standing load a month, not one an hour. Nothing
 * that is visible changes and nothing is lost: a load that others cover in part stays as it is.
 *
 * @returns the feed's gathered loads as they stand then.
 */
export function gather(
  folder: Folder,
  { load, after, name, months }: ToGather,
  by: string,
): Promise<Readonly<Record<string, LoadNumber>>> {
  return folder.write(by, async (write) => {
    const old = await write.load(load);
    if (old === null || old.withdrawn !== null) return months;
    const known = await seriesOf(write, old);
    const shown: Piece[] = [];
    for (const series of known) {
      const piece = await shownOf(folder, write, old, series, after);
      if (piece === null) return months;
      if (piece.at.length > 0) shown.push(piece);
    }
    const made: Record<string, LoadNumber> = { ...months };
    for (const [month, pieces] of byMonth(shown)) {
      const before = await untouched(folder, write, months[month]);
      made[month] = await keep(write, old, `${name} ${month}`, merged(before?.pieces ?? [], pieces));
      if (before !== null) await write.withdraw(before.load);
    }
    await write.withdraw(load);
    return made;
  });
}

async function seriesOf(write: Write, { series }: Load): Promise<Series[]> {
  const stations = new Map((await write.stations()).map(({ id, number }) => [id, number]));
  const all = await write.series();
  return series.flatMap(({ station, quantity, span }) =>
    all.filter(
      (one) => one.station === stations.get(station) && one.quantity === quantity && one.span === span,
    ),
  );
}

/** What a load shows, as far as the one after it does not cover that; null where a third load covers a part of it. */
async function shownOf(
  folder: Folder,
  write: Write,
  { load }: Pick<Load, 'load'>,
  series: Series,
  after: LoadNumber,
): Promise<Piece | null> {
  const brought = await folder.readings.readLoad(write, load, series.number);
  const piece: Piece = { series, at: [], value: [] };
  if (brought.at.length === 0) return piece;
  const visible = await visibleAt(folder, write, series, brought);
  for (let i = 0; i < brought.at.length; i++) {
    const by = visible.get(brought.at[i]);
    if (by === after && after !== load) continue;
    if (by !== load) return null;
    piece.at.push(brought.at[i]);
    piece.value.push(brought.value[i]);
  }
  return piece;
}

async function visibleAt(folder: Folder, write: Write, { number }: Series, { at }: SeriesColumns) {
  const read = await folder.readings.read(write, number, at[0], at[at.length - 1] + 1);
  return new Map(Array.from(read.at, (one, i) => [one, read.load[i]]));
}

/** A gathered load that nothing covers, with its readings: whoever loaded something over it is left above it. */
async function untouched(
  folder: Folder,
  write: Write,
  load: LoadNumber | undefined,
): Promise<{ readonly load: LoadNumber; readonly pieces: Piece[] } | null> {
  const standing = load === undefined ? null : await write.load(load);
  if (standing === null || standing.withdrawn !== null) return null;
  const pieces: Piece[] = [];
  for (const series of await seriesOf(write, standing)) {
    const piece = await shownOf(folder, write, standing, series, standing.load);
    if (piece === null) return null;
    pieces.push(piece);
  }
  return { load: standing.load, pieces };
}

function byMonth(pieces: readonly Piece[]): Map<string, Piece[]> {
  const months = new Map<string, Piece[]>();
  for (const { series, at, value } of pieces)
    for (let i = 0; i < at.length; i++) {
      const month = isoDay(Math.floor(at[i] / DAY)).slice(0, 7);
      const there = months.get(month) ?? [];
      months.set(month, there);
      const piece = there.find((one) => one.series === series) ?? { series, at: [], value: [] };
      if (piece.at.length === 0) there.push(piece);
      piece.at.push(at[i]);
      piece.value.push(value[i]);
    }
  return months;
}

/** Both as one, series by series, instants rising; at the same instant the later one's. */
function merged(before: readonly Piece[], after: readonly Piece[]): Piece[] {
  const all = new Map<number, { series: Series; values: Map<number, number> }>();
  for (const { series, at, value } of [...before, ...after]) {
    const one = all.get(series.number) ?? { series, values: new Map() };
    all.set(series.number, one);
    for (let i = 0; i < at.length; i++) one.values.set(at[i], value[i]);
  }
  return [...all.values()].map(({ series, values }) => {
    const at = [...values.keys()].sort((a, b) => a - b);
    return { series, at, value: at.map((one) => values.get(one) ?? Number.NaN) };
  });
}

async function keep(write: Write, old: Load, file: string, pieces: readonly Piece[]): Promise<LoadNumber> {
  const { load, writer } = await write.beginLoad();
  const hash = createHash('sha256');
  let bytes = 0;
  for (const { series, at, value } of pieces) {
    const run = { at: Float64Array.from(at), value: Float64Array.from(value) };
    for (const column of [run.at, run.value]) {
      hash.update(new Uint8Array(column.buffer));
      bytes += column.byteLength;
    }
    await writer.append({ series: series.number, length: at.length, ...run, line: null });
  }
  const { series } = await writer.finish();
  // How the feed's file was understood holds for what is gathered of it.
  const { understood } = old;
  await write.recordLoad({ load, file, sha256: hash.digest('hex'), bytes, series, understood });
  return load;
}
