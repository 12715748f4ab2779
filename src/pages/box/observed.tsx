import type { BoxForecast } from '../../../forecasting/forecast.js';
import type { Observed, SeasonProblem } from '../../season/index.js';
import { isoDay } from '../../words/index.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf } from '../parts/frame.js';
import { type FormField, pointed, type Wrong } from '../parts/refused-form.js';
import { mayAdd, type View } from '../view.js';

interface ObservedProps {
  readonly view: View;
  readonly box: BoxForecast;
  readonly seen: readonly Observed[];
  /** The season's version the form was made from. */
  readonly version: number;
  readonly stages: readonly string[];
  /** What was typed, where it was refused and comes back. */
  readonly typed: (field: string) => string;
  readonly wrongs?: readonly Wrong[] | undefined;
}

/** What the form's fields are called; a problem names them by the same keys. */
const LABELS = {
  date: 'page-day',
  stage: 'page-stage',
  lot: 'page-lot',
  seen: 'page-box-observed-seen',
  of: 'page-box-observed-of',
  note: 'page-note',
} as const;

const isField = (key: string): key is keyof typeof LABELS => key in LABELS;

/** The field that a problem of what was seen lies in. */
export const observedField =
  (view: View) =>
  ({ path }: SeasonProblem): FormField | null => {
    const key = String(path[2] ?? '');
    return path[0] === 'observed' && isField(key) ? { at: key, label: view.say(LABELS[key], {}) } : null;
  };

/** Stages that people saw in this box, and a form to note one. */
export function ObservedSection({ view, box, seen, version, stages, typed, wrongs }: ObservedProps) {
  const { say } = view;
  return (
    <section id="observed">
      <h2>{say('page-box-observed', {})}</h2>
      {seen.length === 0 ? (
        <p>{say('page-box-observed-none', {})}</p>
      ) : (
        <ul>
          {seen.map(({ date, stage, ...rest }) => (
            <li>
              {say('page-box-observed-row', {
                ...rest,
                day: Date.parse(`${date}T00:00Z`) / 86_400_000,
                stage: view.stage(stage),
              })}
            </li>
          ))}
        </ul>
      )}
      {mayAdd(view) ? (
        <form method="post" action={`/boxes/${encodeURIComponent(box.box)}/observed`} class="sheet">
          <h3>{say('page-box-observed-add', {})}</h3>
          <p class="note">{say('page-box-observed-caution', {})}</p>
          <Csrf view={view} />
          <input type="hidden" name="version" value={String(version)} />
          <div class="fields">
            <label>
              {capitalised(say('page-day', {}))}
              <input
                type="date"
                {...pointed(wrongs, 'date')}
                name="date"
                required
                value={typed('date') || isoDay(view.today)}
              />
            </label>
            <label>
              {capitalised(say('page-stage', {}))}
              <select {...pointed(wrongs, 'stage')} name="stage">
                {stages.map((stage) => (
                  <option value={stage} selected={typed('stage') === stage}>
                    {view.stage(stage)}
                  </option>
                ))}
              </select>
            </label>
            {box.lots.length > 1 ? (
              <label>
                {capitalised(say('page-lot', {}))}
                <select {...pointed(wrongs, 'lot')} name="lot">
                  {box.lots.map(({ lot }) => (
                    <option selected={typed('lot') === lot}>{lot}</option>
                  ))}
                </select>
              </label>
            ) : null}
            <label>
              {capitalised(say('page-box-observed-seen', {}))}
              <input {...pointed(wrongs, 'seen')} name="seen" inputmode="numeric" value={typed('seen')} />
            </label>
            <label>
              {capitalised(say('page-box-observed-of', {}))}
              <input {...pointed(wrongs, 'of')} name="of" inputmode="numeric" value={typed('of')} />
            </label>
            <label class="wide">
              {capitalised(say('page-note', {}))}
              <input {...pointed(wrongs, 'note')} name="note" maxlength={400} value={typed('note')} />
            </label>
          </div>
          <button type="submit">{say('page-keep', {})}</button>
        </form>
      ) : null}
    </section>
  );
}
