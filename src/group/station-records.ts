import { type DaySeries, emptyDays } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Season } from '../season/index.js';
import type { EpochMillis, Folder, Load, StationRecord, Write } from '../store/index.js';
import type { StationRow } from './group.js';
import { daySteps, readingSeries, type Series, type SeriesRequest } from './series.js';
import { UnknownName } from './unknown-name.js';

const DAY = 86_400_000;
/** Most readings that are read one by one for a drawing (five months of one every 15 minutes); beyond, kept days are. */
const MOST_READ = 15_000;
/** Most points of a file's own readings in a preview. */
const PREVIEW_POINTS = 600;

/** Every station, those of the season first in its order, with how far each record reaches. */
export async function stationRows(store: Folder, season: Season): Promise<StationRow[]> {
  const stations = await store.catalogue.stations();
  const series = await store.catalogue.series();
  const counts = await store.readings.count(store.catalogue);
  const reaches = reachesOf(await store.catalogue.loads());
  const numbers = new Map(stations.map(({ id, number }) => [id, number]));
  const records = (id: string): StationRow['records'] => {
    const own = series.filter(({ station }) => station === numbers.get(id));
    return [...new Set(own.map(({ quantity }) => quantity))].flatMap((quantity) => {
      const reach = reaches.get(`${id} ${quantity}`);
      const readings = own
        .filter((one) => one.quantity === quantity)
        .reduce((sum, { number }) => sum + (counts.get(number) ?? 0), 0);
      return reach === undefined || readings === 0 ? [] : [{ quantity, readings, ...reach }];
    });
  };
  const named = season.stations.map(({ id, name, kind }) => ({
    station: id,
    name,
    kind,
    inSeason: true,
    records: records(id),
  }));
  const others = stations.filter(({ id }) => !season.stations.some((station) => station.id === id));
  return [
    ...named,
    ...others.map(({ id, kind }) => ({
      station: id,
      name: id,
      kind,
      inSeason: false,
      records: records(id),
    })),
  ];
}

function reachesOf(loads: readonly Load[]): Map<string, { first: number; last: number }> {
  const reaches = new Map<string, { first: number; last: number }>();
  for (const { withdrawn, series } of loads) {
    if (withdrawn !== null) continue;
    for (const { station, quantity, first, last } of series) {
      const key = `${station} ${quantity}`;
      const before = reaches.get(key);
      reaches.set(key, {
        first: Math.min(first, before?.first ?? first),
        last: Math.max(last, before?.last ?? last),
      });
    }
  }
  return reaches;
}

/**
 * A stretch of a record for drawing: from the readings where they are few enough to read one by one, from the kept
 * days where they are not, so that ten years answer as fast as a week.
 */
export async function recordSeries(
  rows: readonly StationRow[],
  keptDays: (station: string) => Promise<DaySeries | null>,
  offset: number,
  request: SeriesRequest,
  readings: (from: EpochMillis, to: EpochMillis, readingsADay: number) => Promise<StationRecord>,
): Promise<Series> {
  const { station, quantity, points } = request;
  const known = rows.find((row) => row.station === station)?.records.find((one) => one.quantity === quantity);
  const from = request.from ?? known?.first ?? 0;
  const to = request.to ?? (known === undefined ? from : known.last + 1);
  const whole = { station, quantity, from, to };
  if (known === undefined) return { ...whole, ...readingSeries(noReadings, points, offset) };
  const inside = Math.max(0, Math.min(to, known.last + 1) - Math.max(from, known.first));
  const expected = (known.readings * inside) / Math.max(1, known.last + 1 - known.first);
  if (expected > MOST_READ && quantity === 'temperature') {
    const days = await keptDays(station);
    const midnight = (day: number) => day * DAY - offset;
    if (days !== null) return { ...whole, ...daySteps(days, from, to, points, midnight) };
  }
  return {
    ...whole,
    ...readingSeries(
      await readings(from, to, (DAY * known.readings) / Math.max(DAY, known.last - known.first)),
      points,
      offset,
    ),
  };
}

const noReadings: StationRecord = {
  at: new Float64Array(0),
  value: new Float64Array(0),
  flag: new Uint8Array(0),
  load: new Int32Array(0),
};

/** What a load brought, as its file gave it, series by series; seen from inside the write that makes it. */
export async function broughtSeries(store: Folder, write: Write, load: Load): Promise<Series[]> {
  const stations = new Map((await write.stations()).map(({ id, number }) => [id, number]));
  const all = await write.series();
  const brought: Series[] = [];
  for (const { station, quantity, span } of load.series) {
    const series = all.find(
      (one) => one.station === stations.get(station) && one.quantity === quantity && one.span === span,
    );
    if (series === undefined) continue;
    const { at, value, load: loads } = await store.readings.readLoad(write, load.load, series.number);
    const record = { at, value, load: loads, flag: new Uint8Array(at.length).fill(2) };
    const [from, to] = [at[0] ?? 0, (at.at(-1) ?? 0) + 1];
    brought.push({ station, quantity, from, to, ...readingSeries(record, PREVIEW_POINTS, 0) });
  }
  return brought;
}

/** @throws UnknownName where the season has no such station. */
export function stationNamed(season: Season, id: string): Season['stations'][number] {
  const station = season.stations.find((one) => one.id === id);
  if (station !== undefined) return station;
  const stations = season.stations.map((one) => one.id);
  throw new UnknownName({ code: 'unknown-station-name', with: { station: id, stations } });
}

/** Whether a record may be asked for: the season's station, or one that loads have made. */
export function offsetOf(season: Season, rows: readonly StationRow[], id: string): number {
  const station = season.stations.find((one) => one.id === id);
  if (station !== undefined) return station.dayOffset * 60_000;
  if (rows.some((row) => row.station === id)) return 0;
  throw new UnknownName({
    code: 'unknown-station-name',
    with: { station: id, stations: rows.map((row) => row.station) },
  });
}

/** Days of a station nobody has read yet. */
export function daysWithoutReadings(from: DayNumber, to: DayNumber): DaySeries {
  return emptyDays(from, Math.max(0, to - from + 1));
}
