import type { ForecastWords } from '../../../forecasting/forecast.js';
import type { TableWords } from '../../../forecasting/table-problem.js';
import { decimal, longDay, percent, significant, whole } from '../format.js';
import { stageInEnglish } from '../stages.js';

export type ForecastingWords = ForecastWords & TableWords;

const inWords = (stage: string) => stageInEnglish(stage).inSentence;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const days = (count: number) => (Math.round(count) === 1 ? '1 day' : `${whole('en', count)} days`);
const degrees = (celsius: number) => `${significant('en', celsius)} °C`;
const units = (count: number) => `${whole('en', count)} degree-days`;
const narrower = (by: number, name: string) =>
  by < 0.5
    ? `would hardly narrow the window of ${inWords(name)}`
    : `would narrow the window of ${inWords(name)} by about ${days(by)}`;
/** Before what speaks against it: "hardly, and", "by two days, but". */
const but = (by: number) => (by < 0.5 ? ', and' : ', but');
const outstanding = (station: string, count: number) =>
  `The logger at ${station} has ${days(count)} not yet read`;
const notNow = {
  handling: 'handling kills these eggs at present.',
  ice: 'the water may be under ice.',
  blocked: 'today no box may be opened here.',
};
interface Seen {
  readonly lot: string;
  readonly stage: string;
  readonly day: number;
  readonly seen: number;
  readonly of: number;
  readonly moved: number;
}
const seenStage = ({ lot, stage: name, day, seen, of }: Seen) =>
  `Lot ${lot}, ${longDay('en', day)}: ${whole('en', seen)} of ${whole('en', of)} eggs looked at had come to ${inWords(name)}.`;
const movedBy = ({ stage: name, moved }: Seen) =>
  Math.abs(moved) < 0.5
    ? `The window of ${inWords(name)} stays where it was.`
    : `That moves ${inWords(name)} ${days(Math.abs(moved))} ${moved > 0 ? 'later' : 'earlier'}.`;
const row = (name: string) => `Row “${name}”`;
const figure = (value: number) => significant('en', value);

