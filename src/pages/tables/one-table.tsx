import { type DevelopmentTable, daysAtConstant, wayTo } from '../../../forecasting/index.js';
import { type DaysLine, daysChart, marksKey } from '../../charts/index.js';
import { decimal, significant, words } from '../../words/index.js';
import { ChartFigure } from '../parts/figure.js';
import type { View } from '../view.js';
import { citation, needsText } from './needs.js';

/** Temperatures a chart goes over: what eggs in a river meet. */
const COLDEST = 0;
const WARMEST = 14;

/** A stage that takes longer than this at some temperature is not drawn there. */
const LONGEST = 400;

/** One table whole: its chart, every stage with what it needs, and the source of every number. */
export function OneTable({ view, table }: { view: View; table: DevelopmentTable }) {
  const { say, language } = view;
  const figure = (value: number) => significant(language, value);
  const degrees = (value: number) => decimal(language, value, Number.isInteger(value) ? 0 : 1);
  const { doNotHandle, temper, leavesBox } = table;
  return (
    <>
      <DaysFigure view={view} table={table} />
      {table.stages.map((row) => (
        <section class="sheet">
          <h3>{view.stage(row.stage)}</h3>
          <dl>
            <dt>{say('page-table-needs', {})}</dt>
            <dd>{needsText(row.needs, view)}</dd>
            <dt>{say('page-table-holds', {})}</dt>
            <dd>
              {say('page-table-holds-from', {
                min: degrees(row.validity.min),
                max: degrees(row.validity.max),
              })}
            </dd>
            <dt>{say('page-table-spread', {})}</dt>
            <dd>{figure(row.eggSpread)}</dd>
            <dt>{say('page-table-sources', {})}</dt>
            {row.sources.map((source) => (
              <dd>{citation(source, view)}</dd>
            ))}
          </dl>
        </section>
      ))}
      <h3>{say('page-table-limits', {})}</h3>
      <ul>
        <li>
          {words(language, 'table-do-not-handle', {
            from: view.percent(doNotHandle.from),
            to: view.percent(doNotHandle.to),
          })}
          .{' '}
          <span class="small">{doNotHandle.sources.map((source) => citation(source, view)).join('; ')}</span>
        </li>
        <li>
          {words(language, 'table-row-temper', temper)}.{' '}
          <span class="small">{temper.sources.map((source) => citation(source, view)).join('; ')}</span>
        </li>
        <li>
          {words(language, 'table-row-leaves-box', leavesBox)}.{' '}
          <span class="small">{leavesBox.sources.map((source) => citation(source, view)).join('; ')}</span>
        </li>
        {table.harm.map((limit) => (
          <li>
            {words(language, 'table-harm', {
              kind: limit.kind,
              severity: limit.severity,
              limit: figure(limit.limit),
              hours: limit.hours,
              from: view.percent(limit.fromProgress),
              to: view.percent(limit.toProgress),
            })}
            . <span class="small">{limit.sources.map((source) => citation(source, view)).join('; ')}</span>
          </li>
        ))}
      </ul>
      {table.sources.length === 0 ? null : (
        <>
          <h3>{say('page-table-sources', {})}</h3>
          <ul>
            {table.sources.map((source) => (
              <li>{citation(source, view)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function DaysFigure({ view, table }: { view: View; table: DevelopmentTable }) {
  const { say, language } = view;
  const lines = table.stages.map(
    (row): DaysLine => ({
      name: view.stage(row.stage),
      min: row.validity.min,
      max: row.validity.max,
      points: temperatures(0.5).flatMap((celsius) => {
        const days = daysAtConstant(wayTo(table, row.stage), celsius);
        return days <= LONGEST ? [{ celsius, days }] : [];
      }),
    }),
  );
  const title = say('page-table-days', { table: table.name[language] });
  return (
    <ChartFigure
      view={view}
      title={title}
      svg={daysChart({
        language,
        title,
        xName: say('page-table-x', {}),
        yName: say('page-table-y', {}),
        lines,
      })}
      note={`${marksKey(lines.map(({ name }) => name))}. ${say('page-table-broken', {})}`}
      columns={[
        { name: '°C', number: true },
        ...table.stages.map(({ stage }) => ({ name: view.stage(stage), number: true })),
      ]}
      rows={temperatures(1).map((celsius) => [
        view.whole(celsius),
        ...table.stages.map(({ stage }) => {
          const days = daysAtConstant(wayTo(table, stage), celsius);
          return !Number.isFinite(days) ? '–' : decimal(language, days, 0);
        }),
      ])}
    />
  );
}

function temperatures(step: number): number[] {
  return Array.from({ length: (WARMEST - COLDEST) / step + 1 }, (_, i) => COLDEST + i * step);
}
