import type { BoxForecast } from '../../../forecasting/forecast.js';
import type { Observed } from '../../season/index.js';
import { isoDay } from '../../words/index.js';
import { Csrf } from '../parts/frame.js';
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
}

/** Stages that people saw in this box, and a form to note one. */
export function ObservedSection({ view, box, seen, version, stages, typed }: ObservedProps) {
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
              {say('page-day', {})}
              <input type="date" name="date" required value={typed('date') || isoDay(view.today)} />
            </label>
            <label>
              {say('page-stage', {})}
              <select name="stage">
                {stages.map((stage) => (
                  <option value={stage} selected={typed('stage') === stage}>
                    {view.stage(stage)}
                  </option>
                ))}
              </select>
            </label>
            {box.lots.length > 1 ? (
              <label>
                {say('page-lot', {})}
                <select name="lot">
                  {box.lots.map(({ lot }) => (
                    <option selected={typed('lot') === lot}>{lot}</option>
                  ))}
                </select>
              </label>
            ) : null}
            <label>
              {say('page-box-observed-seen', {})}
              <input name="seen" inputmode="numeric" value={typed('seen')} />
            </label>
            <label>
              {say('page-box-observed-of', {})}
              <input name="of" inputmode="numeric" value={typed('of')} />
            </label>
            <label class="wide">
              {say('page-note', {})}
              <input name="note" maxlength={400} value={typed('note')} />
            </label>
          </div>
          <button type="submit">{say('page-keep', {})}</button>
        </form>
      ) : null}
    </section>
  );
}
