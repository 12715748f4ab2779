import { offsetText, wallAt } from './clock.js';
import { encode } from './encode.js';
import type { InventedRecord, InventedSeries } from './record.js';
import { numberText } from './units.js';

const two = (n: number): string => String(n).padStart(2, '0');

function localMinute(
  at: number,
  zone: string,
): { readonly date: string; readonly clock: string; readonly offset: number } {
  const wall = wallAt(at, zone);
  return {
    date: `${wall.year}-${two(wall.month)}-${two(wall.day)}`,
    clock: `${two(wall.hour)}:${two(wall.minute)}`,
    offset: wall.offset,
  };
}

const FOOT = 0.3048;

/** The two US zones a site's rows are marked with: standard and summer time. */
const MARKS: ReadonlyMap<number, string> = new Map([
  [-300, 'EST'],
  [-240, 'EDT'],
]);

/**
 * Tab-delimited agency exchange: a comment block, the header, a row of column widths, then rows (USGS RDB as its
 * documentation describes it; the comment block's wording from memory, shortened). Temperature in °C (parameter
 * 00010), discharge in ft³/s (00060), each with a column of qualification codes.
 */
export function writeRdb(water: InventedSeries, discharge: InventedSeries, zone: string): Uint8Array {
  const comments = [
    '# ---------------------------------- NOTE ----------------------------------------',
    '# Provisional values, invented for a sample; nothing here was measured.',
    '#',
    '# Data for the following 1 site(s) are contained in this file',
    `#    USGS ${water.station} INVENTED BROOK AT NO BRIDGE`,
    '# -----------------------------------------------------------------------------------',
    '#',
    '# TS_ID - An internal number representing a time series.',
    '# Data provided for site',
    '#            TS       parameter     Description',
    '#        900001       00010     Temperature, water, degrees Celsius',
    '#        900002       00060     Discharge, cubic feet per second',
    '#',
    '# Data-value qualification codes included in this output:',
    '#     P  Provisional data subject to revision.',
    '#',
  ];
  const header = [
    'agency_cd',
    'site_no',
    'datetime',
    'tz_cd',
    '900001_00010',
    '900001_00010_cd',
    '900002_00060',
    '900002_00060_cd',
  ];
  const widths = ['5s', '15s', '20d', '6s', '14n', '10s', '14n', '10s'];
  const rows = water.at.map((at, i) => {
    const { date, clock, offset } = localMinute(at, zone);
    const feet = discharge.value[i]! / FOOT ** 3;
    const mark = MARKS.get(offset) ?? 'UTC';
    const values = [numberText(water.value[i]!, 1), 'P', numberText(feet, 1), 'P'];
    return ['USGS', water.station, `${date} ${clock}`, mark, ...values];
  });
  const lines = [...comments, ...[header, widths, ...rows].map((cells) => cells.join('\t'))];
  return encode(lines.map((line) => `${line}\n`).join(''), 'utf-8', false);
}

/** What `writeRdb` leaves of a discharge: 0.1 ft³/s. */
export const throughRdbDischarge = (cumecs: number): number =>
  Math.round(Number(numberText(cumecs / FOOT ** 3, 1)) * FOOT ** 3 * 1e6) / 1e6;

/** The climate service's number for the invented station: names of stations change, numbers stay. */
export const CLIMATE_ID = '9999901';

const HOURLY = {
  en: {
    place: ['Longitude (x)', 'Latitude (y)', 'Station Name', 'Climate ID', 'Date/Time (LST)'],
    parts: ['Year', 'Month', 'Day', 'Time (LST)'],
    flag: (name: string): string => `${name} Flag`,
    values: [
      ['Temp (°C)', 'Temp'],
      ['Dew Point Temp (°C)', 'Dew Point Temp'],
      ['Rel Hum (%)', 'Rel Hum'],
      ['Precip. Amount (mm)', 'Precip. Amount'],
      ['Wind Dir (10s deg)', 'Wind Dir'],
      ['Wind Spd (km/h)', 'Wind Spd'],
      ['Visibility (km)', 'Visibility'],
      ['Stn Press (kPa)', 'Stn Press'],
      ['Hmdx', 'Hmdx'],
      ['Wind Chill', 'Wind Chill'],
    ],
    last: 'Weather',
  },
  fr: {
    place: ['Longitude (x)', 'Latitude (y)', 'Nom de la Station', 'ID climatologique', 'Date/Heure (HNL)'],
    parts: ['Année', 'Mois', 'Jour', 'Heure (HNL)'],
    flag: (name: string): string => `${name} Indicateur`,
    values: [
      ['Temp (°C)', 'Temp'],
      ['Point de rosée (°C)', 'Point de rosée'],
      ['Hum. rel (%)', 'Hum. rel.'],
      ['Hauteur de précip. (mm)', 'Hauteur de précip.'],
      ['Dir. du vent (10s deg)', 'Dir. du vent'],
      ['Vit. du vent (km/h)', 'Vit. du vent'],
      ['Visibilité (km)', 'Visibilité'],
      ['Pression à la station (kPa)', 'Pression à la station'],
      ['Hmdx', 'Hmdx'],
      ['Refroid. éolien', 'Refroid. éolien'],
    ],
    last: 'Temps',
  },
};

