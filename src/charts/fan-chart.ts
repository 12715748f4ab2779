import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { timeTicks } from './axes.js';
import { dateOf, drawChart } from './draw.js';
import type { Fan } from './fan.js';

export interface FanChart {
  readonly language: Language;
  readonly title: string;
  readonly fan: Fan;
  readonly asOf: number;
  readonly unit: string;
  readonly tick: (value: number) => string;
  /** Heights worth a line with a name, as the progress at which a stage comes. */
  readonly marks: readonly { readonly at: number; readonly name: string }[];
  /** The course is drawn as far as this, and ends there. */
  readonly most: number;
}

/** What has gathered and may yet gather: the best course, and the span that holds 8 of 10 possible winters. */
export function fanChart({ language, title, fan, asOf, unit, tick, marks, most }: FanChart): string {
  const shown = (value: number) => (value > most ? Number.NaN : value);
  const points = Array.from(fan.middle, (middle, i) => ({
    date: dateOf(fan.firstDay + i + 1),
    middle: shown(middle),
    low: Math.min(most, fan.low[i]!),
    high: Math.min(most, fan.high[i]!),
  }));
  return drawChart(
    { title },
    {
      x: { tickFormat: timeTicks(language), label: null, ticks: 6 },
      y: { label: unit, grid: true, tickFormat: tick, ticks: 5, domain: [0, most] },
      marks: [
        Plot.areaY(points, { x: 'date', y1: 'low', y2: 'high', fill: 'var(--band)' }),
        Plot.lineY(points, { x: 'date', y: 'middle', stroke: 'var(--measured)', strokeWidth: 2 }),
        Plot.ruleX([dateOf(asOf + 1)], { stroke: 'var(--today)', strokeDasharray: '3 2' }),
        ...marks.flatMap(({ at, name }) => [
          Plot.ruleY([at], { stroke: 'var(--s1)', strokeDasharray: '5 3' }),
          Plot.text([name], {
            frameAnchor: 'left',
            y: () => at,
            dy: -7,
            dx: 4,
            textAnchor: 'start',
            fill: 'var(--ink)',
          }),
        ]),
      ],
    },
  );
}
