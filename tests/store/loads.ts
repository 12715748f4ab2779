import type { Folder, Load, Span, StationEntry, Write } from '../../src/store/index.js';

/** Readings of one file as pairs of instant and value, in file order. */
export type Readings = readonly (readonly [number, number])[];

export const MINUTE = 60_000;
export const HOUR = 3_600_000;
export const DAY = 86_400_000;

export function stationEntry(id: string, offsetMinutes = 0): StationEntry {
  return { id, kind: 'stream', zone: 'UTC', offsetMinutes, latitude: null, longitude: null };
}

let files = 0;

/** Loads readings of some stations as one file, straight through the store's door. */
export function loadReadings(
  folder: Folder,
  byStation: Readonly<Record<string, Readings>>,
  { by = 'test', span = 'instant' }: { readonly by?: string; readonly span?: Span } = {},
): Promise<Load> {
  return folder.write(by, (write) => loadIn(write, byStation, span));
}

export async function loadIn(
  write: Write,
  byStation: Readonly<Record<string, Readings>>,
  span: Span = 'instant',
): Promise<Load> {
  const { load, writer } = await write.beginLoad();
  let line = 1;
  for (const [id, readings] of Object.entries(byStation)) {
    const station = (await write.station(id)) ?? (await write.makeStation(stationEntry(id)));
    const sorted = readings.every(([at], i) => i === 0 || at > readings[i - 1][0]);
    await writer.append({
      series: await write.seriesOf(station, 'temperature', span),
      length: readings.length,
      at: Float64Array.from(readings, ([at]) => at),
      value: Float64Array.from(readings, ([, value]) => value),
      line: sorted ? null : Float64Array.from(readings, () => ++line),
    });
  }
  const { series } = await writer.finish();
  files += 1;
  return write.recordLoad({
    load,
    file: `file-${files}.csv`,
    sha256: `${files}`,
    bytes: 1,
    series,
    understood: '{}',
  });
}

/** Visible readings of a station, as pairs. */
export async function visible(folder: Folder, id: string): Promise<[number, number][]> {
  const station = await folder.catalogue.station(id);
  const series = (await folder.catalogue.series()).find((one) => one.station === station?.number);
  if (series === undefined) return [];
  const { at, value } = await folder.readings.read(
    folder.catalogue,
    series.number,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  );
  return Array.from(at, (instant, i) => [instant, value[i]]);
}
