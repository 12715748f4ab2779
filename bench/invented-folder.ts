import { seasonEntry } from '../src/group/season-entries.js';
import { renderSeason, type Season, seasonFrom } from '../src/season/index.js';
import { type Folder, openFolder, type Write } from '../src/store/index.js';

/** Readings every 15 minutes, the last of them on the bench's day. */
export const STEP = 900_000;
export const LAST = Date.UTC(2026, 1, 15);
const CHUNK = 100_000;

/** So many sites with a station each, and boxes lying at them. */
export function inventedSeason(stations: number, boxes: number): Season {
  const sites = Array.from({ length: stations }, (_, i) => ({ id: `site-${i}`, station: `station-${i}` }));
  return seasonFrom(
    {
      group: { name: 'Bench', zone: 'UTC' },
      stations: sites.map(({ station }) => ({ id: station, kind: 'stream', reports: true })),
      sites,
      lots: [{ id: 'A', fertilised: '2025-10-28 12:00', eggs: 1_000_000, table: 'atlantic-salmon' }],
      boxes: Array.from({ length: boxes }, (_, i) => ({
        id: `box-${i}`,
        site: `site-${i % stations}`,
        planted: '2025-10-28 18:00',
        fills: [{ lot: 'A', eggs: 1000 }],
      })),
    },
    'bench',
  );
}

export interface Size {
  readonly stations: number;
  readonly boxes: number;
  /** Evenly over the stations. */
  readonly readings: number;
  /** Milliseconds from one to the next (15 minutes). */
  readonly step?: number;
}

/** Makes a data folder of that size and gives it open. */
export async function inventedFolder(
  dir: string,
  { stations, boxes, readings, step = STEP }: Size,
): Promise<Folder> {
  const folder = await openFolder(dir);
  const season = inventedSeason(stations, boxes);
  await folder.applySeason(seasonEntry(season, renderSeason(season)), 'bench');
  const each = Math.floor(readings / stations);
  for (let number = 0; number < stations; number++)
    await folder.write('bench', (write) => loadStation(write, number, each, LAST, step));
  return folder;
}

/** One load of a station: so many readings that end at `last`. */
export async function loadStation(
  write: Write,
  number: number,
  count: number,
  last: number,
  step = STEP,
): Promise<number> {
  const station = await write.station(`station-${number}`);
  if (station === null) throw new Error('the season has no such station');
  const series = await write.seriesOf(station, 'temperature', 'instant');
  const { load, writer } = await write.beginLoad();
  for (let from = 0; from < count; from += CHUNK) {
    const length = Math.min(CHUNK, count - from);
    const at = Float64Array.from({ length }, (_, i) => last - (count - from - i) * step);
    const value = Float64Array.from(at, (instant) => celsius(instant, number));
    await writer.append({ series, length, at, value, line: null });
  }
  const { series: outcomes } = await writer.finish();
  const sha256 = String(load).padStart(64, '0');
  await write.recordLoad({ load, file: `${load}.csv`, sha256, bytes: 1, series: outcomes, understood: '{}' });
  return load;
}

export function celsius(instant: number, station: number): number {
  const day = instant / 86_400_000;
  const year = 7 - 8 * Math.cos((2 * Math.PI * ((day % 365.25) - 28)) / 365.25);
  const value = year + Math.sin(day / 9 + station) + 0.5 * Math.sin(2 * Math.PI * day) + (station % 7) * 0.2;
  return Math.round(Math.max(0, value) * 100) / 100;
}
