import type { BoxForecast, StageWindow } from '../../../forecasting/forecast.js';
import { say as sayIn } from '../../words/index.js';
import { Figures } from '../parts/figure.js';
import { WorkedOut } from '../parts/frame.js';
import { lotNow } from '../season/now.js';
import { interval } from '../season/strip.js';
import type { View } from '../view.js';

/** Every window of a box, lot by lot where it holds several, and what the group's fixed rule would have said. */
export function Windows({ view, box }: { view: View; box: BoxForecast }) {
  const { say } = view;
  const [only, ...more] = box.lots;
  const none = box.windows.every(({ median }) => median.p50 === null);
  if (none && box.windows.length > 0)
    return (
      <section>
        <h2>{say('page-box-windows', {})}</h2>
        {[...new Set(box.windows.map((window) => remarks(view, window)))].map((why) => (
          <p>{why}</p>
        ))}
        <OldRule view={view} box={box} />
      </section>
    );
  return (
    <section>
      <h2>{say('page-box-windows', {})}</h2>
      {more.length === 0 ? null : <h3>{say('page-box-windows-whole', {})}</h3>}
      <WindowTable view={view} windows={box.windows} caption={say('page-box-windows', {})} />
      {only === undefined || more.length === 0
        ? null
        : box.lots.map((lot) => {
            const name = say('page-box-windows-lot', { lot: lot.lot, eggs: lot.eggs });
            return (
              <>
                <h3>
                  {name} · {lotNow(lot, view)}
                </h3>
                <WindowTable view={view} windows={lot.windows} caption={name} />
              </>
            );
          })}
      <p class="small">
        {say('page-box-windows-note', {})} <WorkedOut view={view} about="window" />
      </p>
      <OldRule view={view} box={box} />
    </section>
  );
}

function OldRule({ view, box }: { view: View; box: BoxForecast }) {
  const { say } = view;
  return (
    <>
      <h3>{say('page-box-old-rule', {})}</h3>
      <p>
        {box.oldRule.hatch === null
          ? null
          : `${say('page-box-old-rule-date', { units: box.oldRule.thermalUnits, day: box.oldRule.hatch })} `}
        {sayIn(view.language, box.oldRule.why)} <WorkedOut view={view} about="old-rule" />
      </p>
    </>
  );
}

interface TableProps {
  readonly view: View;
  readonly windows: readonly StageWindow[];
  readonly caption: string;
}

function WindowTable({ view, windows, caption }: TableProps) {
  const { say } = view;
  return (
    <Figures
      caption={caption}
      columns={[
        { name: say('page-stage', {}) },
        { name: say('page-box-first', {}) },
        { name: say('page-box-median', {}) },
        { name: say('page-box-last', {}) },
        { name: say('page-note', {}) },
      ]}
      rows={windows.map((window) => [
        view.stage(window.stage),
        interval(view, window.first),
        interval(view, window.median),
        interval(view, window.last),
        remarks(view, window),
      ])}
    />
  );
}

function remarks(view: View, window: StageWindow): string {
  return [
    ...(window.passed ? [view.say('page-box-passed', {})] : []),
    ...(window.unreached === null ? [] : [sayIn(view.language, window.unreached)]),
    ...(window.outsideValidity ? [view.say('page-box-outside', {})] : []),
  ].join('; ');
}
