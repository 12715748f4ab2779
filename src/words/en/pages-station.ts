import type { StationPageWords } from '../../pages/station-words.js';
import { daysFromTo, longDay, whole } from '../format.js';

const n = (count: number) => whole('en', count);
const day = (at: number) => longDay('en', at);

const of: Readonly<Record<string, string>> = {
  stream: ' of stream water',
  gravel: ' of the water in the gravel',
  air: ' of the air',
  tank: ' of the water in the tank',
};

/** Stations and their records in English. */
export const pagesStation: { [Code in keyof StationPageWords]: (words: StationPageWords[Code]) => string } = {
  'page-stations-title': () => 'Stations',
  'page-stations-answer': ({ stations, silent }) =>
    stations === 1 && silent === 1
      ? 'One station, with no readings yet.'
      : `${stations === 1 ? 'One station' : `${n(stations)} stations`}${silent === 0 ? (stations === 1 ? ', with readings.' : ', all of them with readings.') : `; ${silent === 1 ? 'one has' : `${n(silent)} have`} no readings yet.`}`,
  'page-stations-none': () => 'There is no station yet: make the first, then load what its logger recorded.',
  'page-station-last': () => 'last reading',
  'page-station-first': () => 'first reading',
  'page-station-kind': () => 'kind',
  'page-station-reports': () => 'reports all winter',
  'page-station-title': ({ station }) => `Station ${station}`,
  'page-station-answer': ({ station, kind, readings, from, to }) =>
    `${station} has ${readings === 1 ? 'one reading' : `${n(readings)} readings`}${of[kind] ?? ''} ${daysFromTo('en', from, to)}.`,
  'page-station-empty': ({ station }) => `${station} has no readings yet.`,
  'page-station-load': () => 'Load a download',
  'page-station-not-in-season': () =>
    'The season does not name this station: only loads know it. Add it under Edit to use it for a box.',
  'page-station-later-readings': ({ day: at }) =>
    `The pages stand at ${day(at)}: readings after that day are in this record, and the forecast does not know them.`,
  'page-station-record': ({ from, to, low, high, unit }) =>
    `Between ${low} and ${high} ${unit}, ${daysFromTo('en', from, to)}`,
  'page-station-lowest': () => 'lowest',
  'page-station-highest': () => 'highest',
  'page-station-doubted': () => 'doubted',
  'page-station-key': () =>
    'Unbroken line: measured. Dashes: days filled from other stations or projected from past winters.',
  'page-station-zoom': () =>
    'Drag across the chart to look closer, double-click to see all; or use the buttons and the dates.',
  'page-station-from': () => 'From',
  'page-station-to': () => 'To',
  'page-station-show': () => 'Show',
  'page-station-whole': () => 'All of it',
  'page-station-closer': () => 'Closer',
  'page-station-wider': () => 'Wider',
  'page-station-earlier': () => 'Earlier',
  'page-station-later': () => 'Later',
  'page-station-flagged': ({ steps, of }) =>
    `${n(steps)} of the ${n(of)} steps drawn hold a reading that the checks doubt; they are marked.`,
  'page-station-unflagged': () => 'The checks doubt none of the readings drawn.',
  'page-station-deployments': () => 'Loggers that lay here',
  'page-station-no-deployments': () => 'The season names no logger that lay here.',
  'page-station-deployment': ({ logger, from, to, lay, lost }) =>
    `${logger}, ${lay}, from ${day(from)}${to === null ? (lost ? '; lost' : ', still there') : ` to ${day(to)}`}`,
  'page-station-loads': () => 'Loads that made this record',
  'page-station-readings-csv': () => 'Readings as CSV',
  'page-station-days-csv': () => 'Days as CSV, with their origin',
  'page-station-days-json': () => 'Days as JSON',
  'page-station-record-json': () => 'What is drawn, as JSON',
  'page-station-findings-json': () => 'What the checks say, as JSON',
  'page-station-filled-days': () => 'filled or projected days',
  'page-lay-in-box': () => 'in the box',
  'page-lay-tied-to-box': () => 'tied to the box',
  'page-lay-gravel': () => 'in the gravel',
  'page-lay-stream': () => 'in the stream',
  'page-lay-bank': () => 'on the bank',
  'page-lay-tank': () => 'in a tank',
  'page-lay-air': () => 'in the air',
  'page-kind-stream': () => 'stream water',
  'page-kind-gravel': () => 'water in the gravel',
  'page-kind-air': () => 'air',
  'page-kind-tank': () => 'hatchery tank',
  'page-kind-gauge': () => 'gauge',
  'page-yes': () => 'yes',
  'page-no': () => 'no',
};
