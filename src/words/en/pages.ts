import type { FrameWords, SeasonPageWords } from '../../pages/page-words.js';
import { longDay, shortDay, whole } from '../format.js';
import { stageInEnglish } from '../stages.js';

const day = (at: number) => longDay('en', at);
const short = (at: number) => shortDay('en', at);
const n = (count: number) => whole('en', count);
/** The first day of a span, its year only where the last day's is another. */
const withoutYear = (from: number, to: number) =>
  day(from).slice(-4) === day(to).slice(-4) ? day(from).slice(0, -5) : day(from);
const boxes = (count: number) => (count === 1 ? 'one box' : `${n(count)} boxes`);

const done = (stage: string) => stageInEnglish(stage).done;
const name = (stage: string) => stageInEnglish(stage).inSentence;
const capital = (text: string) => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;

/** The frame around every page, and the season at a glance, in English. */
export const pages: {
  [Code in keyof (FrameWords & SeasonPageWords)]: (words: (FrameWords & SeasonPageWords)[Code]) => string;
} = {
  'page-skip': () => 'Skip to the content',
  'page-menu': () => 'Pages',
  'page-nav-season': () => 'Season',
  'page-nav-downloads': () => 'Downloads',
  'page-nav-stations': () => 'Stations',
  'page-nav-tables': () => 'Tables',
  'page-nav-editing': () => 'Edit',
  'page-nav-help': () => 'Help',
  'page-cautions': () => 'Before you act on a date',
  'page-worked-out': () => 'How was this worked out?',
  'page-same-json': () => 'The same as JSON',
  'page-same-csv': () => 'The same as CSV',
  'page-back-season': () => 'Back to the season',
  'page-refused': () => 'That could not be done',
  'page-table-behind': () => 'The figures behind this chart',
  'page-open': () => 'Nobody has an account here yet: the service is open, and answers on this machine only.',
  'page-signed-in': ({ name: who }) => `Signed in as ${who}.`,
  'page-sign-out': () => 'Sign out',

  'page-season-no-eggs': () => 'No box of this season holds eggs yet.',
  'page-season-closed': ({ season }) =>
    `Season ${season} is closed: what came of its eggs stands in its report.`,
  'page-season-empty': () => 'There is no box in this season yet.',
  'page-season-unknown': ({ boxes: count }) =>
    `Nothing can be said of the eggs in ${boxes(count)} yet: no water is known.`,
  'page-season-all-over': ({ boxes: count, stage }) =>
    count === 1
      ? `The eggs in the box have probably ${done(stage)}.`
      : `The eggs in all ${n(count)} boxes have probably ${done(stage)}.`,
  'page-season-passed': ({ passed: count, boxes: all, stage }) =>
    count === all
      ? `Eggs in ${all === 1 ? 'the box' : `all ${boxes(all)}`} have probably ${done(stage)}.`
      : `Eggs in ${n(count)} of ${boxes(all)} have probably ${done(stage)}.`,
  'page-season-none-passed': ({ boxes: count, stage }) =>
    `Eggs in ${count === 1 ? 'the box' : `none of ${boxes(count)}`} have probably ${count === 1 ? 'not yet ' : ''}${done(stage)}${count === 1 ? '' : ' yet'}.`,
  'page-season-next': ({ stage, from, to }) =>
    from === to
      ? `${capital(name(stage))} is expected about ${day(from)}.`
      : `${capital(name(stage))} is expected between ${withoutYear(from, to)} and ${day(to)}.`,
  'page-season-next-open': ({ stage, from }) =>
    `${capital(name(stage))} is expected from ${day(from)} on; no end can be given yet.`,
  'page-season-cannot-say': ({ boxes: count }) => `Of ${boxes(count)} nothing can be said yet.`,
  'page-season-title': ({ day: at }) => `The season on ${day(at)}`,
  'page-season-list': ({ boxes: count }) => `Windows of ${boxes(count)} on one time axis`,
  'page-season-key': () => 'How to read it',
  'page-season-key-solid': () => 'The solid bar goes from the first eggs of a box (5%) to its last (95%).',
  'page-season-key-band': () => 'The pale bar adds how unsure both are: each end holds 8 times in 10.',
  'page-season-key-tick': () => 'The upright mark and the date are the median egg’s.',
  'page-season-key-passed': () => 'A hollow bar with a tick has probably passed.',
  'page-season-key-today': () => 'The dashed line is the day the page is for.',
  'page-season-key-water': () => 'At the right stands how far each box’s own water has been read.',
  'page-season-water-through': ({ day: at }) => `water read to ${short(at)}`,
  'page-season-water-ago': ({ days }) => `, ${days === 1 ? '1 day' : `${n(days)} days`} ago`,
  'page-now-stage': ({ stage, next, share }) =>
    [
      ...(stage === null ? [] : [`past ${name(stage)}`]),
      ...(next === null ? [] : [`${share} of the way to ${name(next)}`]),
    ].join(', '),
  'page-season-water-today': () => 'water read to today',
  'page-season-water-none': () => 'no water read yet',
  'page-season-sharpen': () => 'What would sharpen it',
  'page-season-sharpen-none': () => 'No download that is known of would narrow the windows.',
  'page-season-sort': () => 'Order',
  'page-season-sort-site': () => 'by site',
  'page-season-sort-next': () => 'by next stage',
  'page-season-filter': () => 'Box or site',
  'page-season-next-stage': () => 'Next stage',
  'page-season-stage-any': () => 'any',
  'page-season-show': () => 'Show',
  'page-season-shown': ({ shown, boxes: all }) => `${n(shown)} of ${boxes(all)} shown`,
  'page-season-strip': ({ box, windows }) => `Box ${box}. ${windows}`,
  'page-season-strip-window': ({ stage, first, median, last }) =>
    `${capital(stage)}: first eggs ${first}, median ${median}, last ${last}.`,
  'page-interval': ({ date, from, to }) => `${date} (${from} to ${to})`,
  'page-no-date': () => 'no date',
};
