import type { Asked, DateOrder, Known, Understood } from '../../../adapters/index.js';
import { type Expected, knowsNothing, knowsZone, type Layout } from './layout.js';
import { type InventedSeries, invent, type Plan } from './record.js';
import { plainStyle, type Style, stamp } from './style.js';
import { throughText } from './units.js';
import { headerCells, write, writtenOf } from './write.js';

/** What a one-station download in this style must come back as. */
export function expectedOf(series: InventedSeries, style: Style): readonly Expected[] {
  const written = writtenOf(series, style);
  return [
    {
      station: style.saysStation === 'preamble' ? series.station : null,
      quantity: 'temperature',
      span: 'instant',
      at: written.map((i) => series.at[i]!),
      value: written.map((i) => throughText(series.value[i]!, style.unit, style.decimals)),
    },
  ];
}

interface Circumstances {
  readonly asked?: Asked;
  readonly known?: Known;
  readonly plan?: Partial<Omit<Plan, 'seed'>>;
  readonly anyDate?: boolean;
}

const autumn = Date.UTC(2025, 10, 14, 16);

function single(
  file: string,
  differs: Partial<Style>,
  { asked, known, plan, anyDate }: Circumstances = {},
): Layout {
  const style = { ...plainStyle, ...differs };
  const fits = { stations: ['weir-pool'], first: autumn, stepMinutes: 60, readings: 100, ...plan };
  return {
    file,
    plan: fits,
    days: false,
    anyDate: anyDate ?? true,
    record: invent,
    write: (record) => write(record[0]!, style),
    expected: (record) => expectedOf(record[0]!, style),
    asked: asked ?? {},
    known: known ?? knowsNothing,
    understood: understoodOf(fits.stations[0]!, style),
  };
}

const ORDERS: Readonly<Record<string, DateOrder>> = {
  'd/m/y': 'dmy',
  'd.m.y': 'dmy',
  'd-m-y': 'dmy',
  'm/d/y': 'mdy',
  'd/m/yy': 'dmy',
  'm/d/yy': 'mdy',
};

function understoodOf(station: string, style: Style): Partial<Understood> {
  const { encoding, delimiter, decimal, unit, zone, time, header } = style;
  const epoch = time.kind === 'epoch-s' || time.kind === 'epoch-ms';
  const cells = headerCells({ station, quantity: 'temperature', at: [autumn], value: [0] }, style);
  const dateCells = time.kind === 'stamp' && time.stamp.apart ? 2 : 1;
  const from = style.rowNumbers ? 1 : 0;
  return {
    encoding: encoding === 'utf-8-bom' ? 'utf-8' : encoding,
    delimiter,
    decimal,
    unit,
    daily: false,
    dateOrder: time.kind === 'stamp' ? (ORDERS[time.stamp.date] ?? null) : null,
    timeColumns: header ? cells.slice(from, from + dateCells) : ['#1'],
    valueColumn: header ? cells[from + dateCells]! : '#2',
    // A clock that did not follow its station's zone is tested by what comes out and what is said.
    ...(style.saysOffset === 'no' && !epoch ? {} : { zone }),
  };
}

const local = { saysOffset: 'no' } as const;
const zoneAsked = (zone: string): Circumstances => ({ asked: { zone } });

const french: Partial<Style> = { language: 'fr', delimiter: ';', decimal: ',', eol: '\r\n' };

