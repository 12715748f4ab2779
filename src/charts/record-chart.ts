import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { clockTicks, HOURS_UP_TO, numberTicks, timeTicks } from './axes.js';
import { dateOf, drawChart } from './draw.js';

/** A stretch of a record for drawing: instants in epoch milliseconds and values; columns of one length. */
export interface Stretch {
  readonly at: ArrayLike<number>;
  readonly min: ArrayLike<number>;
  readonly mean: ArrayLike<number>;
  readonly max: ArrayLike<number>;
}

export interface RecordChart {
  readonly language: Language;
  readonly title: string;
  readonly unit: string;
  /** The clock of a stretch of hours runs in it. */
  readonly zone: string;
  /** What is there already, and what a file brings; the file's is drawn over it. */
  readonly there: Stretch | null;
  readonly brought: Stretch | null;
}

/** A line breaks where nothing was recorded for so long: twenty times the usual step. */
const HOLE = 20;

/** A record, or a file's readings over what is there already. */
export function recordChart({ language, title, unit, zone, there, brought }: RecordChart): string {
  const span = spanOf(there, brought);
  const hours = span > 0 && span <= HOURS_UP_TO;
  const line = (stretch: Stretch | null, stroke: string, strokeWidth: number, dash: string) =>
    stretch === null
      ? []
      : [Plot.lineY(points(stretch), { x: 'date', y: 'mean', stroke, strokeWidth, strokeDasharray: dash })];
  return drawChart(
    { title },
    {
      height: 220,
      marginBottom: hours ? 56 : 32,
      x: {
        tickFormat: hours ? clockTicks(language, zone) : timeTicks(language, span),
        label: hours ? zone : null,
        labelArrow: 'none',
        ticks: 6,
      },
      y: { label: unit, grid: true, tickFormat: numberTicks(language), ticks: 5 },
      marks: [
        Plot.ruleY([0], { stroke: 'var(--line)' }),
        ...line(there, 'var(--projected)', 2.6, ''),
        ...line(brought, 'var(--filled)', 1.4, '5 2'),
      ],
    },
  );
}

/** Days from the first instant drawn to the last. */
function spanOf(...stretches: (Stretch | null)[]): number {
  const ends = stretches.flatMap((one) =>
    one === null || one.at.length === 0 ? [] : [one.at[0] ?? 0, one.at[one.at.length - 1] ?? 0],
  );
  return ends.length === 0 ? 0 : (Math.max(...ends) - Math.min(...ends)) / 86_400_000;
}

function points({ at, mean }: Stretch): { date: Date; mean: number }[] {
  const steps = Array.from(at, (instant, i) => (i === 0 ? 0 : instant - at[i - 1]!))
    .slice(1)
    .sort((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)] ?? 0;
  return Array.from({ length: at.length }, (_, i) => i).flatMap((i) => {
    const point = { date: dateOf(at[i]! / 86_400_000), mean: mean[i]! };
    const hole = i > 0 && at[i]! - at[i - 1]! > HOLE * usual;
    return hole ? [{ date: point.date, mean: Number.NaN }, point] : [point];
  });
}
