import { wallAt } from './clock.js';
import { encode } from './encode.js';
import type { InventedRecord } from './record.js';
import { dateText } from './stamp.js';
import type { Style } from './style.js';
import { fromCelsius, numberText } from './units.js';
import { timeCells } from './write.js';

const fileOf = (rows: readonly (readonly string[])[], style: Style): Uint8Array =>
  encode(
    rows.map((cells) => `${cells.join(style.delimiter)}${style.eol}`).join(''),
    style.encoding,
    style.gzipped,
  );

const valueText = (celsius: number, style: Style): string =>
  numberText(fromCelsius(celsius, style.unit), style.decimals, style.decimal);

/** All stations below one another: a station column, the rows in order of time. */
export function writeLong(record: InventedRecord, style: Style): Uint8Array {
  const header =
    style.language === 'fr'
      ? ['Station', 'Date et heure', 'Température (°C)']
      : ['station', 'time', 'water_c'];
  const rows = record.flatMap((series) =>
    series.at.map((at, i) => ({
      at,
      cells: [series.station, ...timeCells(at, style), valueText(series.value[i]!, style)],
    })),
  );
  rows.sort((a, b) => a.at - b.at);
  return fileOf([header, ...rows.map(({ cells }) => cells)], style);
}

/** A column for each station, headed by its name; all stations share their instants. */
export function writeWide(record: InventedRecord, style: Style): Uint8Array {
  const unit = style.saysUnit === 'header' ? ' (°C)' : '';
  const time = style.language === 'fr' ? 'Date et heure' : 'Date and time';
  const preamble = style.saysUnit === 'preamble' ? [['Water temperature in °C']] : [];
  const header = [time, ...record.map(({ station }) => `${station}${unit}`)];
  const rows = record[0]!.at.map((at, i) => [
    ...timeCells(at, style),
    ...record.map(({ value }) => valueText(value[i]!, style)),
  ]);
  return fileOf([...preamble, header, ...rows], style);
}

/** Where the invented stations lie: eastern Canada, on no river in particular. */
export const place = (index: number): { readonly latitude: number; readonly longitude: number } => ({
  latitude: 46.25 + index / 100,
  longitude: -66.5 - index / 100,
});

/** One row for a station and day: mean water and air temperature beside the station's place. */
export function writeDailyPlaces(water: InventedRecord, air: InventedRecord, style: Style): Uint8Array {
  const header = ['station', 'latitude', 'longitude', 'date', 'water_c', 'air_c'];
  const rows = water.flatMap((series, s) =>
    series.at.map((at, i) => [
      series.station,
      place(s).latitude.toFixed(6),
      place(s).longitude.toFixed(6),
      new Date(at).toISOString().slice(0, 10),
      valueText(series.value[i]!, style),
      valueText(air[s]!.value[i]!, style),
    ]),
  );
  return fileOf([header, ...rows], style);
}

/** A date and a day's mean, for one station. */
export function writeDaily(record: InventedRecord, style: Style): Uint8Array {
  const header =
    style.language === 'fr' ? ['Date', 'Température moyenne (°C)'] : ['Date', 'Mean temperature (°C)'];
  const series = record[0]!;
  const { time } = style;
  if (time.kind !== 'stamp') throw new Error('a daily table has dates');
  const rows = series.at.map((at, i) => [
    dateText(wallAt(at, 'UTC'), time.stamp, style.language),
    valueText(series.value[i]!, style),
  ]);
  return fileOf([header, ...rows], style);
}
