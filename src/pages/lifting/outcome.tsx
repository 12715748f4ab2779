import { type Outcome, outcomesAnswer } from '../../lifting/index.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';

/** How right the windows were: what was found, beside what had been said of it. */
export function OutcomePage({ view, found }: { view: View; found: readonly Outcome[] }) {
  const { outcomes } = outcomesAnswer(found, view.language);
  const all = outcomes.flatMap(({ said }) => said);
  const within = all.filter((one) => one.within).length;
  return (
    <Frame
      view={view}
      title={view.say('page-lifting-outcome', {})}
      {...(outcomes.length === 0
        ? { answer: view.say('outcome-none', {}) }
        : all.length === 0
          ? {}
          : { answer: view.say('page-lifting-outcome-answer', { said: all.length, within }) })}
      current="lifting"
    >
      <ul>
        {outcomes.map(({ found: what, said }) => (
          <li>
            {what}
            <ul>
              {said.map(({ inWords }) => (
                <li>{inWords}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <p class="no-print">
        <WorkedOut view={view} about="lifting" />
      </p>
      <SameAs view={view} json="/api/v1/lifting/outcome" csv="/api/v1/lifting/outcome.csv" />
    </Frame>
  );
}
