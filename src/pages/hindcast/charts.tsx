import type { HindcastReportRow, HindcastResult } from '../../../forecasting/hindcast/index.js';
import { errorChart, windowsChart } from '../../charts/hindcast-charts.js';
import { decimal, words } from '../../words/index.js';
import { ChartFigure } from '../parts/figure.js';
import type { View } from '../view.js';
import { leadDay, type StationName, stageIn } from './named.js';
import type { HindcastShown } from './shown.js';

export function ErrorFigure({ view, results }: { view: View; results: readonly HindcastResult[] }) {
  const { say, language } = view;
  const [first, last] = [results[0], results.at(-1)];
  if (first === undefined || last === undefined || first.mae === null || last.mae === null) return null;
  const from = leadDay(first.lead);
  const days = (lead: string) => (leadDay(lead) - from + 365) % 365;
  const line = (name: string, error: (of: HindcastResult) => number | null | undefined) => ({
    name,
    points: results.flatMap((of) => {
      const found = error(of);
      return found == null ? [] : [{ lead: days(of.lead), error: found }];
    }),
  });
  const lines = [
    line(say('page-hindcast-ours', {}), ({ mae }) => mae),
    line(words(language, 'hindcast-plain-ensemble', {}), ({ reference }) => reference.ensemble?.mae),
    line(words(language, 'hindcast-plain-neighbour', {}), ({ reference }) => reference.bestNeighbour?.mae),
    line(say('page-hindcast-persistence', {}), ({ reference }) => reference.persistence?.mae),
  ].filter(({ points }) => points.length > 0);
  // That the last week goes on misses by months: it stands in the table, and would flatten the others here.
  const drawn = lines.filter(({ name }) => name !== say('page-hindcast-persistence', {}));
  const title = say('page-hindcast-error-chart', {
    stage: stageIn(view, first.stage).toLowerCase(),
    first: first.mae,
    last: last.mae,
  });
  return (
    <ChartFigure
      view={view}
      title={title}
      svg={errorChart({ language, title, unit: say('page-hindcast-error-axis', {}), from, lines: drawn })}
      columns={[
        { name: words(language, 'hindcast-column-lead', {}) },
        ...lines.map(({ name }) => ({ name, number: true })),
      ]}
      rows={results.map(({ lead }) => [
        view.short(leadDay(lead)),
        ...lines.map(({ points }) => {
          const found = points.find((point) => point.lead === days(lead));
          return found === undefined ? '–' : decimal(language, found.error, 1);
        }),
      ])}
    />
  );
}

export function WindowsFigure({
  view,
  rows,
  shown,
  stationName,
}: {
  view: View;
  rows: readonly HindcastReportRow[];
  shown: HindcastShown;
  stationName: StationName;
}) {
  const { say, language } = view;
  const mine = rows.filter(
    (row) => row.case === shown.case && row.lead === shown.lead && row.station === shown.station,
  );
  const [first] = mine;
  if (first === undefined) return null;
  const held = mine.filter(
    ({ observedDays, p10Days, p90Days }) =>
      observedDays !== null &&
      p10Days !== null &&
      p10Days <= observedDays &&
      (p90Days === null || observedDays <= p90Days),
  ).length;
  const judged = mine.filter(({ observedDays }) => observedDays !== null).length;
  const title = say('page-hindcast-windows', {
    station: stationName(shown.station),
    lead: leadDay(shown.lead),
    held,
    winters: judged,
  });
  const from = leadDay(shown.fertilised);
  const day = (days: number | null) => (days === null ? null : from + days);
  const named = (winter: number) => `${winter}–${String((winter + 1) % 100).padStart(2, '0')}`;
  const shortOf = (days: number | null) =>
    days === null ? say('page-hindcast-never', {}) : view.short(Math.floor(from + days));
  return (
    <ChartFigure
      view={view}
      title={title}
      svg={windowsChart({
        language,
        title,
        winters: mine.map(({ winter, p10Days, p50Days, p90Days, observedDays }) => ({
          winter: named(winter),
          p10: day(p10Days),
          p50: day(p50Days),
          p90: day(p90Days),
          observed: day(observedDays),
        })),
      })}
      note={say('page-hindcast-windows-note', {})}
      columns={[
        { name: say('page-hindcast-winter', {}) },
        { name: say('page-hindcast-came', {}) },
        { name: say('page-hindcast-median', {}) },
        { name: say('page-hindcast-window', {}) },
      ]}
      rows={mine.map(({ winter, observedDays, p10Days, p50Days, p90Days }) => [
        named(winter),
        shortOf(observedDays),
        shortOf(p50Days),
        `${shortOf(p10Days)} – ${shortOf(p90Days)}`,
      ])}
    />
  );
}
