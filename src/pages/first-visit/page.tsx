import type { DevelopmentTable } from '../../../forecasting/index.js';
import { capitalised } from '../../words/season-field.js';
import { Where } from '../help/routes.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import { mayEdit, type View } from '../view.js';
import type { Steps } from './steps.js';

export interface FirstProps {
  readonly view: View;
  readonly steps: Steps;
  readonly empty: boolean;
  readonly tables: readonly DevelopmentTable[];
  /** This computer's zone, to begin with. */
  readonly zone: string;
  /** The season's version the page was made from. */
  readonly version: number;
  readonly wrongs?: readonly Wrong[];
  readonly typed?: (field: string) => string;
}

/** Leads by the hand: the sample season, or one's own from a form, then the first download and the first window. */
export function FirstVisitPage(props: FirstProps) {
  const { view, steps, empty, wrongs } = props;
  const { say } = view;
  const all = [steps.season, steps.download, steps.past, steps.window];
  const done = all.filter(Boolean).length;
  return (
    <Frame
      view={view}
      title={say('page-first-title', {})}
      answer={
        done === all.length
          ? say('page-first-answer-done', {})
          : done === 0
            ? say('page-first-answer', {})
            : say('page-first-answer-begun', { done, of: all.length })
      }
    >
      <RefusedForm view={view} wrongs={wrongs} not={say('page-edit-refused', {})} />
      {empty && mayEdit(view) ? <Begin {...props} /> : null}
      {empty ? null : (
        <ol class="steps">
          <li class={steps.season ? 'done' : undefined}>
            {steps.season ? '✓ ' : ''}
            {say('page-first-step-season', {})}
            {steps.season ? null : <Go view={view} to="/editing" />}
          </li>
          <li class={steps.download ? 'done' : undefined}>
            {steps.download ? '✓ ' : ''}
            <strong>{say('page-first-step-download', {})}</strong>. {say('page-first-step-download-what', {})}
            {steps.download ? null : <Go view={view} to="/downloads" />}
          </li>
          <li class={steps.past ? 'done' : undefined}>
            {/* Without them no window comes about. */}
            {steps.past ? '✓ ' : ''}
            <strong>{say('page-first-step-past', {})}</strong>. {say('page-first-step-past-what', {})}
            {steps.past || !mayEdit(view) ? null : <StateCurve {...props} />}
          </li>
          <li class={steps.window ? 'done' : undefined}>
            {steps.window ? '✓ ' : ''}
            <strong>{say('page-first-step-window', {})}</strong>. {say('page-first-step-window-what', {})}
            {steps.window ? <Go view={view} to="/" /> : null}
          </li>
        </ol>
      )}
      <Where view={view} />
    </Frame>
  );
}

/** Where no winter was recorded: the usual water, typed in one line. */
function StateCurve({ view, version, typed = () => '', wrongs }: FirstProps) {
  const { say } = view;
  return (
    <form method="post" action="/first-visit/curve">
      <Csrf view={view} />
      <input type="hidden" name="version" value={version} />
      <label>
        {say('page-first-curve-monthly', {})}
        <input
          {...pointed(wrongs, 'curve')}
          name="curve"
          required
          value={typed('curve')}
          maxlength={200}
          size={44}
        />
      </label>
      <button type="submit" class="quiet">
        {say('page-first-curve-do', {})}
      </button>
    </form>
  );
}

function Go({ view, to }: { view: View; to: string }) {
  return (
    <p>
      <a class="button" href={to}>
        {view.say('page-first-go', {})}
      </a>
    </p>
  );
}

function Begin({ view, tables, zone, typed = () => '', wrongs }: FirstProps) {
  const { say } = view;
  const input = (name: string, label: string, value = '', must = true) => (
    <label>
      {capitalised(label)}
      <input
        {...pointed(wrongs, name)}
        name={name}
        required={must}
        value={typed(name) || value}
        maxlength={200}
      />
    </label>
  );
  const moment = (name: string, label: string) => (
    <label>
      {capitalised(label)}
      <input type="datetime-local" {...pointed(wrongs, name)} name={name} required value={typed(name)} />
    </label>
  );
  return (
    <>
      <section class="sheet">
        <h2>{say('page-first-sample', {})}</h2>
        <p>{say('page-first-sample-what', {})}</p>
        <form method="post" action="/first-visit/sample">
          <Csrf view={view} />
          <button type="submit" class="quiet">
            {say('page-first-sample-do', {})}
          </button>
        </form>
      </section>
      <form method="post" action="/first-visit" class="sheet">
        <h2>{say('page-first-own', {})}</h2>
        <p>{say('page-first-own-what', {})}</p>
        <Csrf view={view} />
        <fieldset>
          <legend>{say('page-first-group', {})}</legend>
          <div class="fields">
            {input('group', say('page-first-group-name', {}))}
            {input('zone', say('page-first-zone', {}), zone)}
          </div>
        </fieldset>
        <fieldset>
          <legend>{say('page-first-station', {})}</legend>
          <p class="small">{say('page-first-station-what', {})}</p>
          <div class="fields">
            {input('station', say('page-field-id', {}))}
            {input('latitude', say('page-field-latitude', {}), '', false)}
            {input('longitude', say('page-field-longitude', {}), '', false)}
          </div>
        </fieldset>
        <fieldset>
          <legend>{say('page-first-lot', {})}</legend>
          <div class="fields">
            {input('lot', say('page-field-lot', {}), 'A')}
            {moment('fertilised', say('page-field-fertilised', {}))}
            {input('eggs', say('page-field-eggs', {}))}
            <label>
              {capitalised(say('page-field-table', {}))}
              <select {...pointed(wrongs, 'table')} name="table">
                {tables.map(({ id, name }) => (
                  <option value={id} selected={id === typed('table')}>
                    {name[view.language]}
                  </option>
                ))}
              </select>
            </label>
          </div>
        </fieldset>
        <fieldset>
          <legend>{say('page-first-box', {})}</legend>
          <div class="fields">
            {input('box', say('page-field-box', {}), '1')}
            {input('site', say('page-field-site', {}))}
            {moment('planted', say('page-field-planted', {}))}
          </div>
        </fieldset>
        <fieldset>
          <legend>{say('page-first-curve', {})}</legend>
          <p class="small">{say('page-first-curve-what', {})}</p>
          <label>
            {say('page-first-curve-monthly', {})}
            <input
              {...pointed(wrongs, 'curve')}
              name="curve"
              value={typed('curve')}
              maxlength={200}
              size={44}
            />
          </label>
        </fieldset>
        <button type="submit">{say('page-first-do', {})}</button>
      </form>
    </>
  );
}
