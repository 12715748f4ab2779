import { offsetText, wallAt } from './clock.js';
import { encode } from './encode.js';
import type { InventedSeries } from './record.js';
import { clockText, dateText, serialDay } from './stamp.js';
import type { Style, Unit } from './style.js';
import { fromCelsius, numberText } from './units.js';

const SAYS = {
  en: {
    date: 'Date',
    clock: 'Time',
    both: 'Date and time',
    temperature: 'Temperature',
    second: 'Temperature, spare sensor',
    battery: 'Battery (V)',
    event: 'Event',
    row: 'No.',
    station: 'Station',
    unit: 'Unit',
    offset: 'UTC offset',
    colon: ': ',
    happened: 'stopped by hand',
  },
  fr: {
    date: 'Date',
    clock: 'Heure',
    both: 'Date et heure',
    temperature: 'Température',
    second: 'Température, capteur de réserve',
    battery: 'Pile (V)',
    event: 'Événement',
    row: 'N°',
    station: 'Station',
    unit: 'Unité',
    offset: 'Décalage UTC',
    colon: ' : ',
    happened: 'arrêté à la main',
  },
};

const UNITS: Record<Unit, string> = { C: '°C', F: '°F', K: 'K' };

function quoted(cell: string, { delimiter, quoteAll }: Style): string {
  const needs = cell.includes(delimiter) || cell.includes('"');
  return quoteAll || needs ? `"${cell.replaceAll('"', '""')}"` : cell;
}

const row = (cells: readonly string[], style: Style): string =>
  cells.map((cell) => quoted(cell, style)).join(style.delimiter);

const offsetAt = (at: number, zone: string): string => offsetText(wallAt(at, zone).offset);

function preamble(series: InventedSeries, style: Style): string[] {
  const says = SAYS[style.language];
  const stated: [string, string][] = [];
  if (style.saysStation === 'preamble') stated.push([says.station, series.station]);
  if (style.saysUnit === 'preamble') stated.push([says.unit, UNITS[style.unit]]);
  if (style.saysOffset === 'preamble') stated.push([says.offset, offsetAt(series.at[0]!, style.zone)]);
  const lines = stated.map(([name, what]) =>
    style.preambleIn === 'cells' ? row([name, what], style) : `${name}${says.colon}${what}`,
  );
  return [...style.chatter, ...lines];
}

function unitText({ unit, unitForm }: Style): string {
  const gap = unitForm.startsWith(',') ? '' : ' ';
  return `${gap}${unitForm.replace('u', UNITS[unit])}`;
}

export function headerCells(series: InventedSeries, style: Style): string[] {
  const says = SAYS[style.language];
  const offset = style.saysOffset === 'header' ? ` (UTC${offsetAt(series.at[0]!, style.zone)})` : '';
  const apart = style.time.kind === 'stamp' && style.time.stamp.apart;
  const unit = style.saysUnit === 'header' ? unitText(style) : '';
  return [
    ...(style.rowNumbers ? [says.row] : []),
    ...(apart ? [says.date, `${says.clock}${offset}`] : [`${says.both}${offset}`]),
    `${style.valueName ?? says.temperature}${unit}`,
    ...(style.secondColumn ? [`${says.second}${unit}`] : []),
    ...(style.battery ? [says.battery] : []),
    ...(style.events ? [says.event] : []),
  ];
}

export function timeCells(at: number, style: Style): string[] {
  const { time } = style;
  const wall = wallAt(at, style.zone);
  switch (time.kind) {
    case 'epoch-s':
      return [String(at / 1000)];
    case 'epoch-ms':
      return [String(at)];
    case 'serial':
      return [numberText(serialDay(wall), 10, style.decimal)];
    case 'stamp': {
      const said = style.saysOffset !== 'value' ? '' : wall.offset === 0 ? 'Z' : offsetText(wall.offset);
      const cells = [dateText(wall, time.stamp, style.language), `${clockText(wall, time.stamp)}${said}`];
      return time.stamp.apart ? cells : [cells.join(time.stamp.between)];
    }
  }
}

const isMissing = (i: number, style: Style): boolean => style.missing !== null && i % 3 === 1;

function readingCells(series: InventedSeries, i: number, style: Style): string[] {
  const value = (celsius: number): string =>
    numberText(fromCelsius(celsius, style.unit), style.decimals, style.decimal);
  const last = i === series.at.length - 1;
  return [
    ...(style.rowNumbers ? [String(i + 1)] : []),
    ...timeCells(series.at[i]!, style),
    isMissing(i, style) ? (style.missing ?? '') : value(series.value[i]!),
    ...(style.secondColumn ? [value(series.value[i]! + 1)] : []),
    ...(style.battery ? [numberText(3.6 - i / 10_000, 2, style.decimal)] : []),
    ...(style.events ? [last ? SAYS[style.language].happened : ''] : []),
  ];
}

/** The positions of the series that a download in this style holds a reading of. */
export const writtenOf = (series: InventedSeries, style: Style): number[] =>
  [...series.at.keys()].filter((i) => !isMissing(i, style));

/** One station's record as a delimited download. */
export function write(series: InventedSeries, style: Style): Uint8Array {
  const header = row(headerCells(series, style), style);
  const lines = preamble(series, style);
  if (style.header) lines.push(header);
  for (const i of series.at.keys()) {
    if (style.headerEvery > 0 && i > 0 && i % style.headerEvery === 0) lines.push(header);
    lines.push(row(readingCells(series, i, style), style));
  }
  lines.push(...style.notes);
  return encode(lines.map((line) => `${line}${style.eol}`).join(''), style.encoding, style.gzipped);
}
