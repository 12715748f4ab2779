import type { CliWords } from '../../cli/words.js';
import { list, significant, whole } from '../format.js';
import { stageInEnglish } from '../stages.js';

type Harm = CliWords['table-harm'];
const harmEn: Record<Harm['kind'], string> = {
  warm: 'too warm',
  freezing: 'freezing',
  'sudden-change': 'sudden change',
  'cold-start': 'cold just after fertilisation',
  cold: 'cold for fry near emergence',
};
const severityEn: Record<Harm['severity'], string> = {
  lethal: 'lethal',
  'lowers-survival': 'lowers survival',
  advice: 'advice before planting',
};

/** The command line in English. */
export const cli: { [Code in keyof CliWords]: (words: CliWords[Code]) => string } = {
  'cli-about': () =>
    'Underice: when the eggs in every box eye up, hatch, button up and emerge, from what the loggers recorded.',
  'cli-usage': () => 'Usage:',
  'cli-arguments': () => 'Arguments:',
  'cli-options': () => 'Options:',
  'cli-global-options': () => 'Options of every command:',
  'cli-commands': () => 'Commands:',
  'cli-example': ({ command }) => `Example:\n  ${command}`,
  'cli-help': () => 'say how a command is used',
  'cli-version': () => 'say which version this is',
  'cli-option-data': () =>
    'folder that holds the season (default: UNDERICE_DATA, else one in your own data directory)',
  'cli-one-folder': () =>
    'This command works in one data folder: name one with --data. Only "serve" takes several.',
  'cli-option-lang': () => 'en or fr (default: UNDERICE_LANG, else the language of the terminal)',
  'cli-option-json': () => 'answer as JSON, for programs',
  'cli-unknown-command': ({ command }) =>
    `There is no command "${command}": "underice --help" lists them all.`,
  'cli-unknown-option': ({ option }) =>
    `The option ${option} is not known here: add --help to the command to see those it takes.`,
  'cli-missing-argument': ({ argument }) => `This command needs ${argument}: add --help to see an example.`,
  'cli-missing-value': ({ option }) => `The option ${option} needs a value after it.`,
  'cli-too-many': () => 'More was given than this command takes: add --help to see an example.',
  'cli-bad-value': ({ option, value, allowed }) => `${option} was given "${value}": it takes ${allowed}.`,
  'cli-not-a-date': ({ option, value }) =>
    `${option} was given "${value}": write the date as year-month-day, for example 2026-02-15.`,
  'cli-failed': ({ message }) => `The work stopped: ${message}. Nothing was stored by half.`,
  'cli-file-unreadable': ({ file }) =>
    `The file ${file} cannot be read: check the name and that you may open it.`,

  'cli-demo': () => 'load the invented sample season into a throw-away folder and show its forecast',
  'cli-demo-exit': () => 'print the forecast and end',
  'cli-demo-as-of': () => 'see the season as it stood on a date (2026-02-15 and 2026-06-20 are worth a look)',
  'cli-demo-intro': ({ loads, readings, folder }) =>
    `An invented season: ${whole('en', loads)} downloads with ${whole('en', readings)} readings are in ${folder}.`,
  'cli-demo-throwaway': () =>
    'The folder is thrown away now. To keep it, add --data with a folder of your own.',
  'cli-season': () => 'the season file: what is where, since when',
  'cli-season-apply': () => 'take over a season file, after showing what it changes',
  'cli-season-export': () => 'print the season file as it stands',
  'cli-season-file': () => 'season file (YAML)',
  'cli-season-dry-run': () => 'show what would change and change nothing',
  'cli-season-changes': ({ count }) => `Changes: ${whole('en', count)}.`,
  'cli-season-same': () => 'The season stands as the file says: nothing to change.',
  'cli-season-applied': () => 'The season file is taken over.',
  'cli-season-not-applied': () => 'Nothing was changed: leave out --dry-run to take it over.',
  'cli-load': () => 'load downloads from loggers and stations',
  'cli-load-file': () => 'files to load, in any layout, also gzipped',
  'cli-load-station': () => 'station the readings belong to, where the file does not say',
  'cli-load-zone': () => 'zone of its clock: a name such as America/Halifax, UTC or UTC-04:00',
  'cli-load-unit': () => 'unit of its temperatures: C, F or K',
  'cli-load-column': () => 'header of the temperature column to take',
  'cli-load-date-order': () => 'order of its dates: ymd, dmy or mdy',
  'cli-load-create': () => 'make the stations that --station or the file names',
  'cli-load-dry-run': () => 'say what would be understood and store nothing',
  'cli-load-reading': () => 'reading',
  'cli-loads': () => 'list every load',
  'cli-loads-none': () => 'Nothing has been loaded yet: "underice load FILE" begins.',
  'column-load': () => 'load',
  'column-when': () => 'when (UTC)',
  'column-readings': () => 'readings',
  'column-stations': () => 'stations',
  'column-file': () => 'file',
  'cli-loads-withdrawn': ({ at }) => `withdrawn ${at}`,
  'cli-withdraw': () => 'take a load back: what it covered shows again',
  'cli-withdraw-load': () => 'the load, as "underice loads" names it',
  'cli-withdrawn': ({ load, file }) => `Load ${load} (${file}) is withdrawn: what it covered shows again.`,
  'cli-forecast': () => 'when every box eyes up, hatches, buttons up and its fry emerge',
  'cli-forecast-box': () => 'this box only, with everything the forecast rests on',
  'cli-forecast-as-of': () => 'as it stood on this day (default: today)',
  'cli-record': () => "a station's record as CSV",
  'cli-record-station': () => 'the station',
  'cli-record-from': () => 'first day',
  'cli-record-to': () => 'last day',
  'cli-record-daily': () => 'one row a day, filled and projected days included, with their origin and spread',
  'cli-tables': () => 'the development tables, with their sources',
  'cli-tables-table': () => 'show this table whole',

  'cli-file-stored': ({ file, readings, load }) =>
    `${file}: ${whole('en', readings)} readings stored as load ${load}.`,
  'cli-file-understood': ({ file, readings }) =>
    `${file}: ${whole('en', readings)} readings understood, nothing stored (--dry-run).`,
  'cli-file-already': ({ file, load }) => `${file}: already loaded as load ${load}; nothing changed.`,
  'cli-file-refused': ({ file, reason }) => `${file}: not loaded. ${reason}`,
  'cli-file-station': ({ station, quantity, readings, first, last, range }) =>
    `${station}${quantity}: ${whole('en', readings)} readings, ${first} to ${last}${range}`,
  'quantity-level': () => 'level',
  'quantity-discharge': () => 'discharge',
  'cli-file-layout': ({ zone, unit, columns }) =>
    `understood: ${list('en', [...(unit ? [`values in ${unit}`] : []), ...(zone ? [`clock in ${zone}`] : []), `time from ${columns}`])}`,
  'cli-file-assumed': ({ sentence }) => `assumed: ${sentence}`,
  'cli-file-differing': ({ count, largest }) =>
    `${whole('en', count)} readings differ from what was there, by up to ${largest} °C; the newer file is what shows now.`,
  'cli-file-unusable': ({ count }) =>
    `${whole('en', count)} ${count === 1 ? 'line' : 'lines'} could not be used:`,
  'cli-file-unusable-line': ({ line, reason }) => `line ${whole('en', line)}: ${reason}`,

  'cli-forecast-title': ({ date }) =>
    `Forecast as of ${date}. A forecast is an estimate: see the cautions below.`,
  'cli-forecast-none': () =>
    'There is no box in the season yet: write the season file and take it over with "underice season apply FILE".',
  'column-box': () => 'box',
  'column-now': () => 'now',
  'column-water': () => 'water',
  'column-stage': () => 'stage',
  'column-first': () => 'first 5%',
  'column-median': () => 'median',
  'column-last': () => 'last 95%',
  'cli-forecast-legend': () =>
    'Each date is the median egg, with the days between which it falls 8 times in 10. A tick marks what has probably passed. "water" is the last measured day and the days measured / filled / projected.',
  'cli-forecast-cautions': () => 'Cautions:',
  'cli-forecast-lot': ({ lot, eggs, share }) => `Lot ${lot}, ${whole('en', eggs)} eggs: ${share}`,
  'cli-forecast-passed': () => 'passed',
  'cli-forecast-outside': () => 'leans on water outside the range of the table',
  'cli-forecast-water': ({ through, measured, filled, projected }) =>
    `Water measured through ${through}: ${whole('en', measured)} days measured, ${whole('en', filled)} filled, ${whole('en', projected)} projected.`,
  'cli-forecast-no-water': () => 'No water has been measured for this box.',
  'cli-forecast-method': () => 'How:',
  'cli-forecast-assumptions': () => 'What it assumes:',
  'cli-forecast-sharpen': () => 'What would sharpen it:',
  'cli-forecast-old-rule': () => 'The old rule:',

  'column-table': () => 'table',
  'column-name': () => 'name',
  'column-stages': () => 'stages',
  'table-stage': ({ stage, needs, spread, min, max }) =>
    `${stage}: ${needs}; spread between eggs ${spread} of the way; known to hold from ${min} to ${max} °C`,
  'table-after': ({ stage, law }) => `from ${stage}: ${law}`,
  'law-thermal-units': ({ units, base }) => `${units} degree-days above ${base} °C`,
  'law-days-at': ({ rows }) => `days at constant temperature ${rows} (between them by ln D)`,
  'table-do-not-handle': ({ from, to }) =>
    `eggs must not be handled from ${from} to ${to} of the way to hatch`,
  'table-row-temper': ({ limit }) =>
    `eggs are tempered where transport and site are more than ${significant('en', limit)} °C apart`,
  'table-row-leaves-box': ({ days, min, max }) =>
    `alevins leave the box ${days} days after hatch (${min} to ${max})`,
  'table-spreads': ({ lots, own }) =>
    `spread between lots and stocks ${lots} of the way, of the table itself ${own}`,
  'table-harm': ({ kind, severity, limit, hours, from, to }) =>
    `${harmEn[kind]}, ${severityEn[severity]}: ${limit} ${kind === 'sudden-change' ? '°C an hour' : '°C'}${hours > 0 ? ` for ${hours} h` : ''}, from ${from} to ${to} of the way to hatch`,
  'mark-memory': () => 'from memory',
  'mark-abstract': () => 'abstract only',
  'mark-common practice': () => 'common practice',
  'mark-ours': () => 'our estimate',
  'mark-computed': () => 'computed',

  'now-not-fertilised': () => 'not fertilised yet',
  'now-unknown': () => 'cannot say',
  'now-fertilised': ({ next, share }) => `${share} of the way to ${stageInEnglish(next).inSentence}`,
  'now-stage': ({ stage, next, share }) =>
    `past ${stageInEnglish(stage).inSentence}${next === null ? '' : `, ${share} to ${stageInEnglish(next).inSentence}`}`,

  'caution-estimate': () =>
    'Every date is an estimate. Temperature is not the only thing that kills eggs: silt, oxygen, ice and acid water do too.',
  'caution-ice': () => 'Never cross ice or wade high water to meet a date.',
  'caution-decide': () =>
    'Permits, fish-health rules, the responsible biologist and the local authority decide, not this program.',
};
