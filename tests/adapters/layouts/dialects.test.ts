import { describe, expect, it } from 'vitest';
import type { Asked } from '../../../adapters/index.js';
import { type Wall, wallAt } from './clock.js';
import { type InventedSeries, invent } from './record.js';
import { text } from './refused.js';
import { readThrough } from './through.js';

const zone = 'UTC-04:00';
const record: InventedSeries = invent({
  seed: 31,
  stations: ['ford'],
  first: Date.UTC(2025, 10, 20, 4),
  stepMinutes: 30,
  readings: 110,
})[0]!;

const two = (n: number): string => String(n).padStart(2, '0');
const date = ({ year, month, day }: Wall): string => `${year}-${two(month)}-${two(day)}`;
const clock = ({ hour, minute }: Wall): string => `${two(hour)}:${two(minute)}`;
const half = ({ hour, minute }: Wall): string => `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}`;
const plain = (wall: Wall, value: string): string => `${date(wall)} ${clock(wall)},${value}`;

type Row = (wall: Wall, value: string, i: number) => string;

interface Dialect {
  readonly head: string;
  readonly row: Row;
  readonly asked?: Asked;
}

async function readDialect({ head, row, asked = {} }: Dialect) {
  const rows = record.at.map((at, i) => row(wallAt(at, zone), record.value[i]!.toFixed(2), i));
  return readThrough(text(`${head}\n${rows.join('\n')}\n`), asked);
}

const header = 'Date and time (UTC-04:00),Temperature (°C)';
const offsetHeaders = (names: readonly string[]): (readonly [string, Dialect])[] =>
  names.map((name) => [name, { head: `${name},Temperature (°C)`, row: plain }]);
const valueHeaders = (names: readonly string[]): (readonly [string, Dialect])[] =>
  names.map((name) => [name, { head: `Date and time (UTC-04:00),${name}`, row: plain }]);
const preambles = (lines: readonly string[]): (readonly [string, Dialect])[] =>
  lines.map((line) => [line, { head: `${line}\nDate and time,Temperature (°C)`, row: plain }]);

