import type { FaceWord } from '../../field/face-words.js';
import type { Season } from '../../season/index.js';
import type { Question } from '../client/field/forms.js';
import { pointed, type Wrong } from '../parts/refused-form.js';
import type { View } from '../view.js';
import { rowParts } from './posted.js';
import { DONE, LAYS, rowWords } from './row-words.js';

/** Rows offered at least: a form at a desk has no script to add more. */
const ROWS = { loggers: 3, samples: 5 };

interface RowsProps {
  readonly view: View;
  readonly question: Question;
  readonly rows: 'loggers' | 'samples';
  readonly season: Season;
  readonly typed: (name: string) => readonly string[];
  readonly wrongs?: readonly Wrong[];
}

type Choices = readonly (readonly [id: string, text: string])[];

/** Loggers or counted samples, a row each. */
export function Rows(props: RowsProps) {
  const { view, question, rows, typed, wrongs } = props;
  const given = rowParts[rows].map((part) => typed(`${question.name}.${part}`).length);
  return (
    <fieldset {...pointed(wrongs, question.name)}>
      <legend>{view.say(`page-autumn-${rows}`, {})}</legend>
      {Array.from({ length: Math.max(ROWS[rows], ...given) }, (_, i) => (
        <div class="fields">
          {rowParts[rows].map((part) => (
            <Part {...props} part={part} i={i} />
          ))}
        </div>
      ))}
    </fieldset>
  );
}

function Part({ view: { say }, question, season, typed, part, i }: RowsProps & { part: string; i: number }) {
  const name = `${question.name}.${part}`;
  const value = typed(name)[i] ?? '';
  const word = rowWords.get(part);
  // What the form does not ask for, and an entry may have said, goes along.
  if (word === undefined) return <input type="hidden" name={name} value={value} />;
  const said = (of: readonly FaceWord[]): Choices =>
    of.map((one) => [one.replace(/^\w+-/, ''), say(`face-${one}`, {})]);
  const named = (things: readonly { readonly id: string }[]): Choices => things.map(({ id }) => [id, id]);
  const choices =
    part === 'did'
      ? said(DONE.map((did) => `did-${did}` as const))
      : part === 'lay'
        ? said(LAYS.map((lay) => `lay-${lay}` as const))
        : part === 'logger'
          ? named(season.loggers)
          : part === 'box'
            ? named(season.boxes)
            : null;
  return (
    <label>
      {say(`face-${word}`, {})}
      {part === 'did' || part === 'lay' ? <ToRing of={choices ?? []} /> : null}
      {choices === null ? (
        <input name={name} inputmode="decimal" value={value} />
      ) : (
        <select name={name}>
          <option value=""></option>
          {withGiven(choices, value).map(([id, text]) => (
            <option value={id} selected={id === value}>
              {text}
            </option>
          ))}
        </select>
      )}
    </label>
  );
}

/** What was given stays a choice, though the season does not list it. */
export const withGiven = (choices: Choices, value: string): Choices =>
  value === '' || choices.some(([id]) => id === value) ? choices : [...choices, [value, value]];

/** On paper, the answers that a menu offers. */
export function ToRing({ of }: { of: Choices }) {
  return <small class="on-paper-only"> {of.map(([, text]) => text).join(' · ')}</small>;
}