const DAILY = {
  en: {
    place: ['Longitude (x)', 'Latitude (y)', 'Station Name', 'Climate ID', 'Date/Time'],
    parts: ['Year', 'Month', 'Day', 'Data Quality'],
    flag: HOURLY.en.flag,
    values: [
      ['Max Temp (°C)', 'Max Temp'],
      ['Min Temp (°C)', 'Min Temp'],
      ['Mean Temp (°C)', 'Mean Temp'],
      ['Heat Deg Days (°C)', 'Heat Deg Days'],
      ['Cool Deg Days (°C)', 'Cool Deg Days'],
      ['Total Precip (mm)', 'Total Precip'],
      ['Snow on Grnd (cm)', 'Snow on Grnd'],
    ],
  },
  fr: {
    place: ['Longitude (x)', 'Latitude (y)', 'Nom de la Station', 'ID climatologique', 'Date/Heure'],
    parts: ['Année', 'Mois', 'Jour', 'Qualité des Données'],
    flag: HOURLY.fr.flag,
    values: [
      ['Temp max.(°C)', 'Temp max.'],
      ['Temp min.(°C)', 'Temp min.'],
      ['Temp moy.(°C)', 'Temp moy.'],
      ['DJC (°C)', 'DJC'],
      ['DJR (°C)', 'DJR'],
      ['Précip. tot. (mm)', 'Précip. tot.'],
      ['Neige au sol (cm)', 'Neige au sol'],
    ],
  },
};

const quotedRow = (cells: readonly string[], mark: string): string =>
  cells.map((cell) => `"${cell}"`).join(mark);

/** The French files use the decimal comma inside quotes; the delimiter stays a comma (memory). */
const climateNumber = (value: number, decimals: number, language: 'en' | 'fr'): string =>
  numberText(value, decimals, language === 'fr' ? ',' : '.');

/**
 * The national climate service's hourly CSV: every cell quoted, several temperature columns, local standard time,
 * a flag column beside each value. Column names as its open data carries them (seen in programs that read them;
 * the order of the later columns and the flag letters from memory). Every ninth value is missing, flagged M.
 */
export function writeClimateHourly(air: InventedSeries, zone: string, language: 'en' | 'fr'): Uint8Array {
  const says = HOURLY[language];
  const number = (value: number, decimals: number): string => climateNumber(value, decimals, language);
  const header = [
    ...says.place,
    ...says.parts,
    ...says.values.flatMap(([name, short]) => [name!, says.flag(short!)]),
    says.last,
  ];
  const rows = air.at.map((at, i) => {
    const { date, clock } = localMinute(at, zone);
    const missing = i % 9 === 4;
    const temperature = missing ? ['', 'M'] : [number(air.value[i]!, 1), ''];
    const dew = [number(air.value[i]! - 2, 1), ''];
    const others = ['81', '', number(0, 1), '', '27', '', '9', '', number(16.1, 1), '', number(100.2, 1), ''];
    return [
      number(-66.5, 2),
      number(46.25, 2),
      air.station,
      CLIMATE_ID,
      `${date} ${clock}`,
      ...date.split('-'),
      clock,
      ...temperature,
      ...dew,
      ...others,
      ...['', '', '', ''],
      'NA',
    ];
  });
  return encode([header, ...rows].map((cells) => `${quotedRow(cells, ',')}\n`).join(''), 'utf-8-bom', false);
}

/** The hourly rows that hold a temperature. */
export const climateHourlyWritten = (air: InventedSeries): number[] =>
  [...air.at.keys()].filter((i) => i % 9 !== 4);

/** Same service, a row a day with maximum, minimum and mean; the mean is the series' value. */
export function writeClimateDaily(air: InventedSeries, language: 'en' | 'fr'): Uint8Array {
  const says = DAILY[language];
  const number = (value: number, decimals: number): string => climateNumber(value, decimals, language);
  const header = [
    ...says.place,
    ...says.parts,
    ...says.values.flatMap(([name, short]) => [name!, says.flag(short!)]),
  ];
  const rows = air.at.map((at, i) => {
    const date = new Date(at).toISOString().slice(0, 10);
    const mean = air.value[i]!;
    const values = [mean + 3, mean - 3, mean, Math.max(0, 18 - mean), Math.max(0, mean - 18), 0, 12];
    return [
      number(-66.5, 2),
      number(46.25, 2),
      air.station,
      CLIMATE_ID,
      date,
      ...date.split('-'),
      '',
      ...values.flatMap((value, column) => [
        number(value, column === 6 ? 0 : 1),
        column === 2 && i % 7 === 3 ? 'E' : '',
      ]),
    ];
  });
  return encode([header, ...rows].map((cells) => `${quotedRow(cells, ',')}\n`).join(''), 'utf-8-bom', false);
}

/**
 * The national hydrometric real-time CSV: bilingual headers, each instant with its offset, level in m and
 * discharge in m³/s ("cms"), a grade, a symbol and a quality column beside each (column names as its open data
 * carries them; that the file begins with a byte order mark and a blank before ID: memory).
 */
export function writeHydrometric(level: InventedSeries, discharge: InventedSeries, zone: string): Uint8Array {
  const header =
    " ID,Date,Water Level / Niveau d'eau (m),Grade,Symbol / Symbole,QA/QC,Discharge / Débit (cms),Grade,Symbol / Symbole,QA/QC";
  const rows = level.at.map((at, i) => {
    const { date, clock, offset } = localMinute(at, zone);
    const instant = `${date}T${clock}:00${offsetText(offset)}`;
    const water = numberText(level.value[i]!, 3);
    return [level.station, instant, water, '', '', '1', numberText(discharge.value[i]!, 2), '', '', '1'].join(
      ',',
    );
  });
  return encode([header, ...rows].map((line) => `${line}\r\n`).join(''), 'utf-8-bom', false);
}

/** The first series of each quantity. */
export const ofQuantity = (record: InventedRecord, quantity: InventedSeries['quantity']): InventedSeries => {
  const found = record.find((series) => series.quantity === quantity);
  if (found === undefined) throw new Error(`the record holds no ${quantity}`);
  return found;
};
