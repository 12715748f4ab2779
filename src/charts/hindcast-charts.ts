import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { shortDay } from '../words/index.js';
import { numberTicks, timeTicks } from './axes.js';
import { dateOf, drawChart } from './draw.js';

export interface ErrorLine {
  readonly name: string;
  /** Days after fertilisation, and the mean absolute error there. */
  readonly points: readonly { readonly lead: number; readonly error: number }[];
}

export interface ErrorChart {
  readonly language: Language;
  readonly title: string;
  readonly unit: string;
  /** Day number of fertilisation in any year, for the names of days. */
  readonly from: number;
  /** Our own first. */
  readonly lines: readonly ErrorLine[];
}

const STROKES = ['var(--measured)', 'var(--s2)', 'var(--s1)', 'var(--ink)'];
const DASHES = ['', '6 3', '2 3', '1 4'];
/** Names beside the ends of lines stand so far apart, in days of error over the height of the chart. */
const APART = 14;

/** Error against the day the forecast is made on: ours, and each plain method beside it. */
export function errorChart({ language, title, unit, from, lines }: ErrorChart): string {
  const most = Math.max(1, ...lines.flatMap(({ points }) => points.map(({ error }) => error)));
  const height = 260;
  const scale = (height - 60) / most;
  const ends = lines
    .flatMap(({ name, points }) => {
      const last = points.at(-1);
      return last === undefined ? [] : [{ name, ...last, dy: 0 }];
    })
    .sort((a, b) => b.error - a.error);
  for (let i = ends.length - 2; i >= 0; i--) {
    const [upper, lower] = [ends[i], ends[i + 1]];
    if (upper === undefined || lower === undefined) continue;
    const gap = (upper.error - lower.error) * scale - upper.dy + lower.dy;
    if (gap < APART) upper.dy -= APART - gap;
  }
  return drawChart(
    { title },
    {
      height,
      marginRight: 140,
      x: {
        label: null,
        ticks: [...new Set(lines.flatMap(({ points }) => points.map(({ lead }) => lead)))],
        tickFormat: (lead: number) => shortDay(language, from + lead),
      },
      y: { label: unit, grid: true, ticks: 5, domain: [0, most * 1.05], tickFormat: numberTicks(language) },
      marks: [
        ...lines.flatMap(({ points }, i) => [
          Plot.lineY(points, {
            x: 'lead',
            y: 'error',
            stroke: STROKES[i % STROKES.length],
            strokeWidth: i === 0 ? 2.5 : 1.6,
            strokeDasharray: DASHES[i % DASHES.length],
          }),
          Plot.dot(points, { x: 'lead', y: 'error', r: 3, fill: STROKES[i % STROKES.length] }),
        ]),
        ...ends.map((end) =>
          Plot.text([end], {
            x: 'lead',
            y: 'error',
            text: 'name',
            textAnchor: 'start',
            dx: 8,
            dy: end.dy,
            fill: 'var(--ink)',
          }),
        ),
      ],
    },
  );
}

export interface WinterWindow {
  /** "2021–22". */
  readonly winter: string;
  /** Day numbers in one and the same year; null where the stage is not reached. */
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
  readonly observed: number | null;
}

export interface WindowsChart {
  readonly language: Language;
  readonly title: string;
  readonly winters: readonly WinterWindow[];
}

/** Each hidden winter's window (bar), its median (stroke) and the date that came (dot; a ring where it missed). */
export function windowsChart({ language, title, winters }: WindowsChart): string {
  const bars = winters.flatMap(({ winter, p10, p90 }) =>
    p10 === null || p90 === null ? [] : [{ winter, x1: dateOf(p10), x2: dateOf(p90) }],
  );
  const medians = winters.flatMap(({ winter, p50 }) => (p50 === null ? [] : [{ winter, x: dateOf(p50) }]));
  const came = winters.flatMap(({ winter, p10, p90, observed }) =>
    observed === null
      ? []
      : [
          {
            winter,
            x: dateOf(observed),
            held: p10 !== null && observed >= p10 && (p90 === null || observed <= p90),
          },
        ],
  );
  return drawChart(
    { title },
    {
      height: 60 + 24 * winters.length,
      marginLeft: 84,
      insetLeft: 12,
      insetRight: 12,
      x: { label: null, tickFormat: timeTicks(language), ticks: 6, type: 'utc', grid: true },
      y: { label: null, domain: winters.map(({ winter }) => winter), type: 'band', padding: 0.35 },
      marks: [
        Plot.barX(bars, { x1: 'x1', x2: 'x2', y: 'winter', fill: 'var(--band)' }),
        Plot.tickX(medians, { x: 'x', y: 'winter', stroke: 'var(--measured)', strokeWidth: 2 }),
        Plot.dot(came, {
          x: 'x',
          y: 'winter',
          r: 5,
          fill: ({ held }: { held: boolean }) => (held ? 'var(--ink)' : 'var(--sheet)'),
          stroke: 'var(--ink)',
          strokeWidth: 2,
        }),
      ],
    },
  );
}
