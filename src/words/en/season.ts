import type { EntryRefused, SeasonProblem, SeasonProblemWords, SeasonWords } from '../../season/index.js';
import { askedAt, askedFor } from '../asked.js';
import { decimal, whole } from '../format.js';
import { fieldWithKey } from '../season-field.js';
import { counts } from './counts.js';
import { field } from './field.js';
import { type ForecastingWords, forecasting } from './forecasting.js';
import { layoutSentence } from './formats.js';
import { seasonFields } from './season-fields.js';
import { onPage, placeInWords } from './season-page.js';
import { things } from './season-things.js';

/** How many problems a refusal spells out. */
const SPELLED_OUT = 20;

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

const figure = (value: number) => decimal('en', value, 4).replace(/\.?0+$/, '');

const yaml: Record<string, string> = {
  BLOCK_AS_IMPLICIT_KEY: 'There is a second colon on this line: put the text after the first one in quotes.',
  MISSING_CHAR: 'Something was opened and not closed here: a quote, a bracket, or a colon is missing.',
  BAD_INDENT:
    'This line is not set in as far as its neighbours: lines of one thing start in the same column.',
  BLOCK_IN_FLOW: 'An indented block stands inside brackets: write it on one line, or without brackets.',
  UNEXPECTED_TOKEN: 'Something stands here that does not belong: text with : # [ ] { } in it needs quotes.',
  BAD_SCALAR_START: 'A value may not start with this sign: put the text in quotes.',
};

/** A value of the season file, or that there is none. */
const stated = (value: string | null) =>
  value === null ? '(not stated)' : value === 'true' ? 'yes' : value === 'false' ? 'no' : value;

/** Where a problem stands: "line 12, lots 2 › eggs". */
function place({ line, column, path }: SeasonProblem): string {
  const spot = line === null ? '' : `line ${line}${path.length === 0 ? `, column ${column ?? 1}` : ''}`;
  const way = path.map((step) => (typeof step === 'number' ? String(step + 1) : step)).join(' › ');
  return [spot, way.replace(/ › (\d+)/g, ' $1')].filter((part) => part !== '').join(', ');
}

function tableSentence<Code extends keyof ForecastingWords>(problem: {
  code: Code;
  with: ForecastingWords[Code];
}): string {
  return forecasting[problem.code](problem.with);
}

function sentence<Code extends keyof SeasonWords>(problem: { code: Code; with: SeasonWords[Code] }): string {
  return season[problem.code](problem.with);
}

/** What is wrong, to a person who sees labels and no keys. */
function pageSentence<Code extends keyof SeasonProblemWords>(problem: {
  code: Code;
  with: SeasonProblemWords[Code];
}): string {
  return (onPage[problem.code] ?? season[problem.code])(problem.with);
}

/** What is wrong with an entry from the field: under the words of the phone's own question, and no place in a file. */
function ofField(problem: SeasonProblem): string {
  if (problem.code === 'season.missing')
    return field['field-missing']({ field: askedAt(problem) ?? placeInWords(problem) });
  const asked = askedFor(problem);
  const label = asked === null ? '' : `${field[`face-${asked}`]({})}: `;
  return `${label}${pageSentence(problem)}`;
}

/** What was not taken; a form states no file, but the season. */
function notTaken(file: string, entry?: EntryRefused): string {
  if (entry !== undefined && entry.kind !== 'field') return season['season.not-taken'](entry);
  return file === 'season' ? 'The season was not changed' : `${file} was not taken, and nothing was changed`;
}

/** A count that a person entered: where in the season it would have stood says nothing to them, the key of it does. */
function entryRefused(file: string, entry: EntryRefused, problems: readonly SeasonProblem[]): string {
  if (entry.kind === 'field') return ofFieldAll(problems);
  const lines = problems.map((problem) => {
    const key = problem.path.slice(2).join(' › ');
    return `  ${key === '' ? '' : `${key}: `}${sentence(problem)}`;
  });
  return [`${notTaken(file, entry)}:`, ...lines].join('\n');
}

const ofFieldAll = (problems: readonly SeasonProblem[]) => [...new Set(problems.map(ofField))].join(' ');

