import {
  eggOfStage,
  type HindcastReport,
  type HindcastReportRow,
  type HindcastResult,
} from '../../../forecasting/hindcast/index.js';
import type { DevelopmentTable } from '../../../forecasting/index.js';
import { errorChart, windowsChart } from '../../charts/hindcast-charts.js';
import { allIcy, CASES } from '../../hindcast/index.js';
import { decimal, words } from '../../words/index.js';
import { ChartFigure, Figures } from '../parts/figure.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';
import type { HindcastShown } from './shown.js';

const MS_DAY = 86_400_000;
/** Below so many winters a share held says little. */
const FEW = 30;

interface HindcastProps {
  readonly view: View;
  readonly report: HindcastReport;
  readonly shown: HindcastShown;
  readonly tables: readonly DevelopmentTable[];
  /** The same question, as the API takes it. */
  readonly query: string;
}

/** How good the forecast would have been: the answer, error against lead, each winter's window over the date that came. */
export function HindcastPage({ view, report, shown, tables, query }: HindcastProps) {
  const { say, language } = view;
  const mine = report.results.filter((result) => result.case === shown.case);
  const at = mine.find(({ lead }) => lead === shown.lead) ?? mine[0];
  return (
    <Frame
      view={view}
      title={say('page-hindcast-title', {})}
      answer={at === undefined ? say('page-hindcast-none', {}) : answerOf(view, at)}
      current="hindcast"
    >
      <Question view={view} report={report} shown={shown} tables={tables} />
      {at === undefined || at.n >= FEW ? null : (
        <p class="note">{say('page-hindcast-few', { winters: at.n })}</p>
      )}
      {at === undefined ? null : (
        <>
          <h2>{words(language, `hindcast-case-${shown.case}`, {})}</h2>
          <ErrorFigure view={view} results={mine} />
          <WindowsFigure view={view} rows={report.rows} shown={shown} />
          <Results view={view} results={mine} caption={words(language, `hindcast-case-${shown.case}`, {})} />
          {allIcy(report) ? (
            <p>{words(language, 'hindcast-all-icy', {})}</p>
          ) : (
            <Results
              view={view}
              results={report.icy.results.filter((result) => result.case === shown.case)}
              caption={words(language, 'hindcast-icy', {})}
            />
          )}
          <Results
            view={view}
            results={report.pastOnly.filter((result) => result.case === shown.case)}
            caption={say('page-hindcast-past-only', {})}
          />
          <p class="small">{words(language, 'hindcast-legend', {})}</p>
          <Gaps view={view} report={report} />
        </>
      )}
      <Notes view={view} report={report} />
      <p class="no-print">
        <WorkedOut view={view} about="hindcast" />
      </p>
      <SameAs view={view} json={`/api/v1/hindcast?${query}&rows=yes`} csv={`/api/v1/hindcast.csv?${query}`} />
    </Frame>
  );
}

/** While it is being worked out; the answer's `Refresh` header makes the browser look again. */
export function WorkingPage({ view, done, all }: { view: View; done: number; all: number }) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-hindcast-title', {})}
      answer={say('page-hindcast-working', { done, all })}
      current="hindcast"
      cautions={false}
    >
      {all === 0 ? null : <progress max={all} value={done}></progress>}
      <p>{say('page-hindcast-wait', {})}</p>
    </Frame>
  );
}

/** The stages of a table, and what lifting waits for: the last hatch and the first emergence. */
function stagesOf(table: DevelopmentTable | undefined): string[] {
  const stages = (table?.stages ?? []).map(({ stage }) => stage);
  const lifting = ['last-hatch', 'first-emergence'].filter(
    (name) => table !== undefined && eggOfStage(table, name) !== null,
  );
  return [...new Set([...stages, ...lifting])];
}

function stageIn(view: View, name: string): string {
  const [, egg, stage] = /^(first|last)-(.+)$/.exec(name) ?? [];
  if (stage === undefined) return view.stage(name);
  const code = egg === 'first' ? 'hindcast-first-eggs' : 'hindcast-last-eggs';
  return words(view.language, code, { stage: view.stage(stage) });
}

/** A day of the year as a day number: 2001 has no 29 February, and neither have the leads. */
function leadDay(lead: string): number {
  return Date.parse(`2001-${lead}T00:00Z`) / MS_DAY;
}

function answerOf(view: View, at: HindcastResult): string {
  const { say, language } = view;
  if (at.mae === null) return say('page-hindcast-none', {});
  const { bestNeighbour, ensemble } = at.reference;
  const plain =
    bestNeighbour !== undefined
      ? {
          name: words(language, 'hindcast-plain-neighbour', {}),
          mae: bestNeighbour.mae,
          own: bestNeighbour.ownMae,
        }
      : ensemble !== undefined
        ? { name: words(language, 'hindcast-plain-ensemble', {}), mae: ensemble.mae, own: ensemble.ownMae }
        : null;
  return say('page-hindcast-answer', {
    winters: at.n,
    stage: stageIn(view, at.stage).toLowerCase(),
    lead: leadDay(at.lead),
    mae: at.mae,
    plain,
    holds: at.coverage80,
  });
}

