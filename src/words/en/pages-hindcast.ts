import type { HindcastPageWords } from '../../pages/hindcast-words.js';
import { decimal, percent, shortDay, whole } from '../format.js';

const days = (value: number) => `${decimal('en', value, 1)} days`;

export const pagesHindcast: {
  [Code in keyof HindcastPageWords]: (words: HindcastPageWords[Code]) => string;
} = {
  'page-nav-hindcast': () => 'Skill',
  'page-hindcast-title': () => 'How good the forecast would have been',
  'page-hindcast-answer': ({ winters, stage, lead, mae, plain, holds }) =>
    [
      `In ${winters === 1 ? 'one hidden winter' : `${whole('en', winters)} hidden winters`} of your own stations, the forecast of ${stage} made on ${shortDay('en', lead)} missed by ${days(mae)} on average`,
      plain === null
        ? '.'
        : plain.own === mae
          ? `; ${plain.name.toLowerCase()} alone by ${days(plain.mae)}.`
          : `; where ${plain.name.toLowerCase()} alone has an answer, it missed by ${days(plain.mae)} and ours by ${days(plain.own)}.`,
      holds === null ? '' : ` The 80% interval held the date ${percent('en', holds)} of the time.`,
    ].join(''),
  'page-hindcast-none': () =>
    'No station has a whole winter to hide: at least 235 of the 242 days from fertilisation must be measured. Load past winters and look here again.',
  'page-hindcast-working': ({ done, all }) =>
    all === 0
      ? 'It is being worked out: each past winter is hidden and forecast.'
      : `It is being worked out: ${whole('en', done)} of ${whole('en', all)} steps are done.`,
  'page-hindcast-wait': () => 'This page looks again by itself every few seconds.',
  'page-hindcast-case': () => 'What was known',
  'page-hindcast-station': () => 'Station',
  'page-hindcast-stage': () => 'Stage',
  'page-hindcast-table': () => 'Development table',
  'page-hindcast-fertilised': () => 'Fertilised (month-day)',
  'page-hindcast-show': () => 'Show',
  'page-hindcast-ours': () => 'This forecast',
  'page-hindcast-persistence': () => 'Last week goes on',
  'page-hindcast-error-chart': ({ stage, first, last }) =>
    `The later the forecast of ${stage} is made, the less it misses: from ${days(first)} to ${days(last)}`,
  'page-hindcast-error-axis': () => 'Mean error, days',
  'page-hindcast-windows': ({ station, lead, held, winters }) =>
    `${station}, made on ${shortDay('en', lead)}: the window held the date in ${whole('en', held)} of ${whole('en', winters)} winters`,
  'page-hindcast-windows-note': () =>
    'Bar: the window meant to hold 8 times in 10. Stroke: its median. Dot: the date that the measured winter gives under the same table; hollow where the window missed it.',
  'page-hindcast-winter': () => 'Winter',
  'page-hindcast-came': () => 'Came',
  'page-hindcast-median': () => 'Median',
  'page-hindcast-window': () => '80% window',
  'page-hindcast-never': () => 'not reached',
  'page-hindcast-by-lead': () => 'By the day the forecast is made on, in days',
  'page-hindcast-past-only': () => 'With the winters before each alone',
  'page-hindcast-at-station': ({ station }) => `At ${station}`,
  'page-hindcast-notes': () => 'What stands behind it',
  'page-hindcast-few': ({ winters }) =>
    `${whole('en', winters)} winters are few: a share held of so few can easily lie 20 points off 80%.`,
};
