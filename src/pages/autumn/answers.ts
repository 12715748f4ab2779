import type { DevelopmentTable } from '../../../forecasting/index.js';
import type { FieldEntry, Season } from '../../season/index.js';
import { capitalised } from '../../words/season-field.js';
import { forms, type Question } from '../client/field/forms.js';
import type { View } from '../view.js';
import { choiceWord, rowWords } from './row-words.js';

export interface Around {
  readonly view: View;
  readonly season: Season;
  readonly tables: readonly DevelopmentTable[];
}

type Fields = Readonly<Record<string, unknown>>;
/** A question of the phone and its answer, both in words. */
type Answer = readonly [label: string, text: string];

/** What an entry from the field says, under the questions that were asked; what nobody asks for stays as it came. */
export function answersOf(around: Around, kind: string, fields: Fields): Answer[] {
  const questions = forms.find((form) => form.kind === kind)?.screens.flat() ?? [];
  const asked = questions.flatMap((question) => answersTo(around, question, fields));
  const known = new Set(['latitude', 'longitude', ...questions.map(({ name }) => name)]);
  const others = Object.entries(fields).filter(([name]) => !known.has(name));
  return [...asked, ...others.map(([name, value]): Answer => [name, plain(value)])];
}

/** What it became of the season, by the names people give: a visit its site and moment, anything else what it is called. */
export function becameOf({ season }: Pick<Around, 'season'>, { became }: FieldEntry): string {
  const visit = /^visit (.+) (\d{4}-\d\d-\d\d \d\d:\d\d)/.exec(became ?? '');
  if (visit === null) return (became ?? '').split(' ').slice(1).join(', ');
  return [siteName(season, visit[1] ?? ''), visit[2]].join(', ');
}

const siteName = ({ sites }: Season, id: string): string => sites.find((site) => site.id === id)?.name ?? id;

/** A question as the form at a desk has it; rows have one heading. */
export const labelOf = ({ say }: View, { word, as }: Question): string =>
  as === 'loggers' || as === 'samples' ? say(`page-autumn-${as}`, {}) : say(`face-${word}`, {});

function answersTo(around: Around, question: Question, fields: Fields): Answer[] {
  const { view } = around;
  const { name, as } = question;
  if (as === 'position')
    return (['latitude', 'longitude'] as const).flatMap((key): Answer[] =>
      fields[key] === undefined ? [] : [[capitalised(view.say(`page-field-${key}`, {})), plain(fields[key])]],
    );
  const value = fields[name];
  if (value === undefined || value === '') return [];
  return [[labelOf(view, question), textOf(around, question, value)]];
}

function textOf({ view, season, tables }: Around, { as, of }: Question, value: unknown): string {
  if (as === 'photo') return view.whole(Array.isArray(value) ? value.length : 1);
  if (as === 'loggers' || as === 'samples') return rowsInWords(view, value);
  const given = plain(value);
  if (of === 'sites') return siteName(season, given);
  if (of === 'tables') return tables.find(({ id }) => id === given)?.name[view.language] ?? given;
  if (of !== undefined && typeof of !== 'string') {
    const word = of.find(([id]) => id === given)?.[1];
    return word === undefined ? given : view.say(`face-${word}`, {});
  }
  if (as === 'moment') return given.replace('T', ' ');
  return as === 'figure' ? figure(view, given) : given;
}

const figure = ({ language }: View, given: string): string =>
  language === 'fr' && /^[-+−]?\d+\.\d+$/.test(given) ? given.replace('.', ',') : given;

function rowsInWords(view: View, value: unknown): string {
  if (!Array.isArray(value)) return plain(value);
  return value
    .map((row: unknown) =>
      Object.entries(row ?? {})
        .map(([part, given]) => {
          const label = rowWords.get(part);
          const word = choiceWord(part, plain(given));
          const text = word === null ? figure(view, plain(given)) : view.say(`face-${word}`, {});
          return label === undefined ? text : view.named(view.say(`face-${label}`, {}), text);
        })
        .join('; '),
    )
    .join(' · ');
}

const plain = (value: unknown): string =>
  Array.isArray(value)
    ? value.map(plain).join(', ')
    : typeof value === 'object'
      ? JSON.stringify(value)
      : String(value);