const dialects: readonly (readonly [string, Dialect])[] = [
  ...offsetHeaders([
    'Time (GMT-04:00)',
    'Date Time UTC-4',
    '"Date Time, GMT-04:00"',
    'Timestamp (UTC−04:00)',
    'Time (-04:00)',
    'Horodatage (UTC-04:00)',
    'Date/heure [UTC-4]',
    'Local time (UTC -04:00)',
    'Time (AST)',
    'Heure (HNA)',
  ]),
  ...preambles([
    'Time zone: UTC-04:00',
    'Timezone,UTC-4',
    'GMT offset: -4',
    'UTC offset (hours): -4',
    'Fuseau horaire : UTC−04:00',
    'Fuseau horaire;UTC-4',
    'Logger time zone = GMT-04:00',
    '# tz: UTC-04:00',
  ]),
  ...valueHeaders([
    'Temp',
    'temp_c',
    'water_temp_degC',
    'Temperature deg C',
    'Temp (deg C)',
    'T (°C)',
    'Temp. (C)',
    'Water temperature [C]',
    '"Temp, °C"',
    'Celsius',
    'Température de l’eau (°C)',
    "Temp. de l'eau",
    'TEMP EAU (°C)',
    'Temp (ºC)',
    'Temp (℃)',
    'Temperature_Celsius',
    'Temp1 (°C)',
    'Mean water temperature (°C)',
  ]),
  [
    'a unit beside the value',
    { head: 'Date and time (UTC-04:00),Temperature', row: (wall, value) => plain(wall, `${value} °C`) },
  ],
  [
    'a unit in a column of its own',
    { head: 'Date and time (UTC-04:00),Temperature,Unit', row: (wall, value) => `${plain(wall, value)},C` },
  ],
  [
    'a plus sign',
    { head: header, row: (wall, value) => plain(wall, value.startsWith('-') ? value : `+${value}`) },
  ],
  [
    'no zero before the point',
    { head: header, row: (wall, value) => plain(wall, value.replace(/^(-?)0\./, '$1.')) },
  ],
  ['a typographic minus', { head: header, row: (wall, value) => plain(wall, value.replace('-', '−')) }],
  ['an exponent', { head: header, row: (wall, value) => plain(wall, Number(value).toExponential()) }],
  [
    'blanks around everything',
    {
      head: ' Date and time (UTC-04:00) , Temperature (°C) ',
      row: (wall, value) => ` ${date(wall)}  ${clock(wall)} ,   ${value}  `,
    },
  ],
  ['a delimiter at the end of rows', { head: header, row: (wall, value) => `${plain(wall, value)},` }],
  [
    'a delimiter at the end of all lines',
    { head: `${header},`, row: (wall, value) => `${plain(wall, value)},` },
  ],
  ['blank lines between rows', { head: header, row: (wall, value) => `${plain(wall, value)}\n` }],
  [
    'seconds with fractions',
    { head: header, row: (wall, value) => `${date(wall)} ${clock(wall)}:00.000,${value}` },
  ],
  [
    'a comma in the seconds, quoted',
    { head: header, row: (wall, value) => `"${date(wall)} ${clock(wall)}:00,000",${value}` },
  ],
  [
    'compact ISO',
    {
      head: header,
      row: (wall, value) =>
        `${date(wall).replaceAll('-', '')}T${two(wall.hour)}${two(wall.minute)}00,${value}`,
    },
  ],
  [
    'compact digits',
    {
      head: header,
      row: (wall, value) => `${date(wall).replaceAll('-', '')}${two(wall.hour)}${two(wall.minute)},${value}`,
    },
  ],
  [
    'an offset without a colon',
    { head: 'time,temp_c', row: (wall, value) => `${date(wall)}T${clock(wall)}:00-0400,${value}` },
  ],
  [
    'an offset of hours',
    { head: 'time,temp_c', row: (wall, value) => `${date(wall)}T${clock(wall)}:00-04,${value}` },
  ],
  [
    'an offset after a blank',
    { head: 'time,temp_c', row: (wall, value) => `${date(wall)} ${clock(wall)}:00 -04:00,${value}` },
  ],
  [
    'an abbreviation in each value',
    { head: 'time,temp_c', row: (wall, value) => `${date(wall)} ${clock(wall)} AST,${value}` },
  ],
  [
    'p.m. with points',
    {
      head: header,
      row: (wall, value) => `${date(wall)} ${half(wall)} ${wall.hour < 12 ? 'a.m.' : 'p.m.'},${value}`,
    },
  ],
  [
    'PM without a blank',
    {
      head: header,
      row: (wall, value) => `${date(wall)} ${half(wall)}${wall.hour < 12 ? 'am' : 'pm'},${value}`,
    },
  ],
  [
    'hours with an h',
    {
      head: 'Date et heure (UTC-04:00),Température (°C)',
      row: (wall, value) => `${date(wall)} ${two(wall.hour)}h${two(wall.minute)},${value}`,
    },
  ],
  [
    'hours with an h and blanks',
    {
      head: 'Date et heure (UTC-04:00),Température (°C)',
      row: (wall, value) => `${date(wall)} ${wall.hour} h ${two(wall.minute)},${value}`,
    },
  ],
  [
    'month names in capitals',
    { head: header, row: (wall, value) => `${two(wall.day)}-NOV-${wall.year} ${clock(wall)},${value}` },
  ],
  [
    'month names and two-digit years',
    { head: header, row: (wall, value) => `${two(wall.day)}-Nov-${wall.year % 100} ${clock(wall)},${value}` },
  ],
  [
    'weekdays before the date',
    {
      head: header,
      row: (wall, value, i) =>
        `${['Thu', 'Fri', 'Sat', 'Sun', 'Mon'][new Date(record.at[i]! - 14_400_000).getUTCDate() - 20]} ${wall.day} Nov ${wall.year} ${clock(wall)},${value}`,
    },
  ],
  [
    'jours de la semaine',
    {
      head: 'Date et heure (UTC-04:00);Température (°C)',
      row: (wall, value) =>
        `${['jeu.', 'ven.', 'sam.', 'dim.'][wall.day - 20]} ${wall.day} novembre ${wall.year} ${clock(wall)};${value.replace('.', ',')}`,
    },
  ],
  [
    'a day of the year is no date to read',
    {
      head: 'Day of year,Date and time (UTC-04:00),Temperature (°C)',
      row: (wall, value) => `${304 + wall.day},${plain(wall, value)}`,
    },
  ],
  [
    'other quantities beside',
    {
      head: 'Date and time (UTC-04:00),Light (lux),Pressure (kPa),Temperature (°C),DO (mg/L),Conductivity (µS/cm)',
      row: (wall, value) => `${date(wall)} ${clock(wall)},120,101.3,${value},12.1,45`,
    },
  ],
  [
    'a quality column beside',
    {
      head: 'Date and time (UTC-04:00),Temperature (°C),Quality',
      row: (wall, value, i) => `${plain(wall, value)},${i % 7 === 0 ? 'E' : 'A'}`,
    },
  ],
  ['units in a row of their own', { head: 'Date and time,Temperature\nUTC-04:00,°C', row: plain }],
  [
    'comment lines within',
    {
      head: `# invented\n${header}`,
      row: (wall, value, i) =>
        i % 40 === 5 ? `# battery changed\n${plain(wall, value)}` : plain(wall, value),
    },
  ],
  [
    'several blanks as the delimiter is a tab',
    {
      head: 'Date (UTC-04:00)\tTime\tTemp (°C)',
      row: (wall, value) => `${date(wall)}\t${clock(wall)}\t${value}`,
    },
  ],
  [
    'hour and minute in columns of digits',
    {
      head: 'Date,Time (UTC-04:00),Temp (°C)',
      row: (wall, value) => `${date(wall)},${two(wall.hour)}${two(wall.minute)},${value}`,
    },
  ],
];

describe('the same readings in other dialects', () => {
  it.each(dialects)('%s', async (_, dialect) => {
    const { got, report } = await readDialect(dialect);
    expect(got.map(({ key }) => key.quantity)).toEqual(['temperature']);
    const lines = (at: readonly number[], value: readonly number[]): string[] =>
      at.map((instant, i) => `${new Date(instant).toISOString()} ${value[i]}`);
    expect(lines(got[0]!.at, got[0]!.value)).toEqual(lines(record.at, record.value));
    expect(report.unusable.count).toBe(0);
  });
});
