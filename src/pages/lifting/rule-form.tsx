import type { LiftingState } from '../../lifting/index.js';
import { Csrf } from '../parts/frame.js';
import type { View } from '../view.js';

/** The rule, the levels and the crew's limits, to be changed by a coordinator. */
export function RuleForm({ view, state }: { view: View; state: LiftingState }) {
  const { say } = view;
  const { plan, season } = state;
  const stated = season.lifting;
  const gauges = season.stations.filter(({ quantities }) => quantities.some((one) => one !== 'temperature'));
  const percentage = (share: number) => String(Number((share * 100).toFixed(3)));
  return (
    <details>
      <summary>{say('page-lifting-rule-change', {})}</summary>
      <form method="post" action="/lifting/rule">
        <Csrf view={view} />
        <div class="fields">
          <label>
            {say('page-lifting-field-rule', {})}
            <select name="rule">
              <option value="before-emergence">{say('page-lifting-rule-before', {})}</option>
              <option value="after-emergence" selected={plan.rule === 'after-emergence'}>
                {say('page-lifting-rule-after', {})}
              </option>
            </select>
          </label>
          <label>
            {say('page-lifting-field-still', {})}
            <input name="stillInBox" inputmode="decimal" value={percentage(plan.levels.stillInBox)} />
          </label>
          <label>
            {say('page-lifting-field-emerged', {})}
            <input name="emerged" inputmode="decimal" value={percentage(plan.levels.emerged)} />
          </label>
          <label>
            {say('page-lifting-field-boxes', {})}
            <input name="boxesADay" inputmode="numeric" value={String(stated?.boxesADay ?? '')} />
          </label>
          <label>
            {say('page-lifting-field-stop', {})}
            <input name="stopAbove" inputmode="numeric" value={String(stated?.stopAbove ?? '')} />
          </label>
          <label class="wide">
            {say('page-lifting-field-trips', {})}
            <textarea name="trips" rows={3}>
              {stated?.trips.map((trip) => trip.join(', ')).join('\n') ?? ''}
            </textarea>
          </label>
          {gauges.length === 0 ? null : (
            <>
              <label>
                {say('page-lifting-field-gauge', {})}
                <select name="gauge">
                  <option value=""></option>
                  {gauges.map(({ id, name }) => (
                    <option value={id} selected={stated?.gauge?.station === id}>
                      {name}
                    </option>
                  ))}
                </select>
              </label>
              <label>
                {say('page-lifting-field-quantity', {})}
                <select name="quantity">
                  <option value="level">{say('page-lifting-level', {})}</option>
                  <option value="discharge" selected={stated?.gauge?.quantity === 'discharge'}>
                    {say('page-lifting-discharge', {})}
                  </option>
                </select>
              </label>
              <label>
                {say('page-lifting-field-most', {})}
                <input name="most" inputmode="decimal" value={String(stated?.gauge?.most ?? '')} />
              </label>
            </>
          )}
        </div>
        <button type="submit">{say('page-lifting-change', {})}</button>
      </form>
    </details>
  );
}
