import type { EngineWords, LineRemark, LineWords } from '../../../adapters/words.js';
import { decimal, list, percent, whole } from '../format.js';

const count = (n: number) => whole('en', n);
const degrees = (value: number) => decimal('en', value, 1);
/** Names from a file, never so many that the sentence is lost in them. */
const SHOWN = 12;
const names = (items: readonly string[]) => {
  const first = items.slice(0, SHOWN).map((item) => `“${item.slice(0, 60)}”`);
  return list('en', items.length > SHOWN ? [...first, `${whole('en', items.length - SHOWN)} more`] : first);
};
const ofStation = (station: string | null) => (station === null ? 'the station' : `station ${station}`);
const orders: Record<string, string> = {
  ymd: 'year, month, day',
  dmy: 'day, month, year',
  mdy: 'month, day, year',
};
const order = (code: string) => orders[code] ?? code;
const zoneForm =
  'a zone’s name such as America/Halifax, UTC, or UTC with hours and minutes such as UTC-03:30';

const lines: { [K in keyof LineWords]: (w: LineWords[K]) => string } = {
  'line-too-long': ({ limitKiB }) => `the line is longer than ${count(limitKiB)} KiB`,
  'line-too-many-columns': ({ limit }) => `the line has more than ${count(limit)} columns`,
  'line-too-few-columns': ({ found, needed }) =>
    `the line has ${count(found)} columns where ${count(needed)} are needed`,
  'line-no-time': ({ text }) => `no date where the dates stand: “${text}”`,
  'line-bad-time': ({ text }) => `“${text}” is no date and time of the form the file uses`,
  'line-skipped-hour': ({ text, zone }) =>
    `“${text}” never was: the clocks of ${zone} skipped that hour in spring`,
  'line-after-now': ({ text }) => `“${text}” lies in the future`,
  'line-not-a-number': ({ text }) => `“${text}” is not a number`,
  'line-impossible-value': ({ text }) => `“${text}” is a temperature that no water or air has`,
  'line-unknown-unit': ({ text }) => `“${text}” is not a unit of temperature: °C, °F or K would do`,
  'line-unknown-zone': ({ text }) => `“${text}” is not an offset from UTC that is known`,
  'line-no-station': () => 'the line names no station',
  'line-same-instant': ({ firstLine, kept, dropped }) =>
    `a second value, ${dropped}, at the instant of line ${count(firstLine)}, which has ${kept}; the first was kept`,
  'line-cut-short': ({ text }) => `the last line looks cut: “${text}”`,
  'line-other-delimiter': ({ text }) => `the columns are separated by another mark: “${text}”`,
  'line-columns-moved': ({ text }) => `the columns stand in another order: “${text}”`,
};

/** One line's reason, inside another sentence. */
function reasonOf(reason: LineRemark): string {
  const say = <Code extends keyof LineWords>(code: Code, figures: LineWords[Code]) => lines[code](figures);
  return say<keyof LineWords>(reason.code, reason.with);
}