/** Delimiters, encodings, line ends. */
const texts: readonly Layout[] = [
  single('comma-iso-utc.csv', {}),
  single('comma-bom-crlf.csv', {
    encoding: 'utf-8-bom',
    eol: '\r\n',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('semicolon-decimal-comma.csv', {
    ...french,
    encoding: 'utf-8',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('tab-decimal-point.txt', {
    delimiter: '\t',
    zone: 'UTC-05:00',
    saysOffset: 'header',
    time: stamp('y/m/d'),
  }),
  single('tab-decimal-comma.txt', {
    delimiter: '\t',
    decimal: ',',
    zone: 'UTC-05:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('pipe.txt', { delimiter: '|', zone: 'UTC-04:00', saysOffset: 'header', time: stamp('y-m-d') }),
  single('utf-16-little-endian.txt', {
    encoding: 'utf-16le',
    delimiter: '\t',
    eol: '\r\n',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('utf-16-big-endian.csv', {
    ...french,
    encoding: 'utf-16be',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('d/m/y'),
  }),
  single('windows-1252.csv', {
    ...french,
    encoding: 'windows-1252',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('d/m/y', { apart: true }),
  }),
  single('code-page-850.txt', {
    ...french,
    encoding: 'cp850',
    zone: 'UTC-04:00',
    saysOffset: 'preamble',
    time: stamp('d-m-y'),
  }),
  single('all-quoted.csv', {
    quoteAll: true,
    eol: '\r\n',
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('decimal-comma-quoted.csv', {
    decimal: ',',
    quoteAll: true,
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('gzipped.csv.gz', { gzipped: true }),
];

/** What stands around the readings. */
const surroundings: readonly Layout[] = [
  single('preamble-station-unit-offset.csv', {
    chatter: ['Invented reach, lower box', 'Serial number: 70-0042', 'Sampling every 60 min', ''],
    saysStation: 'preamble',
    saysUnit: 'preamble',
    saysOffset: 'preamble',
    zone: 'UTC-04:00',
    time: stamp('y-m-d'),
  }),
  single(
    'preambule-en-cellules.csv',
    {
      ...french,
      chatter: ['Relevé inventé', 'N° de série;70-0042'],
      preambleIn: 'cells',
      saysStation: 'preamble',
      saysUnit: 'preamble',
      saysOffset: 'preamble',
      zone: 'UTC-04:00',
      time: stamp('y-m-d', { apart: true }),
    },
    { plan: { stations: ['pont-couvert'] } },
  ),
  single('long-preamble.csv', {
    chatter: Array.from({ length: 60 }, (_, i) => `Setting ${i + 1}: ${i % 2 === 0 ? 'on' : 'off'}`),
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('no-header.csv', { header: false, saysUnit: 'no' }),
  single('repeated-headers.csv', {
    headerEvery: 24,
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('notes-and-events.csv', {
    rowNumbers: true,
    battery: true,
    events: true,
    notes: ['', 'End of readings', 'Battery changed in spring'],
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('y-m-d'),
  }),
  single('evenements-et-notes.csv', {
    ...french,
    rowNumbers: true,
    battery: true,
    events: true,
    notes: ['', 'Fin du relevé'],
    zone: 'UTC-04:00',
    saysOffset: 'header',
    time: stamp('d/m/y', { apart: true }),
  }),
  ...['-999', 'NaN', '', '---', '-9999.0', 'logged off'].map((missing, i) =>
    single(`missing-${i + 1}.csv`, {
      missing,
      zone: 'UTC-04:00',
      saysOffset: 'header',
      time: stamp('y-m-d'),
    }),
  ),
  single(
    'two-temperatures.csv',
    { secondColumn: true, saysOffset: 'value' },
    { asked: { column: 'Temperature (°C)' } },
  ),
];

const header = (zone: string): Partial<Style> => ({ zone, saysOffset: 'header' });

/** Dates and clocks. */
const times: readonly Layout[] = [
  single('iso-offset-in-value.csv', { zone: 'UTC-03:30', saysOffset: 'value' }),
  single('iso-without-offset.csv', { ...local, zone: 'UTC-04:00' }, zoneAsked('UTC-04:00')),
  single('day-first.csv', { ...header('UTC-04:00'), time: stamp('d/m/y', { seconds: false }) }),
  single('day-first-dots.csv', { ...header('UTC+01:00'), ...french, time: stamp('d.m.y') }),
  single('month-first-12-hour.csv', {
    ...header('UTC-05:00'),
    time: stamp('m/d/y', { clock: 12, bare: true }),
  }),
  single('month-first-two-digit-year.csv', {
    ...header('UTC-05:00'),
    time: stamp('m/d/yy', { clock: 12, seconds: true }),
  }),
  single('day-first-two-digit-year.csv', {
    ...header('UTC-04:00'),
    time: stamp('d/m/yy', { apart: true, seconds: false }),
  }),
  single('month-names.txt', { ...header('UTC-04:00'), delimiter: '|', time: stamp('d-mon-y') }),
  single('month-names-12-hour.csv', {
    ...header('UTC-04:00'),
    time: stamp('mon d, y', { clock: 12, seconds: false }),
  }),
  single(
    'noms-de-mois.csv',
    {
      ...header('UTC-04:00'),
      ...french,
      encoding: 'windows-1252',
      time: stamp('d mon y', { seconds: false }),
    },
    { plan: { stepMinutes: 720 } },
  ),
  single(
    'noms-de-mois-entiers.csv',
    { ...header('UTC-04:00'), ...french, time: stamp('d month y', { apart: true, bare: true }) },
    { plan: { stepMinutes: 720 } },
  ),
  single('date-and-clock-apart.csv', {
    ...header('UTC-04:00'),
    time: stamp('y-m-d', { apart: true, clock: 12 }),
  }),
  single('epoch-seconds.csv', { ...local, time: { kind: 'epoch-s' } }),
  single('epoch-milliseconds.csv', { ...local, time: { kind: 'epoch-ms' } }),
  single('spreadsheet-serial-days.csv', { ...header('UTC-04:00'), time: { kind: 'serial' } }),
  single('jours-de-tableur.csv', { ...header('UTC-04:00'), ...french, time: { kind: 'serial' } }),
];

/** Units. */
const units: readonly Layout[] = [
  single('fahrenheit-in-header.csv', {
    ...header('UTC-05:00'),
    unit: 'F',
    decimals: 3,
    time: stamp('m/d/y'),
  }),
  single('fahrenheit-in-preamble.csv', { unit: 'F', saysUnit: 'preamble' }),
  single('kelvin.csv', { unit: 'K' }),
  single('no-unit.csv', { saysUnit: 'no' }),
  single('unit-asked.csv', { saysUnit: 'no', unit: 'F' }, { asked: { unit: 'F' } }),
];

const fallBack = { first: Date.UTC(2025, 10, 1, 12), readings: 72 };
const springForward = { first: Date.UTC(2026, 2, 7, 12), readings: 72 };

/** Zones: fixed offsets that are no whole hours, wall time, and clocks that did not follow it. */
const zones: readonly Layout[] = [
  single('offset-minus-0330.csv', { ...header('UTC-03:30'), time: stamp('y-m-d') }),
  single('offset-plus-0545.csv', { zone: 'UTC+05:45', saysOffset: 'preamble', time: stamp('y-m-d') }),
  single(
    'wall-time-autumn.csv',
    { ...local, zone: 'America/Halifax', time: stamp('y-m-d') },
    { asked: { zone: 'America/Halifax' }, plan: fallBack, anyDate: false },
  ),
  single(
    'wall-time-autumn-newfoundland.csv',
    { ...local, zone: 'America/St_Johns', time: stamp('y-m-d', { seconds: false }) },
    {
      known: knowsZone('America/St_Johns'),
      plan: { ...fallBack, stepMinutes: 30, readings: 100 },
      anyDate: false,
    },
  ),
  single(
    'wall-time-spring.csv',
    { ...local, zone: 'America/Halifax', time: stamp('d/m/y') },
    { asked: { zone: 'America/Halifax' }, plan: springForward, anyDate: false },
  ),
  single(
    'kept-summer-offset.csv',
    { ...local, zone: 'UTC-03:00', time: stamp('y-m-d') },
    { known: knowsZone('America/Halifax'), plan: fallBack, anyDate: false },
  ),
  single(
    'kept-winter-offset.csv',
    { ...local, zone: 'UTC-04:00', time: stamp('y-m-d') },
    { known: knowsZone('America/Halifax'), plan: springForward, anyDate: false },
  ),
  single(
    'station-zone.csv',
    { ...local, zone: 'Asia/Kathmandu', time: stamp('y-m-d') },
    { known: knowsZone('Asia/Kathmandu') },
  ),
];

export const delimitedLayouts: readonly Layout[] = [...texts, ...surroundings, ...times, ...units, ...zones];
