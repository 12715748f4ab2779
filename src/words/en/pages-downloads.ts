import type { DownloadsPageWords } from '../../pages/downloads-words.js';
import { daysFromTo, longDay, whole } from '../format.js';

const n = (count: number) => whole('en', count);
const day = (at: number) => longDay('en', at);

/** Downloads in English. */
export const pagesDownloads: {
  [Code in keyof DownloadsPageWords]: (words: DownloadsPageWords[Code]) => string;
} = {
  'page-downloads-title': () => 'Downloads',
  'page-downloads-answer': ({ waiting, loads }) =>
    waiting > 0
      ? `${waiting === 1 ? 'One file waits' : `${n(waiting)} files wait`} to be looked at and accepted. Nothing of ${waiting === 1 ? 'it' : 'them'} counts yet.`
      : loads === 0
        ? 'Nothing has been loaded yet: drop the first file that came off a logger.'
        : `Nothing is waiting; ${loads === 1 ? 'one load stands' : `${n(loads)} loads stand`}.`,
  'page-downloads-drop': () => 'Drop files here, or pick them',
  'page-downloads-pick': () => 'Files',
  'page-downloads-kinds': () =>
    'Text in any layout (csv, txt, rdb, xml), spreadsheets (xlsx), also zipped. Nothing is kept until you accept it.',
  'page-downloads-sheet': () => 'Sheet of a spreadsheet (the first one where empty)',
  'page-downloads-send': () => 'Send and look',
  'page-downloads-sending': () => 'Sending…',
  'page-downloads-paste': () => 'Or paste the text of a download',
  'page-downloads-paste-name': () => 'What to call it',
  'page-downloads-pasted': () => 'pasted.csv',
  'page-downloads-waiting': () => 'Waiting',
  'page-downloads-look': () => 'Look at it',
  'page-downloads-loads': () => 'Loads',
  'page-downloads-no-loads': () => 'There is no load yet.',
  'page-downloads-withdraw': () => 'Withdraw',
  'page-downloads-withdraw-what': ({ load }) => `Withdraw load ${load}`,
  'page-downloads-withdrawn': ({ day: at }) => `withdrawn ${day(at)}`,
  'page-downloads-refused': ({ file }) => `${file} cannot be used`,
  'page-file-json': () => 'What was understood, as JSON',
  'page-file-csv': () => 'What the file brings, as CSV',
  'page-file-title': ({ file }) => `The download ${file}`,
  'page-file-ready': ({ readings, stations, from, to }) =>
    `It holds ${readings === 1 ? 'one reading' : `${n(readings)} readings`} of ${stations}, ${daysFromTo('en', from, to)}. Nothing is kept until you accept it.`,
  'page-file-already': ({ load }) =>
    `This file is loaded already, as load ${load}: accepting it would change nothing.`,
  'page-file-question': () => 'One thing must be answered before this file can be read.',
  'page-file-refused': () => 'This file cannot be used as it is.',
  'page-file-understood': () => 'What was understood',
  'page-file-assumed': () => 'What was assumed',
  'page-file-unusable': ({ count }) =>
    count === 1 ? '1 line could not be used' : `${n(count)} lines could not be used`,
  'page-file-unusable-line': ({ line, reason }) => `Line ${n(line)}: ${reason}.`,
  'page-file-differing': ({ count, largest }) =>
    `${count === 1 ? 'One reading differs' : `${n(count)} readings differ`} from what is there already, by ${count === 1 ? '' : 'up to '}${largest} °C; the newer file will be what shows.`,
  'page-file-over': ({ station }) => `What the file brings to ${station}, over what is there`,
  'page-file-over-key': () => 'Broken line: this file. Unbroken line: what is there already.',
  'page-file-accept': () => 'Accept it',
  'page-file-leave': () => 'Leave it: throw the file away',
  'page-file-again': () => 'Read it this way',
  'page-file-change': () => 'Something is wrong: say what the file does not',
  'page-ask-column': () => 'Which column is the temperature?',
  'page-ask-date': ({ text }) => `Which day is “${text}”?`,
  'page-ask-zone': () => 'In which time zone did the logger’s clock run?',
  'page-ask-zone-what': () =>
    'A zone’s name such as America/Halifax, or an offset such as UTC-04:00 for a clock that never changes.',
  'page-ask-unit': () => 'In which unit are its temperatures?',
  'page-ask-station': () => 'Which station does it come from?',
  'page-ask-station-new': () => 'or a new one, called',
  'page-ask-unnamed-made': ({ station }) => `The season has no station “${station}” yet: make it`,
  'page-ask-order': () => 'In which order do its dates stand?',
  'page-understood-encoding': () => 'encoding',
  'page-understood-delimiter': () => 'columns separated by',
  'page-understood-decimal': () => 'decimal mark',
  'page-understood-unit': () => 'unit',
  'page-understood-zone': () => 'clock',
  'page-understood-order': () => 'dates',
  'page-understood-time': () => 'time from',
  'page-understood-value': () => 'temperature from',
  'page-understood-tab': () => 'tab',
  'page-order-ymd': () => 'year, month, day',
  'page-order-dmy': () => 'day, month, year',
  'page-order-mdy': () => 'month, day, year',
  'page-accepted-title': ({ file }) => `${file} is loaded`,
  'page-accepted-answer': ({ load, readings, stations }) =>
    `Load ${load} stands, with ${readings === 1 ? 'one reading' : `${n(readings)} readings`} of ${stations}.`,
  'page-accepted-windows': () => 'What it did to the windows',
  'page-accepted-moved': ({ boxes }) =>
    boxes === 0
      ? 'It moved no window.'
      : `It moved windows of ${boxes === 1 ? 'one box' : `${n(boxes)} boxes`}.`,
  'page-accepted-before': () => 'before',
  'page-accepted-now': () => 'now',
  'page-accepted-narrower': ({ days }) => `${n(days)} ${days === 1 ? 'day' : 'days'} narrower`,
  'page-accepted-wider': ({ days }) => `${n(days)} ${days === 1 ? 'day' : 'days'} wider`,
  'page-accepted-more': () => 'More downloads',
  'page-accepted-layout': ({ layout }) =>
    `The layout “${layout}” is kept: files it matches are read by it from now on.`,
  'page-accepted-layout-not': ({ reason }) => `The load stands, but its layout was not kept. ${reason}`,
  'page-file-keep-layout': () => 'Keep how it was read, and my answers, for next year’s files',
  'page-file-keep-layout-name': () => 'Name of the layout',
  'page-file-keep-layout-what': () =>
    'A layout of the same name is replaced. Leave it empty and nothing is kept but the readings.',
  'page-layouts-title': () => 'Saved layouts',
  'page-layouts-answer': ({ count }) =>
    count === 0
      ? 'No layout is kept: every file is understood from what it says.'
      : `${count === 1 ? 'One layout is' : `${n(count)} layouts are`} kept: files ${count === 1 ? 'it matches' : 'they match'} ask nothing.`,
  'page-layouts-link': ({ count }) => `Saved layouts (${n(count)})`,
  'page-layouts-how': () =>
    'A layout is kept when a download is accepted: give it a name there. What a layout settles goes before what the file seems to say.',
  'page-layouts-known-by': ({ files }) => `Reads ${files}.`,
  'page-layouts-column': ({ number }) => `column ${n(number)}`,
  'page-layouts-level': () => 'level from',
  'page-layouts-discharge': () => 'discharge from',
  'page-layouts-station': () => 'station from',
  'page-layouts-header-line': () => 'line of the headers',
  'page-layouts-no-header': () => 'none: columns are counted',
  'page-layouts-missing': () => 'missing value',
  'page-layouts-remove': () => 'Remove',
  'page-layouts-remove-what': ({ layout }) => `Remove the layout “${layout}”`,
  'page-layouts-remove-note': () => 'What was loaded with it stays as it is.',
  'page-quoted': ({ text }) => `“${text}”`,
  'page-column-load': () => 'load',
  'page-column-file': () => 'file',
  'page-column-stations': () => 'stations',
  'page-column-readings': () => 'readings',
  'page-column-when': () => 'when',
  'page-column-change': () => 'change',
  'page-box': () => 'box',
  'page-station': () => 'station',
  'page-value': () => 'value',
};
