import { type AdapterRemark, type Asked, DownloadRefused, type Known } from '../download.js';
import { DAY } from '../fields/civil.js';
import { foldWord } from '../fields/words-of-time.js';
import type { Plan, StatedClock } from '../reading/plan.js';
import { unitInCell } from '../reading/row-values.js';
import { zoneNamed } from '../zones/zone.js';
import { batteryColumn, batteryInPreamble, noteColumns } from './battery.js';
import { chooseOrder } from './choose-order.js';
import { type Frame, frameOf } from './frame.js';
import { type Head, linesOf } from './head.js';
import type { HeaderSays } from './header.js';
import { positionOf } from './layout-columns.js';
import { type Pace, paceOf, tallyOf, timeTexts } from './pace.js';
import { serialInHeader, statedOrder } from './preamble.js';
import { clockInHeader } from './stated-clock.js';
import { findStation } from './station-column.js';
import { columnName, namesOf } from './time-columns.js';
import { findValues, type ValuesFound } from './value-columns.js';

/** A plan, and whether the order of its dates is still open: then the whole file has to be asked. */
export interface Sniffed {
  readonly plan: Plan;
  readonly orderOpen: boolean;
}

/**
 * Understands a file from its head: where its table stands, what its columns hold, how its dates and numbers are
 * written. null where nothing in the head looks like readings.
 *
 * @throws DownloadRefused where the columns can be taken in two ways and nobody said which
 */
export function sniff(head: Head, asked: Asked, known: Known): Sniffed | null {
  const { lines, newline } = linesOf(head);
  const frame = frameOf(lines, asked);
  if (frame === null) return null;
  const headers = frame.header?.headers ?? null;
  const station = stationColumn(frame, asked, known);
  const choice = chooseOrder(tallyOf(timeTexts(frame, station)).evidence(), orderStated(frame), asked);
  const pace = paceOf(frame, timeTexts(frame, station), choice.order);
  const unitColumn = unitColumnOf(frame);
  const found = valuesOf(frame, asked, known, station, unitColumn);
  const daily = isDaily(frame, pace, found);
  const names = namesOf(frame.time, headers);
  const serial = frame.preamble.serial ?? headers?.map(serialInHeader).find((one) => one !== null) ?? null;
  const bySerial = asked.station === undefined && station < 0 ? stationOfSerial(frame, serial, known) : null;
  const stationName = asked.station ?? (station >= 0 ? null : (bySerial ?? frame.preamble.station));
  const plan: Plan = {
    encoding: head.found.encoding,
    newline,
    delimiter: frame.delimiter,
    decimal: asked.layout?.decimal ?? decimalOf(frame, found),
    firstLine: frame.first + 1,
    headers,
    columns: frame.width,
    time: names,
    values: found.values,
    station,
    latitude: roleColumn(frame, 'latitude'),
    longitude: roleColumn(frame, 'longitude'),
    unitColumn,
    ...batteryOf(frame, found, station, unitColumn),
    daily,
    order: choice.order,
    orderCertain: choice.certain,
    orderMatters: choice.matters,
    yearDigits: pace.yearDigits,
    interval: pace.interval,
    direction: pace.direction,
    clock: clockOf(frame, asked),
    stationName,
    stationInFile: frame.preamble.station,
    place: frame.preamble.place,
    serial,
    unitAssumed: found.unitAssumed,
    fewestDecimals: fewestDecimals(frame, found),
    missing: new Set(asked.layout?.missing?.map((text) => foldWord(text.trim()))),
    assumed: [
      ...choice.assumed,
      ...found.assumed,
      ...remarksOn(frame, asked, found, daily, stationName),
      ...(bySerial === null || serial === null
        ? []
        : [{ code: 'station-by-serial' as const, with: { station: bySerial, serial } }]),
    ],
  };
  return { plan, orderOpen: choice.open };
}

/** Where the file speaks of the battery. In a table with a column a station nobody knows whose battery it is. */
function batteryOf(
  { header, says, time, lines, first, delimiter }: Frame,
  { values }: ValuesFound,
  station: number,
  unitColumn: number,
): Pick<Plan, 'battery' | 'notes' | 'stated'> {
  const stated = batteryInPreamble(lines.slice(0, header?.index ?? first), delimiter);
  if (header === null || values.some((one) => one.station !== null))
    return { battery: null, notes: [], stated };
  const headers = header.headers.map((name, i) => `${name} ${header.units[i] ?? ''}`.trim());
  const taken = new Set([
    time.date,
    time.clock,
    time.zone,
    ...time.parts,
    station,
    unitColumn,
    ...values.map(({ index }) => index),
  ]);
  return { battery: batteryColumn(headers, taken), notes: noteColumns(headers, says ?? [], taken), stated };
}

/** Where a file names no station the season knows: the one where the logger of its serial number lay. */
function stationOfSerial({ preamble }: Frame, serial: string | null, known: Known): string | null {
  if (serial === null || (preamble.station !== null && known.zoneOf(preamble.station) !== null)) return null;
  return known.stationOfSerial?.(serial) ?? null;
}

function roleColumn({ says }: Frame, role: 'latitude' | 'longitude' | 'unit'): number {
  return says?.findIndex((said) => said.role === role) ?? -1;
}

function stationColumn(frame: Frame, asked: Asked, known: Known): number {
  const settled = asked.layout?.station;
  if (settled !== undefined) return positionOf(settled, frame.header?.headers ?? null, frame.width);
  return findStation(frame.rows, frame.says, frame.time, known);
}

