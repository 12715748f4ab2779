import type { Child } from 'hono/jsx';
import type { FileOutcome } from '../../loading/index.js';
import type { View } from '../view.js';
import type { Answers } from './answers.js';

interface AskProps {
  readonly view: View;
  readonly outcome: FileOutcome;
  readonly answers: Answers;
  /** Ids and names of the season's stations. */
  readonly stations: readonly { readonly id: string; readonly name: string }[];
  /** Zones of the season's stations, to choose from. */
  readonly zones: readonly string[];
}

/** The control that answers what a file leaves open; null where no answer would help. */
export function Question(props: AskProps): Child {
  const { view, outcome } = props;
  const asked = outcome.refused?.question ?? outcome.refused?.reason ?? null;
  if (asked === null) return null;
  switch (asked.code) {
    case 'which-column':
      return (
        <Choice
          name="column"
          legend={view.say('page-ask-column', {})}
          options={asked.with.columns.map((column) => [column, column])}
        />
      );
    case 'which-date-order':
      return (
        <Choice
          name="dateOrder"
          legend={view.say('page-ask-date', { text: asked.with.text })}
          options={asked.with.readings.map(({ order, iso }) => [order, dayOf(view, iso)])}
        />
      );
    case 'which-unit':
      return <Choice name="unit" legend={view.say('page-ask-unit', {})} options={units} />;
    case 'which-zone':
    case 'unknown-zone':
      return <Zone {...props} />;
    case 'no-station':
      return <Station {...props} />;
    case 'station-not-in-season':
      return (
        <>
          <label class="choice">
            <input type="checkbox" name="create" value="yes" />{' '}
            {view.say('page-ask-unnamed-made', { station: asked.with.station })}
          </label>
          <Station {...props} />
        </>
      );
    default:
      return null;
  }
}

/** Everything a person may say of a file, for one that was understood wrongly. */
export function Everything(props: AskProps) {
  const { view, answers } = props;
  return (
    <div class="fields">
      <StationFields {...props} />
      <Zone {...props} />
      <label>
        {view.say('page-ask-column', {})}
        <input name="column" value={answers.column} />
      </label>
      <label>
        {view.say('page-ask-unit', {})}
        <select name="unit">
          <option value=""></option>
          {units.map(([unit, name]) => (
            <option value={unit} selected={answers.unit === unit}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {view.say('page-ask-order', {})}
        <select name="dateOrder">
          <option value=""></option>
          {(['ymd', 'dmy', 'mdy'] as const).map((order) => (
            <option value={order} selected={answers.dateOrder === order}>
              {view.say(`page-order-${order}`, {})}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

const units: readonly (readonly [string, string])[] = [
  ['C', '°C'],
  ['F', '°F'],
  ['K', 'K'],
];

function Choice(props: { name: string; legend: string; options: readonly (readonly [string, string])[] }) {
  return (
    <fieldset>
      <legend>{props.legend}</legend>
      {props.options.map(([value, name]) => (
        <label class="choice">
          <input type="radio" name={props.name} value={value} required /> {name}
        </label>
      ))}
    </fieldset>
  );
}

function Zone({ view, answers, zones }: AskProps) {
  return (
    <label>
      {view.say('page-ask-zone', {})}
      <span class="small under" id="zone-what">
        {view.say('page-ask-zone-what', {})}
      </span>
      <input name="zone" value={answers.zone} list="zones" aria-describedby="zone-what" />
      <datalist id="zones">
        {zones.map((zone) => (
          <option value={zone} />
        ))}
      </datalist>
    </label>
  );
}

function Station(props: AskProps) {
  return (
    <div class="fields">
      <StationFields {...props} />
    </div>
  );
}

function StationFields({ view, answers, stations }: AskProps) {
  return (
    <>
      <label>
        {view.say('page-ask-station', {})}
        <select name="station">
          <option value=""></option>
          {stations.map(({ id, name }) => (
            <option value={id} selected={answers.station === id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {view.say('page-ask-station-new', {})}
        <input name="newStation" value={answers.newStation} maxlength={60} />
      </label>
    </>
  );
}

function dayOf(view: View, iso: string): string {
  const at = Date.parse(`${iso.slice(0, 10)}T00:00Z`);
  return Number.isNaN(at) ? iso : view.long(at / 86_400_000);
}