function Question({ view, report, shown, tables }: Omit<HindcastProps, 'query'>) {
  const { say, language } = view;
  const leads = [...new Set(report.results.map(({ lead }) => lead))];
  const stations = [...new Set(report.rows.map(({ station }) => station))];
  const table = tables.find(({ id }) => id === report.table);
  const choose = (
    name: string,
    label: string,
    options: readonly (readonly [string, string])[],
    chosen: string,
  ) => (
    <label>
      {label}
      <select name={name}>
        {options.map(([value, text]) => (
          <option value={value} selected={value === chosen}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <form method="get" action="/hindcast" class="choose">
      {choose(
        'case',
        say('page-hindcast-case', {}),
        CASES.flatMap((of) =>
          of === 'gaps' ? [] : [[of, words(language, `hindcast-case-${of}`, {})] as const],
        ),
        shown.case,
      )}
      {choose(
        'lead',
        words(language, 'hindcast-column-lead', {}),
        leads.map((lead) => [lead, view.short(leadDay(lead))] as const),
        shown.lead,
      )}
      {choose(
        'station',
        say('page-hindcast-station', {}),
        stations.map((id) => [id, id] as const),
        shown.station,
      )}
      {choose(
        'stage',
        say('page-hindcast-stage', {}),
        stagesOf(table).map((stage) => [stage, stageIn(view, stage)] as const),
        shown.stage,
      )}
      {choose(
        'table',
        say('page-hindcast-table', {}),
        tables.map(({ id, name }) => [id, name[language]] as const),
        report.table,
      )}
      <label>
        {say('page-hindcast-fertilised', {})}
        <input name="fertilised" value={report.fertilised} size={5} maxlength={5} />
      </label>
      <button type="submit">{say('page-hindcast-show', {})}</button>
    </form>
  );
}

function ErrorFigure({ view, results }: { view: View; results: readonly HindcastResult[] }) {
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

function WindowsFigure({
  view,
  rows,
  shown,
}: {
  view: View;
  rows: readonly HindcastReportRow[];
  shown: HindcastShown;
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
    station: shown.station,
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

/** The figures the command prints, one row a lead. */
function Results({
  view,
  results,
  caption,
}: {
  view: View;
  results: readonly HindcastResult[];
  caption: string;
}) {
  const { language } = view;
  if (results.length === 0) return null;
  const days = (value: number | null | undefined) => (value == null ? '–' : decimal(language, value, 1));
  const column = (
    [
      'hindcast-column-n',
      'hindcast-column-error',
      'hindcast-column-bias',
      'hindcast-column-p90',
      'hindcast-column-holds',
      'hindcast-column-width',
      'hindcast-plain-ensemble',
      'hindcast-plain-neighbour',
    ] as const
  ).map((code) => ({ name: words(language, code, {}), number: true }));
  return (
    <section>
      <h3>{caption}</h3>
      <Figures
        caption={caption}
        columns={[{ name: words(language, 'hindcast-column-lead', {}) }, ...column]}
        rows={results.map((of) => [
          view.short(leadDay(of.lead)),
          view.whole(of.n),
          days(of.mae),
          days(of.bias),
          days(of.p90),
          of.coverage80 === null ? '–' : view.percent(of.coverage80),
          days(of.width80),
          days(of.reference.ensemble?.mae),
          days(of.reference.bestNeighbour?.mae),
        ])}
      />
    </section>
  );
}

function Gaps({ view, report: { gaps } }: { view: View; report: HindcastReport }) {
  const { language } = view;
  if (gaps.length === 0) return null;
  const degrees = (value: number | null) =>
    value === null || !Number.isFinite(value) ? '–' : decimal(language, value, 2);
  const column = (
    [
      'hindcast-column-n',
      'hindcast-column-error',
      'hindcast-column-holds',
      'hindcast-plain-line',
      'hindcast-plain-neighbour',
    ] as const
  ).map((code) => ({ name: words(language, code, {}), number: true }));
  return (
    <section>
      <h3>{words(language, 'hindcast-gaps', {})}</h3>
      <Figures
        caption={words(language, 'hindcast-gaps', {})}
        columns={[{ name: words(language, 'hindcast-column-days', {}), number: true }, ...column]}
        rows={gaps.map((of) => [
          view.whole(of.days),
          view.whole(of.n),
          degrees(of.rmse),
          Number.isFinite(of.coverage80) ? view.percent(of.coverage80) : '–',
          degrees(of.reference.line.rmse),
          degrees(of.reference.bestNeighbour.rmse),
        ])}
      />
    </section>
  );
}

function Notes({ view, report }: { view: View; report: HindcastReport }) {
  const { language } = view;
  const notReached = report.results.reduce((sum, of) => sum + of.notReached, 0);
  const notes = report.notes.map(({ kind, station, winter }) =>
    kind === 'one-winter' && winter !== null
      ? words(language, 'hindcast-one-winter', { station, winter })
      : words(language, 'hindcast-no-whole-winter', { station }),
  );
  if (notReached > 0) notes.unshift(words(language, 'hindcast-not-reached', { count: notReached }));
  return notes.length === 0 ? null : (
    <section>
      <h2>{view.say('page-hindcast-notes', {})}</h2>
      <ul>
        {notes.map((note) => (
          <li>{note}</li>
        ))}
      </ul>
    </section>
  );
}
