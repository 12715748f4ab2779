import type { Forecast, StageWindow } from '../../../forecasting/forecast.js';
import type { FileOutcome } from '../../loading/index.js';
import { list } from '../../words/index.js';
import { Figures } from '../parts/figure.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { interval } from '../season/strip.js';
import type { View } from '../view.js';

interface AcceptedProps {
  readonly view: View;
  readonly outcome: FileOutcome;
  readonly before: Forecast;
  readonly now: Forecast;
  /** What came of keeping how it was read; null where nothing was asked. */
  readonly layout: string | null;
  readonly stationName: (station: string) => string;
}

/** A load stands: what it did to the windows, before and now. */
export function AcceptedPage({ view, outcome, before, now, layout, stationName }: AcceptedProps) {
  const { say } = view;
  const rows = moved(view, before, now);
  return (
    <Frame
      view={view}
      title={say('page-accepted-title', { file: outcome.file })}
      answer={`${say('page-accepted-answer', {
        load: String(outcome.load ?? ''),
        readings: outcome.stations.reduce((sum, { readings }) => sum + readings, 0),
        stations: list(view.language, [
          ...new Set(outcome.stations.map(({ station }) => stationName(station))),
        ]),
      })} ${say('page-accepted-moved', { boxes: new Set(rows.map(([box]) => box)).size })}`}
      current="downloads"
    >
      {layout === null ? null : (
        <p class="note">
          {layout} <a href="/downloads/layouts">{say('page-layouts-title', {})}</a>
        </p>
      )}
      {rows.length === 0 ? null : (
        <>
          <h2>{say('page-accepted-windows', {})}</h2>
          <Figures
            caption={say('page-accepted-windows', {})}
            columns={[
              { name: say('page-box', {}) },
              { name: say('page-stage', {}) },
              { name: say('page-accepted-before', {}) },
              { name: say('page-accepted-now', {}) },
              { name: say('page-note', {}) },
            ]}
            rows={rows}
          />
          <p class="small">
            {say('page-box-windows-note', {})} <WorkedOut view={view} about="window" />
          </p>
        </>
      )}
      <p class="actions">
        <a class="button" href="/">
          {say('page-back-season', {})}
        </a>
        <a href="/downloads">{say('page-accepted-more', {})}</a>
      </p>
      <SameAs view={view} json="/api/v1/forecast" csv="/api/v1/forecast.csv" />
    </Frame>
  );
}

/** Windows still to come that moved or changed width by half a day or more. */
function moved(view: View, before: Forecast, now: Forecast): string[][] {
  return now.boxes.flatMap((box) => {
    const was = before.boxes.find((one) => one.box === box.box);
    return box.windows.flatMap((window): string[][] => {
      const old = was?.windows.find(({ stage }) => stage === window.stage);
      if (old === undefined || (old.passed && window.passed)) return [];
      const change = width(window) - width(old);
      const shift = (window.median.p50 ?? 0) - (old.median.p50 ?? 0);
      if (
        Math.abs(shift) < 0.5 &&
        !(Math.abs(change) >= 0.5) &&
        (window.median.p50 === null) === (old.median.p50 === null)
      )
        return [];
      const days = Math.round(Math.abs(change));
      const note = !(days >= 1)
        ? ''
        : view.say(change < 0 ? 'page-accepted-narrower' : 'page-accepted-wider', { days });
      return [
        [box.box, view.stage(window.stage), interval(view, old.median), interval(view, window.median), note],
      ];
    });
  });
}

function width({ median }: StageWindow): number {
  return median.p10 === null || median.p90 === null ? Number.NaN : median.p90 - median.p10;
}