/** The forecast's remarks and what is wrong with a development table, in English. */
export const forecasting: {
  [Code in keyof ForecastingWords]: (words: ForecastingWords[Code]) => string;
} = {
  'cannot-say': ({ needs, station }) =>
    needs === 'station'
      ? 'Cannot say: this box names no station. It needs one, or a seasonal curve in the season file.'
      : needs === 'later-water'
        ? `Cannot say: the water at ${station} is not known past its last day. It needs a past winter there, a station that reports, or a seasonal curve in the season file.`
        : `Cannot say: nothing is known of the water at ${station}. It needs readings, a station nearby that has some, or a seasonal curve in the season file.`,
  'water-ends': ({ stage: name, station, from }) =>
    `Cannot say for all eggs when they come to ${inWords(name)}: no past winter at ${station} holds water from ${longDay('en', from)} on. It needs a station nearby that has some, or a seasonal curve in the season file.`,
  'not-reached': ({ stage: name, through, share }) =>
    `In ${percent('en', share)} of the possible winters the last eggs do not come to ${inWords(name)} by ${longDay('en', through)}, where the forecast ends.`,
  'rate-summation': ({ table }) =>
    `Development is summed day by day with the table “${table.en}”, never from a season’s mean.`,

  'logger-accuracy': ({ station, accuracy }) =>
    `The logger at ${station} is taken to be right within ${degrees(accuracy)}, wrong by the same amount all winter.`,
  'accuracy-not-stated': ({ station, assumed }) =>
    `No accuracy is stated for ${station}: ${degrees(assumed)} is assumed.`,
  'gravel-offset': ({ station, spread }) =>
    `Station ${station} reads the stream, the eggs may lie in gravel: the same water is assumed, give or take ${degrees(spread)} all winter.`,
  'leads-instead': ({ station, first, spread }) =>
    `Station ${first} has too few readings, so ${station} stands for the water of this box, give or take ${degrees(spread)}.`,
  'unknown-station': ({ station }) =>
    `The box names the station ${station}, of which nothing is known: check the season file.`,
  'few-winters': ({ winters }) =>
    winters === 1
      ? 'Only one past winter stands behind the days to come: the windows are widened for that.'
      : `Only ${whole('en', winters)} past winters stand behind the days to come: the windows are widened for that.`,
  'before-stated': ({ lot, celsius, days: count }) =>
    `Lot ${lot} spent ${days(count)} at ${degrees(celsius)}, as stated, before it was planted.`,
  'before-station': ({ lot, station, days: count, missing }) =>
    missing === 0
      ? `Lot ${lot} spent ${days(count)} in the water of ${station} before it was planted.`
      : `Lot ${lot} spent ${days(count)} in the water of ${station} before it was planted; ${days(missing)} without a reading there are bridged by a straight line.`,
  'before-station-silent': ({ lot, station, days: count }) =>
    `Lot ${lot} spent ${days(count)} at ${station} before it was planted, but no reading is known from there: the water of the box is taken instead. Load its readings or state a temperature.`,
  'before-as-stream': ({ lot, days: count }) =>
    `Nothing is stated of the ${days(count)} before lot ${lot} was planted: the water of the box is taken from fertilisation on.`,
  'planted-before-fertilised': ({ lot }) =>
    `Lot ${lot} was planted before it was fertilised, says the season file: it is counted from fertilisation on.`,
  'not-fertilised': ({ lot, day }) =>
    `Lot ${lot} is fertilised on ${longDay('en', day)} only: everything here lies ahead.`,
  'not-planted': ({ day }) => `The eggs are planted on ${longDay('en', day)} only.`,
  'lifted-already': ({ day }) =>
    `The box was lifted on ${longDay('en', day)}: progress stands as on that day.`,
  'no-fills': () => 'This box holds no eggs: add a fill to the season file.',
  'unknown-lot': ({ lot }) =>
    `The box names the lot ${lot}, which is not in the season file: its eggs are left out.`,
  'table-from-memory': ({ table }) =>
    `Some numbers of the table “${table.en}” were written down from memory and not seen in their source.`,
  'table-spread-ours': ({ table }) =>
    `How far eggs spread in the table “${table.en}” is partly this project’s own estimate.`,
  'stage-equated': ({ stage: name, with: other }) =>
    `${capital(inWords(name))} is taken to come with ${inWords(other)}, with a wider spread.`,
  'outside-validity': ({ stage: name, min, max }) =>
    `The window of ${inWords(name)} leans on water outside the range from ${figure(min)} to ${figure(max)} °C, where its numbers are known to hold.`,
  'stage-not-in-every-table': ({ stage: name, lots }) =>
    `The window of ${inWords(name)} leaves out lots whose table does not have that stage: ${lots}.`,

  'old-rule-agrees': ({ days: count }) =>
    count < 0.5
      ? 'The fixed rule names the same day.'
      : `The fixed rule and the window are ${days(count)} apart: they agree.`,
  'old-rule-late-cold': ({ days: count, coldDays, share, units: gathered }) =>
    `The fixed rule comes ${days(count)} later: on ${days(coldDays)} at or below 1 °C the eggs make ${percent('en', share)} of the way to hatch, while the rule gathers only ${units(gathered)}.`,
  'old-rule-late': ({ days: count, needed, rule }) =>
    `The fixed rule comes ${days(count)} later: in this water half of the eggs hatch after ${units(needed)}, not ${whole('en', rule)}.`,
  'old-rule-early': ({ days: count, needed, rule }) =>
    `The fixed rule comes ${days(count)} earlier: in this water half of the eggs hatch only after ${units(needed)}, not ${whole('en', rule)}.`,
  'old-rule-never': ({ gathered, rule, through }) =>
    `The fixed rule has no date for hatch: the water that is known, to ${longDay('en', through)}, gathers ${units(gathered)} of its ${whole('en', rule)}.`,
  'old-rule-alone': ({ rule }) =>
    `Only the fixed rule of ${units(rule)} has a date here; there is no hatch window to hold against it.`,
  'old-rule-no-water': ({ rule }) =>
    `The fixed rule of ${units(rule)} has no date either: the water is not known.`,

  'read-logger': ({ station, days: count, narrower: by, stage: name }) =>
    `${outstanding(station, count)}: its download ${narrower(by, name)}.`,
  'read-logger-after-ice': ({ station, days: count, narrower: by, stage: name }) =>
    `${outstanding(station, count)}: its download ${narrower(by, name)}${but(by)} the water may be under ice. Read it once the ice is out.`,
  'read-logger-after-eggs': ({ station, days: count, narrower: by, stage: name, until }) =>
    `${outstanding(station, count)}: its download ${narrower(by, name)}${but(by)} it lies with eggs that handling kills now. ${until === null ? 'Leave it until they are eyed.' : `Leave it until about ${longDay('en', until)}, when they are eyed.`}`,
  'read-logger-other-day': ({ station, days: count, narrower: by, stage: name }) =>
    `${outstanding(station, count)}: its download ${narrower(by, name)}${but(by)} it lies with eggs and today no box may be opened. Read it on a day that is not blocked.`,
  'one-more-station': ({ narrower: by, stage: name }) =>
    `One more station that reports, in this water or close by, ${narrower(by, name)}.`,
  'observe-stage': ({ eggs, seen, narrower: by, stage: name }) =>
    `Looking at ${whole('en', eggs)} eggs for ${inWords(seen)} ${narrower(by, name)}. Open the box only where the permit and the responsible biologist allow it.`,
  'observe-not-now': ({ seen, narrower: by, stage: name, why }) =>
    `A look at eggs for ${inWords(seen)} ${narrower(by, name)}, but not now: ${notNow[why]} Downloads and stations are what helps until then.`,
  'observation-used': (seen) => `${seenStage(seen)} ${movedBy(seen)}`,
  'observation-surprises': (seen) =>
    `${seenStage(seen)} Hardly a possible winter agrees with that, so it is believed only in part: check the lot, the box and the date. ${movedBy(seen)}`,
  'read-logger-to-lead': ({ station, days: count }) =>
    `${outstanding(station, count)}: once read, it stands for this box itself.`,
  'name-a-station': () => 'Name a station for this box in the season file.',
  'history-or-curve': () =>
    'Load past winters of this station, or those of one nearby with some weeks in common with it, or state a seasonal curve in the season file.',

  'table-not-a-number': ({ row: name, field, value }) =>
    `${row(name)}: ${field} is “${value}”, which is not a number.`,
  'table-no-stages': () => 'The table has no stages: it needs at least one.',
  'table-stage-twice': ({ row: name }) => `${row(name)} stands in the table twice: a stage has one row.`,
  'table-days-rise': ({ row: name, celsius, days: count, before }) =>
    `${row(name)}: ${figure(count)} days at ${degrees(celsius)} after ${figure(before)} days in colder water. Eggs need fewer days in warmer water, so days must fall as temperature rises.`,
  'table-temperatures-unsorted': ({ row: name, celsius, before }) =>
    `${row(name)}: ${degrees(celsius)} is listed after ${degrees(before)}. List temperatures from cold to warm, each once.`,
  'table-too-few-rows': ({ row: name, rows }) =>
    `${row(name)}: ${whole('en', rows)} temperatures are listed; at least two are needed to go between them.`,
  'table-not-positive': ({ row: name, field, value }) =>
    `${row(name)}: ${field} is ${figure(value)}; it must be above 0.`,
  'table-law-slows': ({ row: name, field, value, celsius }) =>
    `${row(name)}: with ${field} = ${figure(value)} the days rise with temperature at ${degrees(celsius)}. They must fall over the whole range of validity.`,
  'table-power-undefined': ({ row: name, alpha, min }) =>
    `${row(name)}: the power law has no value at or below its alpha of ${degrees(alpha)}, but the row claims to hold from ${degrees(min)}. Alpha must lie below that.`,
  'table-units-never': ({ row: name, base, max }) =>
    `${row(name)}: nothing is gathered below its base of ${degrees(base)}, but the row claims to hold only up to ${degrees(max)}. The base must lie below that.`,
  'table-rows-outside-validity': ({ row: name, min, max }) =>
    `${row(name)}: the listed temperatures go from ${degrees(min)} to ${degrees(max)}, and the range of validity goes beyond them. State a range within them.`,
  'table-refers-to-itself': ({ row: name }) =>
    `${row(name)} leans on itself: give it a law, or name another stage.`,
  'table-refers-to-unknown': ({ row: name, to }) =>
    `${row(name)} leans on “${to}”, which is not in the table.`,
  'table-after-later': ({ row: name, to }) =>
    `${row(name)} is counted after “${to}”, which is listed later. List stages in the order eggs pass them.`,
  'table-loop': ({ row: name, loop }) =>
    `${row(name)} leans on itself by way of others: ${loop}. One of them needs a law of its own.`,
  'table-multiple-of-counted': ({ row: name, to }) =>
    `${row(name)} is a multiple of “${to}”, which is counted after another stage. Take a multiple of a stage counted from fertilisation.`,
  'table-out-of-order': ({ row: name, before, celsius, days: count, daysBefore }) =>
    `${row(name)}: at ${degrees(celsius)} it comes after ${decimal('en', count, 1)} days, before “${before}” at ${decimal('en', daysBefore, 1)} days, which is listed first. List stages in the order eggs pass them.`,
  'table-negative-spread': ({ row: name, field, value }) =>
    `${row(name)}: ${field} is ${figure(value)}; a spread cannot be below 0.`,
  'table-wide-spread': ({ row: name, field, value }) =>
    `${row(name)}: ${field} is ${figure(value)}; a spread is a fraction of the way, at most 0.3 (0.03 is usual).`,
  'table-span-empty': ({ row: name, field, from, to }) =>
    `${row(name)}: ${field} goes from ${figure(from)} to ${figure(to)}; it must begin at 0 or above and end later than it begins.`,
  'table-leaves-box': ({ row: name, days: count, min, max }) =>
    `${row(name)}: alevins leave the box after ${figure(count)} days, between ${figure(min)} and ${figure(max)}; these must be in order and not below 0.`,
  'table-hours-negative': ({ row: name, value }) =>
    `${row(name)}: hours is ${figure(value)}; it must be 0 or more.`,
};