/** A column of units beside the values: by its header, or because its cells are nothing else. */
function unitColumnOf(frame: Frame): number {
  for (let column = 0; column < frame.width; column++) {
    const cells = frame.rows.map(({ cells }) => cells[column] ?? '').filter((cell) => cell !== '');
    if (cells.length > 0.5 * frame.rows.length && cells.every((cell) => unitInCell(cell) !== null))
      return column;
  }
  return -1;
}

function orderStated({ header, time, preamble }: Frame) {
  const text = header === null ? '' : `${header.headers[time.date] ?? ''} ${header.units[time.date] ?? ''}`;
  return statedOrder(text) ?? preamble.order;
}

function clockOf({ header, time, preamble }: Frame, asked: Asked): StatedClock {
  const settled = asked.layout?.zone;
  if (settled !== undefined) {
    const zone = zoneNamed(settled);
    return zone === null ? { kind: 'unknown', text: settled } : { kind: 'zone', zone, text: settled };
  }
  const textOf = (column: number) =>
    header === null || column < 0
      ? ''
      : `${header.headers[column] ?? ''} ${header.units[column] ?? ''}`.trim();
  return (
    clockInHeader(textOf(time.date)) ??
    clockInHeader(textOf(time.clock)) ??
    preamble.clock ?? { kind: 'none' }
  );
}

function valuesOf(
  frame: Frame,
  asked: Asked,
  known: Known,
  station: number,
  unitColumn: number,
): ValuesFound {
  const headers = frame.header?.headers ?? null;
  const { date, clock, zone, parts } = frame.time;
  const temperature = asked.layout?.temperature;
  const column =
    asked.column ??
    (temperature === undefined ? undefined : `#${positionOf(temperature, headers, frame.width) + 1}`);
  return findValues({
    rows: frame.rows,
    headers,
    says: frame.says ?? [],
    taken: new Set([date, clock, zone, station, unitColumn, ...parts]),
    asked: { ...asked, column },
    known,
    preambleUnit: frame.preamble.unit,
    preambleMedium: frame.preamble.medium,
    hasUnitColumn: unitColumn >= 0,
    hasStationColumn: station >= 0,
    firstLine: frame.lines[frame.first],
  });
}

/** The decimal mark that the value columns use; serial days and coordinates follow it too. */
function decimalOf({ rows, time }: Frame, { values }: ValuesFound): ',' | '.' {
  const columns = [...values.map(({ index }) => index), ...(time.form === 'serial-days' ? [time.date] : [])];
  return markIn(rows, columns) ?? markIn(rows, rows[0]?.cells.map((_, i) => i) ?? []) ?? '.';
}

/** The mark that most numbers of some columns have, null where none has any. */
function markIn(rows: Frame['rows'], columns: readonly number[]): ',' | '.' | null {
  let commas = 0;
  let points = 0;
  for (const { cells, kinds } of rows) {
    for (const column of columns) {
      if (kinds[column] !== 'number') continue;
      if (cells[column].includes(',')) commas++;
      else if (cells[column].includes('.')) points++;
    }
  }
  return commas + points === 0 ? null : commas > points ? ',' : '.';
}

function fewestDecimals({ rows }: Frame, { values }: ValuesFound): number {
  const last = Math.max(...values.map(({ index }) => index));
  const decimals = rows
    .filter(({ kinds }) => kinds[last] === 'number')
    .map(({ cells }) => /[.,](\d*)$/.exec(cells[last])?.[1].length ?? 0);
  // The last row may be the one that was cut.
  const others = decimals.slice(0, -1);
  return others.length === 0 ? 0 : Math.min(...others);
}

const saysDaily = /\b(?:daily|mean|moy(?:en(?:ne)?)?|journali[eè]re?|quotidien(?:ne)?|avg|average)\b/i;

function statesDaily(frame: Frame, { values }: ValuesFound): boolean {
  const { says, preamble } = frame;
  return (
    preamble.daily ||
    values.some(({ index, name }) => says?.[index]?.statistic != null || saysDaily.test(name))
  );
}

function isDaily(frame: Frame, pace: Pace, found: ValuesFound): boolean {
  const daily = pace.dateOnly || (pace.midnights && (pace.interval ?? 0) >= DAY && statesDaily(frame, found));
  if (daily && pace.repeats)
    throw new DownloadRefused({
      code: 'dates-without-clock',
      with: { date: frame.rows[0]?.cells[frame.time.date] ?? '' },
    });
  return daily;
}

function isExtreme(statistic: HeaderSays['statistic']): boolean {
  return statistic === 'max' || statistic === 'min';
}

function remarksOn(
  frame: Frame,
  asked: Asked,
  found: ValuesFound,
  daily: boolean,
  stationName: string | null,
): AdapterRemark[] {
  const remarks: AdapterRemark[] = [];
  const stated = frame.preamble.station;
  if (frame.header === null) {
    const timeColumns = namesOf(frame.time, null).names;
    remarks.push({
      code: 'no-header',
      with: { timeColumns, valueColumn: found.values[0]?.name ?? columnName(null, 0) },
    });
  }
  if (daily && !statesDaily(frame, found)) remarks.push({ code: 'daily-means-assumed', with: {} });
  const extreme = found.values.find(({ index }) => isExtreme(frame.says?.[index]?.statistic ?? null));
  if (daily && extreme !== undefined)
    remarks.push({ code: 'extremes-not-means', with: { column: extreme.name } });
  if (asked.station !== undefined && stated !== null && stated !== stationName)
    remarks.push({ code: 'station-asked-not-file', with: { asked: asked.station, stated } });
  return remarks;
}
