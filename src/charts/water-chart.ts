import * as Plot from '@observablehq/plot';
import { type DaySeries, Origin } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Language } from '../words/index.js';
import { numberTicks, timeTicks } from './axes.js';
import { dateOf, drawChart } from './draw.js';

/** Half of an 80 % interval in standard deviations. */
const EIGHTY = 1.2816;

export interface WaterChart {
  readonly language: Language;
  readonly title: string;
  readonly days: DaySeries;
  /** Where today's line stands; null where today is not in it. */
  readonly asOf: DayNumber | null;
  /** Unit and name of the vertical axis. */
  readonly unit: string;
  /** Of its frame, pixels; a narrow one has fewer dates. */
  readonly width?: number;
}

interface DayPoint {
  readonly date: Date;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Daily means of a winter's water by origin: measured as a line, filled as a broken line, projected as dots, with the
 * 80 % interval of what was not measured around it.
 */
export function waterChart({ language, title, days, asOf, unit, width = 720 }: WaterChart): string {
  const known = Array.from(days.mean, (mean, i): DayPoint => {
    const half = EIGHTY * (Number.isFinite(days.spread[i]) ? days.spread[i] : 0);
    return { date: dateOf(days.firstDay + i), mean, low: Math.max(-0.3, mean - half), high: mean + half };
  });
  const of = (origin: number) =>
    known.map((point, i) =>
      days.origin[i] === origin || (days.origin[i + 1] === origin && days.origin[i] !== Origin.none)
        ? point
        : { ...point, mean: Number.NaN, low: Number.NaN, high: Number.NaN },
    );
  const line = (origin: number, stroke: string, dash: string, width: number) =>
    Plot.lineY(of(origin), { x: 'date', y: 'mean', stroke, strokeDasharray: dash, strokeWidth: width });
  return drawChart(
    { title },
    {
      width,
      // The last date of a narrow chart may stand at its very end.
      ...(width < 600 ? { marginRight: 34 } : {}),
      x: { tickFormat: timeTicks(language), label: null, ticks: dateTicks(days, width) },
      y: { label: unit, grid: true, tickFormat: numberTicks(language), ticks: 5 },
      marks: [
        ...[Origin.filled, Origin.projected].map((origin) =>
          Plot.areaY(of(origin), { x: 'date', y1: 'low', y2: 'high', fill: 'var(--band)' }),
        ),
        Plot.ruleY([0], { stroke: 'var(--line)' }),
        line(Origin.projected, 'var(--projected)', '1.5 3', 2),
        line(Origin.filled, 'var(--filled)', '6 3', 2),
        line(Origin.measured, 'var(--measured)', '', 2),
        ...(asOf === null
          ? []
          : [Plot.ruleX([dateOf(asOf)], { stroke: 'var(--today)', strokeDasharray: '3 2' })]),
      ],
    },
  );
}

/** A date takes this much of the axis, pixels. */
const DATE_WIDTH = 90;

/** Of a longer span the first of a month says more than a whole number of weeks, days. */
const MONTHS = 100;

/** As many dates as stand beside each other: of a few weeks, whole weeks apart. */
function dateTicks({ firstDay, mean }: DaySeries, width: number): Date[] | number {
  if (mean.length > MONTHS) return Math.round(width / 120);
  const weeks = Math.max(1, Math.ceil((mean.length * DATE_WIDTH) / width / 7));
  return Array.from({ length: Math.ceil(mean.length / (7 * weeks)) }, (_, i) =>
    dateOf(firstDay + i * 7 * weeks),
  );
}