export const season: { [Code in keyof SeasonWords]: (figures: SeasonWords[Code]) => string } = {
  ...counts,
  'season.refused': ({ file, problems, entry }) => {
    if (entry !== undefined) return entryRefused(file, entry, problems);
    const lines = problems.slice(0, SPELLED_OUT).map((problem) => {
      const where = place(problem);
      return `  ${where === '' ? '' : `${where}: `}${sentence(problem)}`;
    });
    const rest = problems.length - lines.length;
    const more = rest > 0 ? [`  ${season['season.and-more']({ more: rest })}`] : [];
    return [`${notTaken(file)}:`, ...lines, ...more].join('\n');
  },

  'season.refused-on-page': ({ problems, entry, file }) => {
    if (entry?.kind === 'field') return ofFieldAll(problems);
    const lines = problems.slice(0, SPELLED_OUT).map((problem) => {
      const where = placeInWords(problem);
      return `${where === '' ? '' : `${where}: `}${pageSentence(problem)}`;
    });
    const rest = problems.length - lines.length;
    const more = rest > 0 ? [season['season.and-more']({ more: rest })] : [];
    return [`${notTaken(file, entry)}:`, ...lines, ...more].join('\n');
  },
  'season.place': ({ problem }) => placeInWords(problem),
  'season.on-page': ({ problem }) => pageSentence(problem),
  'season.not-taken': ({ kind, box }) =>
    `${kind === 'tally' ? 'The tally' : 'The check'} of box ${box} was not taken, and nothing was changed`,
  'season.and-more': ({ more }) => `… and ${whole('en', more)} more.`,
  'season.line': ({ line, column }) => `line ${line}${column === null ? '' : `, column ${column}`}`,

  'season.not-yaml': ({ reason }) =>
    yaml[reason] ?? 'This cannot be read as YAML: compare it with the lines of the sample season.',
  'season.not-text': () => 'This is not a text file: a season file is plain text, saved as UTF-8.',
  'season.not-utf8': () =>
    'An accented letter here cannot be read: save the file again as UTF-8 (in the editor’s “Save as”).',
  'season.not-a-season': () =>
    'This is not a season file: it starts with “group:” and the group’s name and zone, then lists stations, sites, lots and boxes.',
  'season.too-large': ({ bytes, most }) =>
    `It has ${whole('en', bytes)} characters; a season file has at most ${whole('en', most)}. Readings do not belong in it: load them with “underice load”.`,
  'season.too-deep': ({ most }) =>
    `Lists lie inside lists more than ${most} deep: a season never needs that. Look for a bracket too many.`,
  'season.tab-indent': () => 'A tab sets this line in: use spaces.',
  'season.several-documents': () => 'A line of --- starts a second document: keep one season to a file.',
  'season.repeated-key': ({ key }) => `“${key}” stands twice in the same place: keep one.`,
  'season.alias-used': ({ name }) =>
    `“${name}” stands for something written elsewhere: write it out in full where it is meant. Text that starts with & or * needs quotes.`,
  'season.tag-used': ({ tag }) =>
    `“${tag}” gives the value a type, which a season file does not use: leave it out.`,
  'season.key-not-text': () => 'A key here is a list or a map: a key is one word, then a colon.',
  'season.unknown-key': ({ key, known }) => `“${key}” is not known here. These are: ${known}.`,
  'season.missing': ({ key }) => `“${key}” is missing.`,
  'season.not-a-map': () => 'Here belong lines of “key: value”.',
  'season.not-a-list': () => 'Here belongs a list: each entry on its own line, starting with “- ”.',
  'season.not-text-value': () => 'Here belongs one value, not a list or a map.',
  'season.unprintable': () => 'The text has control characters in it: retype it.',
  'season.text-too-long': ({ most }) =>
    `The text is longer than ${whole('en', most)} characters: shorten it.`,
  'season.bad-id': ({ given }) =>
    `“${given}” cannot be a name here: use letters and digits, with - _ . or a space inside, 64 at most (upper-pool). What people read can go into “name”.`,
  'season.not-a-number': ({ given }) => `“${given}” is not a number.`,
  'season.not-whole': ({ given }) => `“${given}” is not a whole number.`,
  'season.grouped-number': ({ given, meant }) =>
    `“${given}” can be read in two ways: write ${meant} if that is what you mean.`,
  'season.decimal-comma': ({ given, meant }) => `“${given}” has a decimal comma: write ${meant}.`,
  'season.out-of-range': ({ given, least, most }) =>
    `“${given}” is outside what can be: from ${figure(least)} to ${figure(most)}.`,
  'season.not-one-of': ({ given, choices }) => `“${given}” is not one of: ${choices}.`,
  'season.not-yes-no': ({ given }) => `“${given}” is neither yes nor no: write true or false.`,
  'season.not-a-date': ({ given }) => `“${given}” is not a date: write 2025-11-04.`,
  'season.not-a-moment': ({ given }) =>
    `“${given}” is not a date and time: write 2025-11-04 14:30, or with its offset 2025-11-04T14:30-04:00.`,
  'season.no-such-day': ({ given }) => `“${given}” is no day of a calendar from 1900 to 2099.`,
  'season.skipped-hour': ({ given, zone }) =>
    `${given} never showed on a clock in ${zone}: that hour was skipped when summer time began. Write the hour that was meant, or add the offset.`,
  'season.repeated-hour': ({ given, first, second }) =>
    `${given} came twice when summer time ended: write ${first} for the first or ${second} for the second.`,
  'season.unknown-zone': ({ given }) =>
    `“${given}” is not a time zone: write a name such as America/Halifax, UTC, or an offset such as UTC-03:30.`,
  'season.twelve-months': ({ given }) =>
    `${whole('en', given)} values were given: the curve needs twelve, January to December.`,
  'season.before-what': () =>
    'The eggs cannot have been in two places: keep one of station, celsius and with.',
  'season.duplicate-id': ({ thing, id }) =>
    `There is a ${things[thing]} called “${id}” already (capitals make no difference): give each its own name.`,
  'season.no-such': ({ thing, id, known }) =>
    known === ''
      ? `There is no ${things[thing]} “${id}”: the file lists none yet.`
      : `There is no ${things[thing]} “${id}”. There are: ${known}.`,
  'season.ends-before-start': ({ from, to }) => `It ends (${clock(to)}) before it begins (${clock(from)}).`,
  'season.overlapping-deployment': ({ logger, from, other }) =>
    `Logger “${logger}” was put in on ${clock(from)} while it still lay where it was put on ${clock(other)}: one logger lies in one place. Say when it came out (“to”).`,
  'season.read-outside': ({ logger, at, from, to }) =>
    `Logger “${logger}” was read on ${clock(at)}, but lay there from ${clock(from)}${to === null ? '' : ` to ${clock(to)}`}: one of the dates is wrong.`,
  'season.planted-before-fertilised': ({ lot, planted, fertilised }) =>
    `The eggs of lot “${lot}” were planted on ${clock(planted)}, before they were fertilised on ${clock(fertilised)}: one of the two is wrong.`,
  'season.lifted-before-planted': ({ box, lifted, planted }) =>
    `Box “${box}” was lifted on ${clock(lifted)}, before it was planted on ${clock(planted)}: one of the two is wrong.`,
  'season.too-many-eggs': ({ lot, eggs, inBoxes }) =>
    `The boxes hold ${whole('en', inBoxes)} eggs of lot “${lot}”, which had ${whole('en', eggs)}: correct the lot’s count or the fills.`,
  'season.more-out-than-in': ({ lot, eggs, inBoxes, elsewhere }) =>
    `Lot “${lot}” had ${whole('en', eggs)} eggs, but ${whole('en', inBoxes)} are in boxes and ${whole('en', elsewhere)} are stated as control, lost or left over: that is ${whole('en', inBoxes + elsewhere - eggs)} too many.`,
  'season.more-than-compartments': ({ box, eggs, compartments, doubled }) =>
    `Box “${box}” has room for ${whole('en', compartments)} eggs${doubled > 0 ? ` and ${whole('en', doubled)} doubled` : ''}, but its fills come to ${whole('en', eggs)}: correct the eggs, the unfilled or the doubled compartments.`,
  'season.more-fertilised-than-looked-at': ({ fertilised, of }) =>
    `${whole('en', fertilised)} were fertilised of ${whole('en', of)} looked at: that is more than all.`,
  'season.not-that-sex': ({ cross, adult, sex }) =>
    `In cross “${cross}”, “${adult}” is listed as ${sex}: name another adult or correct its sex.`,
  'season.not-a-photograph': ({ given }) =>
    `“${given}” is not the name of a kept photograph: add the photograph through a page or “underice field photo”.`,
  'season.no-temperature': ({ station }) =>
    `Station “${station}” records no temperature, so it cannot stand for the water of a box: name another, or add temperature to its quantities.`,
  'season.history-loop': ({ loop }) =>
    `These lots were each kept with the next, and the last with the first (${loop}): say for one of them what water it was in (station or celsius).`,
  'season.shipped-table-id': ({ id }) =>
    `“${id}” is the name of a table that comes with the program: give yours another.`,
  'season.no-such-stage': ({ stage, table, known }) =>
    `Table “${table}” has no stage “${stage}”. It has: ${known}.`,
  'season.lot-not-in-box': ({ lot, box }) => `Box “${box}” holds no eggs of lot “${lot}”.`,
  'season.which-lot': ({ box, lots }) =>
    lots === ''
      ? `Box “${box}” holds no eggs: name the lot.`
      : `Box “${box}” holds several lots (${lots}): name the one that was seen.`,
  'season.seen-of-what': () => 'Whose stage was seen? Name the box, the lot, or both.',
  'season.more-seen-than-looked-at': ({ seen, of }) =>
    `${whole('en', seen)} were seen at this stage of ${whole('en', of)} looked at: that is more than all.`,
  'season.stage-needs-what': () =>
    'A stage needs one of: a law; a law and “after” another stage; “multipleOf” another stage and a “factor”; or “sameAs” another stage.',
  'season.bad-layout': ({ problem }) => layoutSentence(problem),
  'season.table-rule': ({ table, problem }) => `Table “${table}”: ${tableSentence(problem)}`,

  'season.added': ({ thing, id }) => `new ${things[thing]}: ${id}`,
  'season.removed': ({ thing, id }) => `${things[thing]} left out: ${id}`,
  'season.changed': ({ thing, id, field, before, after }) =>
    `${things[thing]} ${id}, ${fieldWithKey(seasonFields, field)}: ${stated(before)} → ${stated(after)}`,
};
