import type { LiftingAnswer, TalliesAnswer } from '../lifting/index.js';
import { type Language, longDay, percent, shortDay, whole, words } from '../words/index.js';
import type { Face } from './face.js';
import { columns, paragraph } from './terminal-table.js';

/** Days shown around the recommended ones. */
const AROUND = 6;

/** The lifting plan on a terminal: the answer first, then the days around it, then what it must not make anybody do. */
export function liftingText(answer: LiftingAnswer, face: Face): string {
  const { language } = face;
  const width = Math.min(face.columns, 110);
  const list = (sentences: readonly string[]) =>
    sentences.map((sentence) => paragraph(sentence, width, '  - ')).join('\n');
  const parts = [
    words(language, 'cli-lifting-title', { day: day(answer.asOf) }),
    paragraph(answer.why, width),
    answer.wouldHelp.length === 0
      ? ''
      : `${words(language, 'cli-lifting-would', {})}\n${list(answer.wouldHelp)}`,
    answer.recommended.length === 0 ? '' : paragraph(words(language, 'lifting-costs', {}), width),
    answer.standing.map((sentence) => paragraph(sentence, width)).join('\n'),
    planTable(answer, language),
    dayTable(answer, language),
    `${words(language, 'cli-forecast-cautions', {})}\n${list(answer.cautions)}`,
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function planTable({ plan }: LiftingAnswer, language: Language): string {
  if (plan.length === 0) return '';
  const head = (['column-day', 'column-site', 'column-boxes'] as const).map((code) =>
    words(language, code, {}),
  );
  return columns(
    head,
    plan.map(({ date, sites, boxes }) => [longDay(language, day(date)), sites.join(', '), boxes.join(', ')]),
  );
}

function dayTable({ days, recommended }: LiftingAnswer, language: Language): string {
  const wanted = recommended.map(day);
  const near = (date: string) => wanted.some((at) => Math.abs(at - day(date)) <= AROUND);
  const shown = days.filter(({ date }) => near(date));
  if (shown.length === 0) return '';
  const head = (['column-day', 'column-chance', 'column-still', 'column-out', 'column-blocked'] as const).map(
    (code) => words(language, code, {}),
  );
  const range = (share: number, [from, to]: readonly [number, number]) =>
    words(language, 'lifting-share', { mean: share, from, to, digits: 1 });
  return columns(
    head,
    shown.map((one) => [
      `${recommended.includes(one.date) ? '> ' : '  '}${shortDay(language, day(one.date))}`,
      percent(language, one.chance),
      range(one.stillInBox, one.stillInBoxInterval),
      range(one.emerged, one.emergedInterval),
      one.blocked ?? '',
    ]),
    [1],
  );
}

/** Every tally in a row, with what its sum says. */
export function talliesText({ tallies, caution }: TalliesAnswer, face: Face): string {
  const { language } = face;
  if (tallies.length === 0) return words(language, 'cli-tally-none', {});
  const head = (
    [
      'column-box',
      'column-day',
      'column-counter',
      'column-planted',
      'column-empty',
      'column-dead',
      'column-alive',
    ] as const
  ).map((code) => words(language, code, {}));
  const number = (value: number | null) => (value === null ? '-' : whole(language, value));
  const table = columns(
    [...head, ''],
    tallies.map((one) => [
      one.part === null ? one.box : `${one.box} (${one.part})`,
      shortDay(language, day(one.date)),
      one.counter ?? '-',
      whole(language, one.planted),
      number(one.empty),
      number(one.dead),
      number(one.alive),
      one.remarks.join(' '),
    ]),
    [3, 4, 5, 6],
  );
  return [table, caution].join('\n\n');
}

function day(date: string): number {
  return Date.parse(`${date}T00:00Z`) / 86_400_000;
}
