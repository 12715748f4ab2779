import { createHash } from 'node:crypto';
import type { Folder, Load, LoadNumber, Series, SeriesColumns, Write } from '../store/index.js';
import { isoDay } from '../words/index.js';
import { batteriesIn, mergedBatteries, rememberedWith } from './battery.js';

const DAY = 86_400_000;

/** Loads of a feed that a newer one has followed, and where their readings are to go. */
export interface ToGather {
  /** Oldest first; each but the first follows the one before it. */
  readonly loads: readonly LoadNumber[];
  /** The newest one, which stays as it is. */
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
 * What older loads of a feed still show goes into the feed's load of that month, and they are taken back: a file that
 * holds the last thirty days and is read every hour leaves one standing load a month, not one an hour; so do files of an
 * hour each. Nothing that is visible changes and nothing is lost: a load that others cover in part stays as it is.
 *
 * @returns the feed's gathered loads as they stand then.
 */
export function gather(
  folder: Folder,
  { loads, after, name, months }: ToGather,
  by: string,
): Promise<Readonly<Record<string, LoadNumber>>> {
  return folder.write(by, async (write) => {
    const gathered: Load[] = [];
    const shown: Piece[] = [];
    for (const [i, number] of loads.entries()) {
      const old = await write.load(number);
      if (old === null || old.withdrawn !== null) continue;
      const pieces = await piecesOf(folder, write, old, new Set([...loads.slice(i + 1), after]));
      if (pieces === null) continue;
      gathered.push(old);
      shown.push(...pieces);
    }
    const newest = gathered.at(-1);
    if (newest === undefined) return months;
    const understood = gathered.reduce((before, { understood }) => told(before, understood), '');
    const made: Record<string, LoadNumber> = { ...months };
    for (const [month, pieces] of byMonth(shown)) {
      const before = await untouched(folder, write, months[month]);
      const whole = merged(before?.pieces ?? [], pieces);
      made[month] = await keep(write, told(before?.understood ?? '', understood), `${name} ${month}`, whole);
      if (before !== null) await write.withdraw(before.load);
    }
    for (const { load } of gathered) await write.withdraw(load);
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

/** What a load shows, series by series; null where others than the ones after it cover a part of it. */
async function piecesOf(
  folder: Folder,
  write: Write,
  old: Load,
  after: ReadonlySet<LoadNumber>,
): Promise<Piece[] | null> {
  const shown: Piece[] = [];
  for (const series of await seriesOf(write, old)) {
    const piece = await shownOf(folder, write, old, series, after);
    if (piece === null) return null;
    if (piece.at.length > 0) shown.push(piece);
  }
  return shown;
}

async function shownOf(
  folder: Folder,
  write: Write,
  { load }: Pick<Load, 'load'>,
  series: Series,
  after: ReadonlySet<LoadNumber>,
): Promise<Piece | null> {
  const brought = await folder.readings.readLoad(write, load, series.number);
  const piece: Piece = { series, at: [], value: [] };
  if (brought.at.length === 0) return piece;
  const visible = await visibleAt(folder, write, series, brought);
  for (let i = 0; i < brought.at.length; i++) {
    const by = visible.get(brought.at[i]);
    if (by !== load && by !== undefined && after.has(by)) continue;
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
): Promise<{ readonly load: LoadNumber; readonly understood: string; readonly pieces: Piece[] } | null> {
  const standing = load === undefined ? null : await write.load(load);
  if (standing === null || standing.withdrawn !== null) return null;
  const pieces = await piecesOf(folder, write, standing, new Set());
  if (pieces === null) return null;
  return { load: standing.load, understood: standing.understood, pieces };
}

function byMonth(pieces: readonly Piece[]): Map<string, Piece[]> {
  const months = new Map<string, Piece[]>();
  for (const { series, at, value } of pieces)
    for (let i = 0; i < at.length; i++) {
      const month = isoDay(Math.floor(at[i] / DAY)).slice(0, 7);
      const there = months.get(month) ?? [];
      months.set(month, there);
      const piece = there.find((one) => one.series.number === series.number) ?? { series, at: [], value: [] };
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

/** How the newer file was understood holds for what is gathered; of the battery both tell. '': nothing before. */
function told(before: string, understood: string): string {
  if (before === '') return understood;
  const battery = mergedBatteries(batteriesIn(before), batteriesIn(understood));
  return battery.length === 0 ? understood : rememberedWith(understood, battery);
}

async function keep(
  write: Write,
  understood: string,
  file: string,
  pieces: readonly Piece[],
): Promise<LoadNumber> {
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
  await write.recordLoad({ load, file, sha256: hash.digest('hex'), bytes, series, understood });
  return load;
}
