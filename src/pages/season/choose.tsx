import type { BoxForecast } from '../../../forecasting/forecast.js';
import type { View } from '../view.js';
import type { Asked } from './choice.js';
import { stagesInOrder } from './season-answer.js';

interface ChooseProps {
  readonly view: View;
  readonly asked: Asked;
  readonly boxes: readonly BoxForecast[];
  readonly shown: number;
}

/** Sorting and filtering, as a plain form: it works without a script. */
export function Choose({ view, asked, boxes, shown }: ChooseProps) {
  const { say } = view;
  return (
    <form class="choose" method="get" action="/">
      <label>
        {say('page-season-sort', {})}
        <select name="sort">
          <option value="site" selected={asked.sort === 'site'}>
            {say('page-season-sort-site', {})}
          </option>
          <option value="next" selected={asked.sort === 'next'}>
            {say('page-season-sort-next', {})}
          </option>
        </select>
      </label>
      <label>
        {say('page-season-next-stage', {})}
        <select name="next">
          <option value="">{say('page-season-stage-any', {})}</option>
          {stagesInOrder(boxes).map((stage) => (
            <option value={stage} selected={asked.next === stage}>
              {view.stage(stage)}
            </option>
          ))}
        </select>
      </label>
      <label>
        {say('page-season-filter', {})}
        <input name="find" value={asked.find} maxlength={100} />
      </label>
      <button type="submit">{say('page-season-show', {})}</button>
      <span class="small">{say('page-season-shown', { shown, boxes: boxes.length })}</span>
    </form>
  );
}
