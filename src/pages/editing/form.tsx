import { nameIn, type Season } from '../../season/index.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import type { Document } from '../parts/season-change.js';
import { kindName } from '../station/list.js';
import type { View } from '../view.js';
import { fillAt, labelOf } from './field-of.js';
import type { Field, Kind } from './kinds.js';
import { fillRows, nameOf, shown } from './thing.js';

interface FormProps {
  readonly view: View;
  readonly kind: Kind;
  readonly thing: Document;
  /** Its place in the list; null for a new one. */
  readonly index: number | null;
  readonly version: number;
  readonly season: Season;
  readonly tables: readonly {
    readonly id: string;
    readonly name: { readonly en: string; readonly fr: string };
  }[];
  readonly wrongs?: readonly Wrong[];
}

/** One thing of the season as a form. */
export function ThingPage(props: FormProps) {
  const { view, kind, thing, index, version, wrongs } = props;
  const { say } = view;
  const stationName = (id: string) => nameIn(props.season.stations, id);
  const action = `/editing/${kind.list}/${index ?? 'new'}`;
  const title =
    index === null
      ? say(`page-kind-new-${kind.list}`, {})
      : say('page-edit-one-title', { thing: nameOf(kind, thing, stationName) });
  return (
    <Frame view={view} title={title} current="editing" cautions={false}>
      <RefusedForm view={view} wrongs={wrongs} not={say('page-edit-refused', {})} />
      <form method="post" action={action} class="on-paper">
        <Csrf view={view} />
        <input type="hidden" name="version" value={String(version)} />
        <div class="fields">
          {kind.fields.map((field) => (
            <FieldInput {...props} field={field} />
          ))}
        </div>
        {kind.fills === undefined ? null : <Fills {...props} />}
        <div class="actions">
          <button type="submit">{say('page-edit-keep', {})}</button>
        </div>
      </form>
      {index === null ? null : (
        <form method="post" action={`${action}/remove`}>
          <Csrf view={view} />
          <input type="hidden" name="version" value={String(version)} />
          <button type="submit" class="quiet">
            {say('page-edit-remove', {})}
          </button>
        </form>
      )}
    </Frame>
  );
}

function FieldInput(props: FormProps & { field: Field }) {
  const { view, field, thing, wrongs } = props;
  const { as, must } = field;
  const value = shown(thing, field);
  const name = field.path.join('.');
  const wrong = pointed(wrongs, name);
  const note =
    as === 'moment' ? view.say('page-edit-moment', {}) : as === 'list' ? view.say('page-edit-list', {}) : '';
  return (
    <label class={as === 'long' || as === 'list' ? 'wide' : undefined}>
      {labelOf(view, field)}
      {note === '' ? null : (
        <>
          {' '}
          <span class={as === 'moment' ? 'nowrap' : undefined}>({note})</span>
        </>
      )}
      {as === 'choice' ? (
        <select name={name} required={must} {...wrong}>
          <option value=""></option>
          {choices(props, field).map(([id, text]) => (
            <option value={id} selected={id === value}>
              {text}
            </option>
          ))}
        </select>
      ) : as === 'yes' ? (
        <select name={name} {...wrong}>
          <option value=""></option>
          {(['yes', 'no'] as const).map((answer) => (
            <option value={answer} selected={answer === value}>
              {view.say(`page-${answer}`, {})}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...wrong}
          name={name}
          required={must}
          value={value}
          type={as === 'date' ? 'date' : 'text'}
          inputmode={as === 'number' ? 'decimal' : undefined}
        />
      )}
    </label>
  );
}

/** What a choice offers: what the season lists, or the words of the trade. */
function choices({ view, season, tables }: FormProps, { of }: Field): (readonly [string, string])[] {
  const named = (things: readonly { readonly id: string; readonly name?: string | null }[]) =>
    things.map(({ id, name }) => [id, name ?? id] as const);
  switch (of) {
    case 'station':
      return named(season.stations);
    case 'site':
      return named(season.sites);
    case 'lot':
      return named(season.lots);
    case 'logger':
      return named(season.loggers);
    case 'box':
      return named(season.boxes);
    case 'table':
      return tables.map(({ id, name }) => [id, name[view.language]] as const);
    case 'kind':
      return ['stream', 'gravel', 'air', 'tank', 'gauge'].map(
        (kind) => [kind, kindName(view, kind)] as const,
      );
    case 'lay':
      return LAYS.map((lay) => [lay, view.say(`page-lay-${lay}`, {})] as const);
    case 'risk':
      return (['low', 'moderate', 'high'] as const).map(
        (risk) => [risk, view.say(`page-risk-${risk}`, {})] as const,
      );
    default:
      return [];
  }
}

const LAYS = ['in-box', 'tied-to-box', 'gravel', 'stream', 'bank', 'tank', 'air'] as const;

function Fills({ view, thing, season, wrongs }: FormProps) {
  const { say } = view;
  return (
    <fieldset>
      <legend>{say('page-field-fills', {})}</legend>
      {fillRows(thing).map((fill, i) => (
        <div class="fields">
          <label>
            {capitalised(say('page-field-lot', {}))}
            <select name="fill.lot" {...pointed(wrongs, fillAt(i, 'lot'))}>
              <option value=""></option>
              {season.lots.map(({ id }) => (
                <option selected={id === fill.lot}>{id}</option>
              ))}
            </select>
          </label>
          <label>
            {capitalised(say('page-field-eggs', {}))}
            <input
              name="fill.eggs"
              inputmode="numeric"
              value={fill.eggs}
              {...pointed(wrongs, fillAt(i, 'eggs'))}
            />
          </label>
          <label>
            {capitalised(say('page-field-planted', {}))}{' '}
            <span class="nowrap">({say('page-edit-moment', {})})</span>
            <input name="fill.planted" value={fill.planted} {...pointed(wrongs, fillAt(i, 'planted'))} />
          </label>
          <label>
            {capitalised(say('page-field-part', {}))}
            <input name="fill.part" value={fill.part} {...pointed(wrongs, fillAt(i, 'part'))} />
          </label>
        </div>
      ))}
    </fieldset>
  );
}
