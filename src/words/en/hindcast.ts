import type { HindcastWords } from '../../hindcast/words.js';
import { list, whole } from '../format.js';

const column: Record<string, string> = {
  station: 'the name of the station',
  date: 'a date written year-month-day, for example 2021-11-01',
  latitude: 'degrees from −90 to 90',
  longitude: 'degrees from −180 to 180',
  water_c: 'a temperature in °C with a decimal point',
  air_c: 'a temperature in °C with a decimal point',
};

/** How good the forecast would have been, in English. */
export const hindcast: { [Code in keyof HindcastWords]: (words: HindcastWords[Code]) => string } = {
  'hindcast-no-columns': ({ missing }) =>
    `This is not a file of daily means: its first line lacks ${list('en', missing)}. It should read station,latitude,longitude,date,water_c,air_c.`,
  'hindcast-bad-line': ({ line, column: name, value }) =>
    `Line ${whole('en', line)} has "${value}" for ${name}: that column takes ${column[name] ?? 'another value'}.`,
  'hindcast-two-values': ({ line, station, date }) =>
    `Line ${whole('en', line)} gives ${station} another value for ${date} than an earlier line did: keep one of the two.`,
  'hindcast-two-places': ({ line, station }) =>
    `Line ${whole('en', line)} puts ${station} at other coordinates than an earlier line did: give two places two names.`,
  'hindcast-too-long': ({ station }) =>
    `The days of ${station} lie more than a hundred and fifty years apart: look for a wrong year.`,
  'hindcast-no-water': () => 'No day in this file has a water temperature: there is nothing to compare.',
  'hindcast-not-a-day': ({ option, value }) =>
    `${option} was given "${value}": write the day of the year as month-day, for example 12-15.`,
  'hindcast-not-a-gap': ({ value }) =>
    `--gap was given "${value}": it takes a whole number of days from 1 to 242.`,
  'hindcast-no-stage': ({ stage, table, stages }) =>
    `The table ${table} has no stage "${stage}": it has ${list('en', stages)}.`,
  'hindcast-no-winter': () =>
    'No station has a whole winter here: at least 235 of the 242 days from fertilisation must be measured. Load past winters, or name a file of daily means.',
  'cli-hindcast': () => 'how good the forecast would have been in past winters, beside plain methods',
  'cli-hindcast-file': () =>
    'daily means: station,latitude,longitude,date,water_c,air_c (default: the stations of the season)',
  'cli-hindcast-case': () =>
    'what was known: history, late-download, under-ice, or gaps; may be repeated (default: all)',
  'cli-hindcast-fertilised': () => 'day of fertilisation, month-day (default: 11-01)',
  'cli-hindcast-lead': () =>
    'day the forecast is made on, month-day; may be repeated (default: 11-01, 12-15, 03-01, 04-01, 05-01)',
  'cli-hindcast-gap': () => 'length of a hidden gap in days; may be repeated (default: 7, 30, 120)',
  'cli-hindcast-table': () => 'development table',
  'cli-hindcast-stage': () =>
    'stage that is forecast (default: hatch); last-hatch and first-emergence are what lifting waits for',
  'hindcast-first-eggs': ({ stage }) => `${stage}, first eggs (5%)`,
  'hindcast-last-eggs': ({ stage }) => `${stage}, last eggs (95%)`,
  'cli-hindcast-visits': () =>
    'With visits a crew could have made, simulated from each hidden winter: a hand reading every three weeks in open water, the day ice came and went',
  'cli-hindcast-rows': () => 'with --json, also every winter at every station',
  'hindcast-case-history': () => 'Own readings to the lead date, no other station',
  'hindcast-case-late-download': () =>
    'Own readings to the lead date; the stations that report go on to the end',
  'hindcast-case-under-ice': () =>
    'Own readings end at planting; the stations that report go on to the lead date',
  'hindcast-gaps': () => 'Gaps hidden in a measured record, the neighbours kept (°C)',
  'hindcast-icy': () => 'Icy winters alone (60 or more days at or below 0.5 °C in the first 182):',
  'hindcast-all-icy': () =>
    'Every one of these winters is icy (60 or more days at or below 0.5 °C in the first 182).',
  'hindcast-legend': () =>
    'Days from the forecast median to the date that the measured winter gives under the same table. "Holds" is how often the 80% interval held the date: it should be near 80%. CRPS, in days, scores the whole window: less is better.',
  'hindcast-column-lead': () => 'Lead',
  'hindcast-column-n': () => 'n',
  'hindcast-column-error': () => 'Error',
  'hindcast-column-bias': () => 'Bias',
  'hindcast-column-p90': () => '9 in 10 below',
  'hindcast-column-holds': () => 'Holds',
  'hindcast-column-width': () => 'Width',
  'hindcast-column-days': () => 'Days',
  'hindcast-plain-ensemble': () => 'Past winters',
  'hindcast-plain-neighbour': () => 'Best neighbour',
  'hindcast-plain-line': () => 'Straight line',
  'hindcast-plain-far-neighbour': () => 'Best, 1 km or more',
  'hindcast-column-crps': () => 'CRPS',
  'hindcast-column-station': () => 'Station',
  'hindcast-asked': ({ stage, table, fertilised }) =>
    `Stage "${stage}", table ${table}, eggs fertilised on ${fertilised}.`,
  'hindcast-beside': () =>
    'Mean error of plain methods, days (in brackets that of this forecast in the same winters)',
  'hindcast-already-passed': () =>
    'Under the ice, winters in which the stage had come by the lead date, which nobody could know',
  'hindcast-still-to-come': () =>
    'Under the ice, winters in which the stage was still to come at the lead date',
  'hindcast-by-station': () => 'Mean error by station, days (in brackets the winters)',
  'hindcast-one-winter': ({ station, winter }) =>
    `${station} has one whole winter only (${winter}): it is forecast from other stations or from the days around it.`,
  'hindcast-no-whole-winter': ({ station }) =>
    `${station} has no whole winter and is only asked as a neighbour.`,
  'hindcast-not-reached': ({ count }) =>
    count === 1
      ? 'In one case the record ends before the stage: it is counted apart and is not in the errors.'
      : `In ${whole('en', count)} cases the record ends before the stage: they are counted apart and are not in the errors.`,
};
