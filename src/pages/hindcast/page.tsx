import { eggOfStage, type HindcastReport, type HindcastResult } from '../../../forecasting/hindcast/index.js';
import type { DevelopmentTable } from '../../../forecasting/index.js';
import { allIcy, CASES } from '../../hindcast/index.js';
import { words } from '../../words/index.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';
import { ErrorFigure, WindowsFigure } from './charts.js';
import { leadDay, type StationName, stageIn } from './named.js';
import type { HindcastShown } from './shown.js';
import { Gaps, Notes, Results } from './tables.js';

/** Below so many winters a share held says little. */
const FEW = 30;

interface HindcastProps {
  readonly view: View;
  readonly report: HindcastReport;
  readonly shown: HindcastShown;
  readonly tables: readonly DevelopmentTable[];
  readonly stationName: StationName;
  /** The same question, as the API takes it. */
  readonly query: string;
}

/** How good the forecast would have been: the answer, error against lead, each winter's window over the date that came. */
export function HindcastPage({ view, report, shown, tables, stationName, query }: HindcastProps) {
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
      <Question view={view} report={report} shown={shown} tables={tables} stationName={stationName} />
      {at === undefined || at.n >= FEW ? null : (
        <p class="note">{say('page-hindcast-few', { winters: at.n })}</p>
      )}
      {at === undefined ? null : (
        <>
          <h2>{words(language, `hindcast-case-${shown.case}`, {})}</h2>
          <ErrorFigure view={view} results={mine} />
          <WindowsFigure view={view} rows={report.rows} shown={shown} stationName={stationName} />
          <Results view={view} results={mine} caption={say('page-hindcast-by-lead', {})} />
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
          {shown.case === 'under-ice' && report.alreadyPassed.length > 0 ? (
            <>
              <Results
                view={view}
                results={report.alreadyPassed}
                caption={words(language, 'hindcast-already-passed', {})}
              />
              <Results
                view={view}
                results={report.stillToCome}
                caption={words(language, 'hindcast-still-to-come', {})}
              />
            </>
          ) : null}
          <Results
            view={view}
            results={report.byStation.filter((of) => of.case === shown.case && of.station === shown.station)}
            caption={view.say('page-hindcast-at-station', { station: stationName(shown.station) })}
          />
          <p class="small">{words(language, 'hindcast-legend', {})}</p>
          <Gaps view={view} report={report} />
        </>
      )}
      <Notes view={view} report={report} stationName={stationName} />
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

function Question({ view, report, shown, tables, stationName }: Omit<HindcastProps, 'query'>) {
  const { say, language } = view;
  const leads = [...new Set(report.results.map(({ lead }) => lead))];
  const stations = [...new Set(report.rows.map(({ station }) => station))];
  const table = tables.find(({ id }) => id === report.table);
  const choose = (
    name: string,
    label: string,
    options: readonly (readonly [string, string])[],
    chosen: string,
  ) =>
    options.length === 0 ? null : (
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
        stations.map((id) => [id, stationName(id)] as const),
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