export const adapters: { [K in keyof EngineWords]: (w: EngineWords[K]) => string } = {
  ...lines,
  'empty-file': () => 'This file is empty. Download the logger again, or check that the copy finished.',
  'damaged-gzip': () =>
    'This compressed file is damaged or was cut short. Copy it again, or load the file it was made from.',
  'no-readings-found': ({ firstLine }) =>
    `No line of this file holds a date and a value. It begins with “${firstLine}”. Choose the file that came off the logger, exported as CSV or text.`,
  'headers-without-readings': ({ headers }) =>
    headers.length === 0
      ? 'This file holds no reading. Check that the logger had recorded before it was read.'
      : `This file has headers (${names(headers)}) but no readings below them. Check that the logger had recorded before it was read.`,
  'unknown-zone': ({ zone }) => `“${zone}” is no time zone that is known.`,
  'no-temperature-column': ({ headers }) =>
    `None of the columns says that it holds a temperature: ${names(headers)}.`,
  'unknown-column': ({ asked, headers }) =>
    `There is no column “${asked}” in this file. It has ${names(headers)}.`,
  'several-columns': ({ columns }) =>
    `Several columns hold temperatures and nothing says which is meant: ${names(columns)}.`,
  'unexplained-columns': ({ columns, firstLine }) =>
    `The file has no headers and ${columns.length === 0 ? 'no columns of numbers' : `several columns of numbers (${names(columns)})`}, so what they hold cannot be told. Its first line is “${firstLine}”.`,
  'ambiguous-dates': ({ text }) =>
    `The dates of this file can be read in more than one order, the first being “${text}”.`,
  'no-zone': ({ station }) =>
    `The file does not say in which time zone its clock ran, and none is known for ${ofStation(station)}.`,
  'no-unit': ({ smallest, largest }) =>
    `The file does not say in which unit its temperatures are, and ${degrees(smallest)} to ${degrees(largest)} need not be °C.`,
  'mostly-unusable': ({ unusable, lines: all, line, reason }) =>
    `${count(unusable)} of ${count(all)} lines cannot be used, so nothing was taken. Line ${count(line)}: ${reasonOf(reason)}.`,
  'layout-changes': ({ line, reason }) =>
    `From line ${count(line)} on the file is laid out differently: ${reasonOf(reason)}. It looks like two downloads in one file; split it there and load both.`,
  'several-loggers': ({ line, first, second }) =>
    `The file begins with ${first} and goes on with ${second} at line ${count(line)}. Split it there and load both parts.`,
  'too-many-stations': ({ limit, example }) =>
    `The column of stations holds more than ${count(limit)} names, such as “${example}”. It seems to be something else.`,
  'several-stations': ({ asked, stations }) =>
    `The file holds several stations (${names(stations)}), so it cannot be loaded as ${asked}.`,
  'not-a-river': ({ outside, readings, smallest, largest }) =>
    `${percent('en', outside / readings)} of the values are none that a river has: they go from ${degrees(smallest)} to ${degrees(largest)} °C. Check the column and its unit.`,
  'dates-without-clock': ({ date }) =>
    `Several readings have the date ${date} and none has a time of day. Export the file with its times.`,
  'which-column': ({ columns }) =>
    `Which column is the temperature? Name it with --column: ${names(columns)}.`,
  'which-date-order': ({ text, readings }) =>
    `Is “${text}” ${readings.map(({ order: code, iso }) => `${iso} (--date-order ${code})`).join(' or ')}?`,
  'which-zone': () =>
    `In which zone did the logger’s clock run? State it (on the command line with --zone): ${zoneForm}.`,
  'which-unit': () => 'Which unit is it? Say so with --unit C, --unit F or --unit K.',
  'leave-station-out': () => 'Leave --station out: the file names the station of every reading itself.',
  'unit-assumed': ({ unit, smallest, largest }) =>
    `The file states no unit; ${unit} was assumed, because its values go from ${degrees(smallest)} to ${degrees(largest)}.`,
  'unit-asked-not-used': ({ asked, stated }) =>
    `The file states its unit (${stated}), so --unit ${asked} was not used.`,
  'zone-asked': ({ zone }) => `The file states no time zone; it was read in ${zone}, as you said.`,
  'zone-asked-not-used': ({ asked, stated }) =>
    `The file states its offset, ${stated}, so ${asked} was not used.`,
  'zone-stated-unknown': ({ stated }) =>
    `The file names a time zone that is not known, “${stated}”, so that was not used.`,
  'zone-from-deployment': ({ zone, station }) =>
    `The file states no time zone; it was read in ${zone}, as the deployment at ${ofStation(station)} has it.`,
  'zone-from-station': ({ zone, station }) =>
    `The file states no time zone; it was read in ${zone}, the zone of ${ofStation(station)}.`,
  'zone-from-longitude': ({ zone, longitude }) =>
    `The file states no time zone; its days were taken to begin at midnight ${zone}, after the stated longitude of ${degrees(longitude)}°.`,
  'zone-home-for-days': ({ zone }) =>
    `The file states no time zone and no place; its days were taken to begin at midnight ${zone}, the group’s standard time.`,
  'zone-utc-for-days': () =>
    'The file states no time zone and no place; its days were taken to begin at midnight UTC.',
  'standard-time-of-zone': ({ zone, offset }) =>
    `The file is in local standard time: ${offset}, the standard time of ${zone}.`,
  'offset-in-each-value': () => 'Every reading states its own offset from UTC.',
  'kept-one-offset': ({ zone, offset }) =>
    `The clocks of ${zone} changed during this file, and it shows neither a repeated nor a missing hour: its clock was taken to have kept ${offset}.`,
  'fixed-offset-shown': ({ zone, offset }) =>
    `The clocks of ${zone} changed during this file, but the logger’s did not: it kept ${offset}.`,
  'wall-time-shown': ({ zone }) => `The logger’s clock followed the summer time of ${zone}.`,
  'no-header': ({ timeColumns, valueColumn }) =>
    `The file has no headers: ${names(timeColumns)} was taken for the time and “${valueColumn}” for the temperature.`,
  'date-order-by-steps': ({ order: code }) =>
    `The dates were read as ${order(code)}: only so do the readings follow each other evenly.`,
  'date-order-asked-not-used': ({ asked, found }) =>
    `The dates can only be read as ${order(found)}, so --date-order ${asked} was not used.`,
  'columns-taken-for-stations': ({ stations }) => `Each column was taken for a station: ${names(stations)}.`,
  'station-by-serial': ({ station, serial }) =>
    `The file states serial number ${serial}, of a logger that lay at ${ofStation(station)}: its readings go there.`,
  'station-asked-not-file': ({ asked, stated }) =>
    `The file names its station “${stated}”; its readings go to ${asked}, as you said.`,
  'daily-means-assumed': () =>
    'The file has one value a day and no time of day: the values were taken for daily means.',
  'extremes-not-means': ({ column }) =>
    `“${column}” holds a highest or lowest value of each day; it was taken in place of the daily mean.`,
  'air-beside-weather': ({ columns }) =>
    `The temperature was taken for the air’s, because it stands beside ${names(columns)}.`,
  'column-taken': ({ column, left }) => `“${column}” was taken; ${names(left)} was left.`,
  'column-without-unit-left': ({ column }) => `“${column}” was left, because it states no unit.`,
  'repeated-readings': ({ count: n }) =>
    n === 1
      ? 'One reading stands in the file more than once and was taken once.'
      : `${count(n)} readings stand in the file more than once and were taken once.`,
  'missing-values': ({ count: n }) =>
    n === 1 ? 'One line holds no value.' : `${count(n)} lines hold no value.`,
  'time-goes-back': ({ line, times }) =>
    times === 1
      ? `Time goes back at line ${count(line)}. Check whether the logger’s clock was set there.`
      : `Time goes back ${count(times)} times, first at line ${count(line)}. Check whether the logger’s clock was set there.`,
};
