import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { numberTicks } from './axes.js';
import { drawChart } from './draw.js';

export interface ScatterChart {
  readonly language: Language;
  readonly title: string;
  /** Daily means of days both measured, °C. */
  readonly pairs: readonly { readonly x: number; readonly y: number }[];
  readonly slope: number;
  readonly intercept: number;
  readonly xName: string;
  readonly yName: string;
}

/** Two stations' days against each other, and the line that a gap was filled along. */
export function scatterChart({
  language,
  title,
  pairs,
  slope,
  intercept,
  xName,
  yName,
}: ScatterChart): string {
  const xs = pairs.map(({ x }) => x);
  const ends = pairs.length === 0 ? [] : [Math.min(...xs), Math.max(...xs)];
  const tick = numberTicks(language);
  return drawChart(
    { title },
    {
      width: 420,
      height: 340,
      marginBottom: 44,
      x: { label: `${xName} (°C)`, tickFormat: tick, grid: true },
      y: { label: `${yName} (°C)`, tickFormat: tick, grid: true },
      marks: [
        Plot.dot(pairs, { x: 'x', y: 'y', r: 2.4, fill: 'var(--measured)', fillOpacity: 0.7 }),
        Plot.line(
          ends.map((x) => ({ x, y: Math.max(0, slope * x + intercept) })),
          { x: 'x', y: 'y', stroke: 'var(--filled)', strokeWidth: 2.5 },
        ),
      ],
    },
  );
}
