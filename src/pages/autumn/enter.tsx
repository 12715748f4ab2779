import type { DevelopmentTable } from '../../../forecasting/index.js';
import type { AutumnCaution } from '../../autumn/index.js';
import type { Season } from '../../season/index.js';
import { capitalised } from '../../words/season-field.js';
import type { Form, Question } from '../client/field/forms.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import type { View } from '../view.js';
import { Rows, ToRing, withGiven } from './rows.js';

interface EnterProps {
  readonly view: View;
  readonly form: Form;
  /** The entry's own id: posted twice, it is taken once. */
  readonly id: string;
  readonly season: Season;
  readonly tables: readonly DevelopmentTable[];
  readonly typed: (name: string) => readonly string[];
  readonly wrongs?: readonly Wrong[];
  /** To be heard before it is kept. */
  readonly cautions: readonly AutumnCaution[];
  /** It came from the field and waits: it is put right, and taken. */
  readonly corrects?: boolean;
  /** What stands above what is wrong: that nothing was changed, where nothing else is said. */
  readonly not?: string;
}

/** Which cautions a person has been shown: kept only when they come again with the very same. */
export const heardOf = (cautions: readonly AutumnCaution[]): string =>
  cautions.map(({ code }) => code).join(' ');

/** One entry as a form at a desk: the same questions the phone asks. */
export function EnterPage(props: EnterProps) {
  const { view, form, id, wrongs, cautions, corrects = false } = props;
  const { say } = view;
  return (
    <Frame view={view} title={say(`face-${form.word}`, {})} current="autumn">
      <RefusedForm view={view} wrongs={wrongs} not={props.not ?? say('page-edit-refused', {})} />
      {cautions.length === 0 ? null : (
        <div class="note" role="alert">
          <p>
            <strong>{say('page-autumn-hear', {})}</strong>
          </p>
          <ul>
            {cautions.map((caution) => (
              <li>{say(caution.code, caution.with)}</li>
            ))}
          </ul>
        </div>
      )}
      <form
        method="post"
        action={corrects ? `/autumn/entries/${id}` : `/autumn/enter/${form.kind}`}
        class="on-paper"
      >
        <Csrf view={view} />
        {corrects ? <input type="hidden" name="do" value="correct" /> : null}
        <input type="hidden" name="entry" value={id} />
        <input type="hidden" name="heard" value={heardOf(cautions)} />
        {form.screens.map((screen) => (
          <div class="fields">
            {screen.map((question) => (
              <Asked {...props} question={question} />
            ))}
          </div>
        ))}
        <div class="actions">
          <button type="submit">
            {corrects
              ? say('page-entries-correct-take', {})
              : cautions.length === 0
                ? say('face-keep', {})
                : say('page-autumn-keep-anyway', {})}
          </button>
        </div>
      </form>
    </Frame>
  );
}

function Asked(props: EnterProps & { question: Question }) {
  const { view, question, typed, wrongs } = props;
  const { name, word, as, must } = question;
  const { say } = view;
  const label = say(`face-${word}`, {});
  const wrong = pointed(wrongs, name);
  if (as === 'photo') return null;
  if (as === 'position')
    return (
      <>
        {(['latitude', 'longitude'] as const).map((key) => (
          <label>
            {capitalised(say(`page-field-${key}`, {}))}
            <input
              {...(key === 'latitude' ? wrong : {})}
              name={key}
              inputmode="decimal"
              value={typed(key)[0] ?? ''}
            />
          </label>
        ))}
      </>
    );
  if (as === 'loggers' || as === 'samples') return <Rows {...props} rows={as} />;
  const answers = as === 'choice' ? offered(props) : [];
  const value = typed(name)[0] ?? '';
  if (as === 'choice' && typeof question.of !== 'string')
    return (
      <label>
        {label}
        <ToRing of={answers} />
        <select {...wrong} name={name} required={must}>
          <option value=""></option>
          {withGiven(answers, value).map(([id, text]) => (
            <option value={id} selected={id === value}>
              {text}
            </option>
          ))}
        </select>
      </label>
    );
  return (
    <label>
      {label}
      {as === 'moment' ? <span class="no-print"> ({say('face-when-now', {})})</span> : null}
      {as === 'several' ? ` (${say('face-with-commas', {})})` : ''}
      <input
        {...wrong}
        name={name}
        required={must}
        value={value}
        list={answers.length > 0 ? `list-${name}` : undefined}
        type={as === 'moment' ? 'datetime-local' : 'text'}
        inputmode={as === 'count' ? 'numeric' : as === 'figure' ? 'decimal' : undefined}
      />
      {answers.length > 0 ? (
        <datalist id={`list-${name}`}>
          {answers.map(([id, text]) => (
            <option value={id}>{text}</option>
          ))}
        </datalist>
      ) : null}
    </label>
  );
}

function offered({
  question: { of },
  view,
  season,
  tables,
}: EnterProps & { question: Question }): (readonly [string, string])[] {
  if (of === undefined) return [];
  if (typeof of !== 'string') return of.map(([id, word]) => [id, view.say(`face-${word}`, {})] as const);
  switch (of) {
    case 'sites':
      return season.sites.map(({ id, name }) => [id, name ?? id] as const);
    case 'boxes':
      return season.boxes.map(({ id }) => [id, id] as const);
    case 'parts':
      return [...new Set(season.boxes.flatMap(({ fills }) => fills.flatMap(({ part }) => part ?? [])))].map(
        (part) => [part, part] as const,
      );
    case 'lots':
      return season.lots.map(({ id }) => [id, id] as const);
    case 'new-lots': {
      const counted = new Set(season.lots.map(({ id }) => id));
      const named = season.crosses.flatMap(({ lot }) => (lot === null || counted.has(lot) ? [] : [lot]));
      return [...new Set(named)].map((id) => [id, id] as const);
    }
    case 'females':
      return season.broodstock.filter(({ sex }) => sex !== 'male').map(({ id }) => [id, id] as const);
    case 'males':
      return season.broodstock.filter(({ sex }) => sex !== 'female').map(({ id }) => [id, id] as const);
    case 'adults':
      return season.broodstock.map(({ id }) => [id, id] as const);
    case 'tables':
      return tables.map(({ id, name }) => [id, name[view.language]] as const);
  }
}
