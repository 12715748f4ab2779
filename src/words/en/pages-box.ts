import type { BoxPageWords } from '../../pages/box-words.js';
import { decimal, longDay, whole } from '../format.js';
import { stageInEnglish } from '../stages.js';

const day = (at: number) => longDay('en', at);
const n = (count: number) => whole('en', count);
const days = (count: number) => (count === 1 ? '1 day' : `${n(count)} days`);

/** A box's page in English. */
export const pagesBox: { [Code in keyof BoxPageWords]: (words: BoxPageWords[Code]) => string } = {
  'page-box-title': ({ box, day: at }) => `Box ${box} on ${day(at)}`,
  'page-box-answer': ({ eggs, now, next, median, from, to }) =>
    [
      eggs === 0
        ? 'This box holds no eggs.'
        : now === null
          ? `Nothing can be said of the ${n(eggs)} eggs yet.`
          : `The ${n(eggs)} eggs are ${now}.`,
      ...(next === null || median === null
        ? []
        : [
            `Half of them are expected to reach ${stageInEnglish(next).inSentence} about ${day(median)}${
              from === null || to === null ? '' : `, between ${day(from)} and ${day(to)}, 8 times in 10`
            }.`,
          ]),
    ].join(' '),
  'page-box-windows': () => 'Windows',
  'page-box-windows-whole': () => 'All eggs of the box',
  'page-box-windows-lot': ({ lot, eggs }) => `Lot ${lot}, ${n(eggs)} eggs`,
  'page-box-first': () => 'first (5%)',
  'page-box-median': () => 'median',
  'page-box-last': () => 'last (95%)',
  'page-box-passed': () => 'has probably passed',
  'page-box-outside': () => 'leans on water outside the range of the table',
  'page-box-windows-note': () => 'In brackets: the days between which each date falls 8 times in 10.',
  'page-box-old-rule': () => 'The old rule beside it',
  'page-box-old-rule-date': ({ units, day: at }) => `${n(units)} degree-days would say hatch on ${day(at)}.`,
  'page-box-progress': () => 'Progress',
  'page-box-progress-finding': ({ lot, share, stage }) => `Lot ${lot} is ${share} of the way to ${stage}`,
  'page-box-progress-unit': ({ stage }) => `progress to ${stage}`,
  'page-box-units-finding': ({ lot, units }) => `Lot ${lot} has gathered ${n(units)} degree-days`,
  'page-box-units-unit': () => 'degree-days (°C·day)',
  'page-box-water': () => 'Water',
  'page-box-water-finding': ({ station, measured, filled, projected }) =>
    `Water at ${station}: ${days(measured)} measured, ${n(filled)} filled, ${n(projected)} projected`,
  'page-box-water-none': () => 'Nothing is known of the water of this box yet.',
  'page-box-water-unit': () => 'daily mean (°C)',
  'page-box-water-key': () =>
    'Unbroken line: measured. Dashes: filled from other stations. Dots: projected from past winters. The pale band holds 8 times in 10.',
  'page-box-filled': () => 'Where the filled days came from',
  'page-box-filled-none': () => 'No day of this winter had to be filled.',
  'page-box-filled-days': () => 'days',
  'page-box-filled-from': () => 'from station',
  'page-box-weight': () => 'weight',
  'page-box-slope': () => 'slope',
  'page-box-intercept': () => 'intercept (°C)',
  'page-box-n': () => 'days compared',
  'page-box-error': () => 'error (°C)',
  'page-box-scatter-link': () => 'See the stations against each other',
  'page-box-scatter-title': ({ box }) => `Box ${box}: where filled days came from`,
  'page-box-scatter-answer': ({ count }) =>
    count === 1
      ? 'One station helped to fill the gaps of this box.'
      : `${n(count)} stations helped to fill the gaps of this box.`,
  'page-box-scatter-finding': ({ station, from, n: count, error }) =>
    `${station} follows ${from} to within ${decimal('en', error, 2)} °C over ${days(count)}`,
  'page-box-scatter-note': () =>
    'Each dot is a day that both stations measured. The line is the relation used; it may differ with the season, and the error is what it missed by on days it had not seen.',
  'page-box-method': () => 'How the dates come about',
  'page-box-assumes': () => 'What they take for granted',
  'page-box-sharpen': () => 'What would sharpen them',
  'page-box-observed': () => 'Stages seen',
  'page-box-observed-none': () => 'Nobody has noted a stage for this box yet.',
  'page-box-observed-row': ({ day: at, stage, seen, of, lot, note }) =>
    `${day(at)}: ${stage}${seen === null ? '' : `, ${n(seen)}${of === null ? '' : ` of ${n(of)}`} eggs`}${lot === null ? '' : `, lot ${lot}`}${note === null ? '' : `. ${note}`}`,
  'page-box-observed-add': () => 'Note a stage that was seen',
  'page-box-observed-caution': () =>
    'Never open a box to look: eggs that have not eyed up die of being handled. Note what was seen in the hatchery control or at a visit that was due anyway.',
  'page-box-observed-seen': () => 'how many had reached it',
  'page-box-observed-of': () => 'of how many looked at',
  'page-box-observed-kept': () => 'The observation was noted.',
  'page-box-lots': () => 'What lies in it',
  'page-box-lot': ({ lot, eggs, fertilised, planted, table, part }) =>
    `${n(eggs)} eggs of lot ${lot}${part === null ? '' : ` (${part})`}, fertilised ${fertilised}, planted ${planted}; table: ${table}.`,
  'page-box-place': ({ site }) => `Site: ${site}.`,
  'page-box-stations': () => 'Stations, in order of trust:',
  'page-day': () => 'day',
  'page-note': () => 'note',
  'page-lot': () => 'lot',
  'page-stage': () => 'stage',
  'page-keep': () => 'Keep',
  'page-week-of': () => 'week from',
  'page-origin-measured': () => 'measured',
  'page-origin-filled': () => 'filled',
  'page-origin-projected': () => 'projected',
  'page-origin': () => 'origin',
  'page-mean-c': () => 'mean (°C)',
  'page-low-c': () => 'lowest mean (°C)',
  'page-high-c': () => 'highest mean (°C)',
  'page-low': () => 'low (1 in 10 below)',
  'page-middle': () => 'best',
  'page-high': () => 'high (1 in 10 above)',
};
