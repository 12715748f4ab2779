import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { numberTicks } from './axes.js';
import { drawChart } from './draw.js';

export interface DaysLine {
  readonly name: string;
  /** Days to the stage at each whole or half degree; lines break where there is none. */
  readonly points: readonly { readonly celsius: number; readonly days: number }[];
  /** Inside these the row is known to hold; outside the line is broken. */
  readonly min: number;
  readonly max: number;
}

export interface DaysChart {
  readonly language: Language;
  readonly title: string;
  readonly xName: string;
  readonly yName: string;
  readonly lines: readonly DaysLine[];
}

/** Told apart by colour and by the marks on them, first to last. */
const STROKES = ['var(--s0)', 'var(--s1)', 'var(--s2)', 'var(--s3)'];
const SYMBOLS = ['circle', 'triangle', 'square', 'diamond'] as const;
const SIGNS = ['○', '△', '□', '◇'];

/** The marks of lines in words, for where their names at the right are out of sight: "○ eye-up, △ hatch". */
export const marksKey = (names: readonly string[]): string =>
  names.map((name, i) => `${SIGNS[i % SIGNS.length]} ${name}`).join(', ');

/** Days to each stage against the water's temperature; dashed outside the range a row is known to hold in. */
export function daysChart({ language, title, xName, yName, lines }: DaysChart): string {
  const tick = numberTicks(language);
  const shifts = apart(lines);
  return drawChart(
    { title },
    {
      width: 640,
      height: HEIGHT,
      // The longest name stands right of its line, about 7.6 px a letter in a phone's larger type.
      marginRight: Math.max(90, ...lines.map(({ name }) => 14 + 7.6 * name.length)),
      x: { label: xName, tickFormat: tick, grid: true },
      y: { label: yName, tickFormat: tick, grid: true, zero: true },
      marks: lines.flatMap(({ name, points, min, max }, i) => {
        const stroke = STROKES[i % STROKES.length];
        const inside = points.filter(({ celsius }) => celsius >= min && celsius <= max);
        return [
          Plot.line(points, { x: 'celsius', y: 'days', stroke, strokeWidth: 1.2, strokeDasharray: '2 3' }),
          Plot.line(inside, { x: 'celsius', y: 'days', stroke, strokeWidth: 2.4 }),
          Plot.dot(
            inside.filter(({ celsius }) => Number.isInteger(celsius) && celsius % 2 === 0),
            {
              x: 'celsius',
              y: 'days',
              stroke,
              fill: 'var(--ground)',
              symbol: SYMBOLS[i % SYMBOLS.length],
              r: 4,
            },
          ),
          Plot.text(points.slice(-1), {
            x: 'celsius',
            y: 'days',
            text: () => name,
            textAnchor: 'start',
            dx: 6,
            dy: shifts[i] ?? 0,
            fill: 'var(--ink)',
          }),
        ];
      }),
    },
  );
}

const HEIGHT = 360;
/** Between two names that would lie on each other, pixels. */
const LINE = 14;

/** By how much each line's name is moved, pixels, so that lines ending at the same height can all be read. */
function apart(lines: readonly DaysLine[]): readonly number[] {
  const most = Math.max(1, ...lines.flatMap(({ points }) => points.map(({ days }) => days)));
  const ends = lines.map(({ points }, i) => ({
    i,
    at: (-(points.at(-1)?.days ?? 0) / most) * (HEIGHT - 60),
  }));
  const shifts = lines.map(() => 0);
  let below = Number.POSITIVE_INFINITY;
  for (const { i, at } of ends.toSorted((a, b) => b.at - a.at)) {
    const placed = Math.min(at, below - LINE);
    shifts[i] = placed - at;
    below = placed;
  }
  return shifts;
}
