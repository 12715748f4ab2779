import Papa from 'papaparse';
import { measuredDays, type StationDays, type StationKind } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import { HindcastRefused } from './refused.js';

const COLUMNS = ['station', 'latitude', 'longitude', 'date', 'water_c', 'air_c'] as const;
type Column = (typeof COLUMNS)[number];
/** Without these there is nothing to hindcast. */
const NEEDED: readonly Column[] = ['station', 'date', 'water_c'];
const MS_DAY = 86_400_000;
/** No water or air on these rivers is outside (°C): a unit or a column is wrong. */
const PLAUSIBLE = 60;
/** A record longer than this (days) has a wrong year in it. */
const LONGEST = 55_000;
/** A logger that states no accuracy is taken to hold this, °C (ours). */
const USUAL_ACCURACY = 0.2;

interface Place {
  latitude: number | null;
  longitude: number | null;
  readonly water: Map<DayNumber, number>;
  readonly air: Map<DayNumber, number>;
}

/**
 * A file of daily means, `station,latitude,longitude,date,water_c,air_c` in any order of columns: every station's
 * water, and its air as a station of its own beside it. Coordinates, water and air may be empty.
 *
 * @throws HindcastRefused with the line and what is wrong with it
 */
export function dailyFile(text: string): StationDays[] {
  const places = new Map<string, Place>();
  let columns: Map<Column, number> | null = null;
  let line = 0;
  Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    delimiter: ',',
    step: ({ data }) => {
      line++;
      if (data.length === 1 && data[0].trim() === '') return;
      if (columns === null) columns = headed(data);
      else readLine(columns, data, line, places);
    },
  });
  if (columns === null) throw new HindcastRefused({ code: 'hindcast-no-columns', with: { missing: NEEDED } });
  const stations = [...places].flatMap(([name, place]) => stationsOf(name, place));
  if (!stations.some(({ kind }) => kind === 'stream')) {
    throw new HindcastRefused({ code: 'hindcast-no-water', with: {} });
  }
  return stations;
}

function headed(cells: readonly string[]): Map<Column, number> {
  const names = cells.map((cell) => cell.trim().toLowerCase());
  const columns = new Map<Column, number>();
  for (const column of COLUMNS) if (names.includes(column)) columns.set(column, names.indexOf(column));
  const missing = NEEDED.filter((column) => !columns.has(column));
  if (missing.length > 0) throw new HindcastRefused({ code: 'hindcast-no-columns', with: { missing } });
  return columns;
}

function readLine(
  columns: ReadonlyMap<Column, number>,
  cells: readonly string[],
  line: number,
  places: Map<string, Place>,
): void {
  const cell = (column: Column) => (cells[columns.get(column) ?? cells.length] ?? '').trim();
  const bad = (column: Column) =>
    new HindcastRefused({
      code: 'hindcast-bad-line',
      with: { line, column, value: cell(column).slice(0, 40) },
    });
  const figure = (column: Column, limit: number): number | null => {
    const text = cell(column);
    if (text === '' || /^(na|nan|null)$/i.test(text)) return null;
    const value = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
    if (!(Math.abs(value) <= limit)) throw bad(column);
    return value;
  };
  const name = cell('station');
  if (name === '') throw bad('station');
  const day = dayOf(cell('date'));
  if (day === null) throw bad('date');
  const place = placeOf(places, name);
  keepPlace(place, figure('latitude', 90), figure('longitude', 180), name, line);
  keep(place.water, day, figure('water_c', PLAUSIBLE), name, line);
  keep(place.air, day, figure('air_c', PLAUSIBLE), name, line);
}

/** A calendar day written year-month-day; null for anything else. */
function dayOf(text: string): DayNumber | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  const at = Date.parse(`${text}T00:00Z`);
  if (Number.isNaN(at) || new Date(at).toISOString().slice(0, 10) !== text) return null;
  return at / MS_DAY;
}

function placeOf(places: Map<string, Place>, name: string): Place {
  const known = places.get(name);
  if (known !== undefined) return known;
  const place = { latitude: null, longitude: null, water: new Map(), air: new Map() };
  places.set(name, place);
  return place;
}

function keepPlace(
  place: Place,
  latitude: number | null,
  longitude: number | null,
  station: string,
  line: number,
): void {
  if (latitude === null || longitude === null) return;
  const known = place.latitude !== null && place.longitude !== null;
  if (known && (place.latitude !== latitude || place.longitude !== longitude))
    throw new HindcastRefused({ code: 'hindcast-two-places', with: { line, station } });
  place.latitude = latitude;
  place.longitude = longitude;
}

/** The same day twice with the same value is one day. */
function keep(
  days: Map<DayNumber, number>,
  day: DayNumber,
  value: number | null,
  station: string,
  line: number,
): void {
  if (value === null) return;
  const known = days.get(day);
  if (known !== undefined && known !== value) {
    const date = new Date(day * MS_DAY).toISOString().slice(0, 10);
    throw new HindcastRefused({ code: 'hindcast-two-values', with: { line, station, date } });
  }
  days.set(day, value);
  if (days.size > LONGEST) throw new HindcastRefused({ code: 'hindcast-too-long', with: { line, station } });
}

function stationsOf(name: string, { latitude, longitude, water, air }: Place): StationDays[] {
  const station = (id: string, kind: StationKind, values: ReadonlyMap<DayNumber, number>): StationDays[] => {
    if (values.size === 0) return [];
    let first = Number.POSITIVE_INFINITY;
    let last = Number.NEGATIVE_INFINITY;
    for (const day of values.keys()) {
      first = Math.min(first, day);
      last = Math.max(last, day);
    }
    if (last - first > LONGEST) {
      throw new HindcastRefused({ code: 'hindcast-too-long', with: { line: 0, station: name } });
    }
    const means = Float64Array.from(
      { length: last - first + 1 },
      (_, d) => values.get(first + d) ?? Number.NaN,
    );
    const days = measuredDays(first, means);
    return [{ station: id, kind, latitude, longitude, accuracy: USUAL_ACCURACY, reports: true, days }];
  };
  return [...station(name, 'stream', water), ...station(`${name} (air)`, 'air', air)];
}
