import type { BoxForecast, LotForecast } from '../../../forecasting/forecast.js';
import { type DevelopmentTable, dailyRate, tableBase, wayTo } from '../../../forecasting/index.js';
import type { Water } from '../../../forecasting/water.js';
import { type Fan, fanChart, fanOf } from '../../charts/index.js';
import { ChartFigure } from '../parts/figure.js';
import { WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';

interface CoursesProps {
  readonly view: View;
  readonly box: BoxForecast;
  readonly asOf: number;
  /** The table and the fertilisation (day time) of each lot. */
  readonly lots: ReadonlyMap<string, { readonly table: DevelopmentTable; readonly fertilised: number }>;
}

/** How each lot has come along and may go on: progress to hatch, and thermal units, fanned out over possible winters. */
export function Courses({ view, box, asOf, lots }: CoursesProps) {
  const { water } = box;
  if (water === null || water.traces.length === 0) return null;
  return (
    <section>
      <h2>{view.say('page-box-progress', {})}</h2>
      {box.lots.map((lot) => {
        const known = lots.get(lot.lot);
        return known === undefined ? null : (
          <>
            <Progress view={view} lot={lot} water={water} asOf={asOf} {...known} />
            <Units view={view} lot={lot} water={water} asOf={asOf} {...known} />
          </>
        );
      })}
      <p class="no-print">
        <WorkedOut view={view} about="progress" />
      </p>
    </section>
  );
}

interface CourseProps {
  readonly view: View;
  readonly lot: LotForecast;
  readonly water: Water;
  readonly asOf: number;
  readonly table: DevelopmentTable;
  readonly fertilised: number;
}

/** Progress to hatch; to the table's first stage where it knows no hatch. */
function Progress({ view, lot, water, asOf, table, fertilised }: CourseProps) {
  const stage = table.stages.find((row) => row.stage === 'hatch')?.stage ?? table.stages[0]?.stage;
  const now = stage === undefined ? undefined : lot.progress[stage];
  if (stage === undefined || now === undefined) return null;
  const way = wayTo(table, stage);
  if (way.after !== null) return null;
  const fan = fanOf({
    days: water.days,
    traces: water.traces,
    from: fertilised,
    gain: (celsius) => dailyRate(way.law, celsius) / way.factor,
    through: { day: asOf, value: now },
  });
  const title = view.say('page-box-progress-finding', {
    lot: lot.lot,
    share: view.percent(now),
    stage: view.stage(stage),
  });
  const marks = table.stages.flatMap((row) =>
    row.stage === stage
      ? [{ at: 1, name: view.stage(stage) }]
      : 'multipleOf' in row.needs && row.needs.multipleOf === stage && row.needs.factor < 1.4
        ? [{ at: row.needs.factor, name: view.stage(row.stage) }]
        : [],
  );
  return (
    <CourseFigure
      view={view}
      title={title}
      fan={fan}
      say={view.percent}
      svg={fanChart({
        language: view.language,
        title,
        fan,
        asOf,
        unit: view.say('page-box-progress-unit', { stage: view.stage(stage) }),
        tick: view.percent,
        marks,
        most: 1.4,
      })}
    />
  );
}

function Units({ view, lot, water, asOf, table, fertilised }: CourseProps) {
  if (lot.thermalUnits === null) return null;
  const base = tableBase(table);
  const fan = fanOf({
    days: water.days,
    traces: water.traces,
    from: fertilised,
    gain: (celsius) => Math.max(0, celsius - base),
    through: { day: asOf, value: lot.thermalUnits },
  });
  const title = view.say('page-box-units-finding', { lot: lot.lot, units: lot.thermalUnits });
  const most = Math.max(1, ...[...fan.middle].filter(Number.isFinite));
  return (
    <CourseFigure
      view={view}
      title={title}
      fan={fan}
      say={view.whole}
      svg={fanChart({
        language: view.language,
        title,
        fan,
        asOf,
        unit: view.say('page-box-units-unit', {}),
        tick: view.whole,
        marks: [],
        most,
      })}
    />
  );
}

interface FigureProps {
  readonly view: View;
  readonly title: string;
  readonly fan: Fan;
  readonly svg: string;
  readonly say: (value: number) => string;
}

function CourseFigure({ view, title, fan, svg, say }: FigureProps) {
  const rows = Array.from(fan.middle, (middle, i) => ({ i, middle }))
    .filter(({ i, middle }) => i % 7 === 6 && Number.isFinite(middle))
    .map(({ i, middle }) => [
      view.long(fan.firstDay + i),
      say(fan.low[i] ?? Number.NaN),
      say(middle),
      say(fan.high[i] ?? Number.NaN),
    ]);
  const number = true;
  return (
    <ChartFigure
      view={view}
      title={title}
      svg={svg}
      columns={[
        { name: view.say('page-day', {}) },
        { name: view.say('page-low', {}), number },
        { name: view.say('page-middle', {}), number },
        { name: view.say('page-high', {}), number },
      ]}
      rows={rows}
    />
  );
}
