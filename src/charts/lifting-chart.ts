import * as Plot from '@observablehq/plot';
import type { DayOfPlan } from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Language } from '../words/index.js';
import { percent } from '../words/index.js';
import { timeTicks } from './axes.js';
import { dateOf, drawChart } from './draw.js';

export interface LiftingChart {
  readonly language: Language;
  readonly title: string;
  readonly days: readonly DayOfPlan[];
  readonly planned: readonly DayNumber[];
  readonly height?: number;
}

const RANGE = ['stillInBox', 'emerged'] as const;

/** Dates along the axis, about; of fewer days, each. */
const TICKS = 6;

/** Days shown before and after anything happens. */
const MARGIN = 3;

/**
 * Alevins still in the box (solid) and fry out of the gravel (dashed) with their 80 % intervals, the chance that both
 * keep their levels (dotted), blocked days shaded, planned days marked. Its key stands outside it.
 */
export function liftingChart({ language, title, days, planned, height = 240 }: LiftingChart): string {
  const shown = happening(days, planned);
  const points = shown.map((day) => ({ ...day, date: dateOf(day.day + 0.5) }));
  const strokes = { stillInBox: 'var(--s1)', emerged: 'var(--s2)' };
  const fills = { stillInBox: 'var(--s1-pale)', emerged: 'var(--s2-pale)' };
  return drawChart(
    { title },
    {
      height,
      width: 620,
      marginLeft: 58,
      marginRight: 24,
      x: {
        tickFormat: timeTicks(language),
        label: null,
        domain: [dateOf(shown[0]?.day ?? 0), dateOf((shown.at(-1)?.day ?? 0) + 1)],
        ticks: shown.length < TICKS ? 'day' : TICKS,
      },
      y: {
        label: null,
        domain: [0, 1],
        grid: true,
        ticks: 5,
        tickFormat: (y: number) => percent(language, y),
      },
      marks: [
        Plot.rectY(
          shown.filter(({ blocked }) => blocked !== null),
          {
            x1: ({ day }: DayOfPlan) => dateOf(day),
            x2: ({ day }: DayOfPlan) => dateOf(day + 1),
            y1: 0,
            y2: 1,
            fill: 'var(--line)',
            fillOpacity: 0.6,
          },
        ),
        ...RANGE.map((which) =>
          Plot.areaY(points, {
            x: 'date',
            y1: (point: DayOfPlan) => point[which].p10,
            y2: (point: DayOfPlan) => point[which].p90,
            fill: fills[which],
            fillOpacity: 0.7,
          }),
        ),
        ...RANGE.map((which) =>
          Plot.lineY(points, {
            x: 'date',
            y: (point: DayOfPlan) => point[which].mean,
            stroke: strokes[which],
            strokeWidth: 2,
            strokeDasharray: which === 'emerged' ? '6 3' : '',
          }),
        ),
        Plot.lineY(points, {
          x: 'date',
          y: 'chance',
          stroke: 'var(--ink)',
          strokeWidth: 1.6,
          strokeDasharray: '1.5 3',
        }),
        Plot.ruleX(
          planned.map((day) => dateOf(day + 0.5)),
          { stroke: 'var(--today)', strokeWidth: 1.5 },
        ),
      ],
    },
  );
}

function happening(days: readonly DayOfPlan[], planned: readonly DayNumber[]): readonly DayOfPlan[] {
  const moves = ({ stillInBox, emerged, day }: DayOfPlan) =>
    (stillInBox.p10 < 0.99 && emerged.p90 < 0.99) || planned.includes(day);
  const first = days.findIndex(moves);
  const last = days.findLastIndex(moves);
  return first < 0 ? days : days.slice(Math.max(0, first - MARGIN), last + MARGIN + 1);
}
