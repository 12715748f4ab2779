import * as Plot from '@observablehq/plot';
import type { Language } from '../words/index.js';
import { percent } from '../words/index.js';
import { drawChart } from './draw.js';

export interface ForestRow {
  readonly name: string;
  readonly share: number;
  readonly from: number;
  readonly to: number;
}

export interface ForestChart {
  readonly language: Language;
  readonly title: string;
  readonly rows: readonly ForestRow[];
  /** A span that is usually spoken of, shaded behind. */
  readonly usual: readonly [number, number];
}

/** Room for a name left of the axis, pixels; and about what a letter takes of it at 12 px, in a wide typeface. */
const ROOM = 170;
const WIDEST = 12;
const CAPITAL = 9;
const LETTER = 7.5;
const ROW = 24;

/** Shares with their intervals, one row each in the order given: the order says nothing. */
export function forestChart({ language, title, rows, usual }: ForestChart): string {
  const named = rows.map((row, i) => ({ ...row, row: `${i}` }));
  const names = new Map(named.map(({ row, name }) => [row, short(name)]));
  return drawChart(
    { title },
    {
      width: 640,
      height: 60 + ROW * rows.length,
      marginLeft: ROOM + 15,
      marginRight: 20,
      x: { domain: [0, 1], label: null, tickFormat: (share: number) => percent(language, share), grid: true },
      y: {
        domain: named.map(({ row }) => row),
        label: null,
        tickFormat: (row: string) => names.get(row) ?? '',
      },
      marks: [
        Plot.rect([usual], {
          x1: (d: typeof usual) => d[0],
          x2: (d: typeof usual) => d[1],
          fill: 'var(--band)',
        }),
        Plot.ruleY(named, { x1: 'from', x2: 'to', y: 'row', stroke: 'var(--measured)', strokeWidth: 2 }),
        Plot.dot(named, { x: 'share', y: 'row', r: 4, fill: 'var(--measured)' }),
      ],
    },
  );
}

/** As much of a name as there is room for. */
function short(name: string): string {
  const letters = [...name];
  const wide = (letter: string) =>
    /[MW@%]/.test(letter) ? WIDEST : letter !== letter.toLowerCase() ? CAPITAL : LETTER;
  let taken = 0;
  const over = letters.findIndex((letter) => {
    taken += wide(letter);
    return taken > ROOM;
  });
  return over < 0
    ? name
    : `${letters
        .slice(0, over - 1)
        .join('')
        .trimEnd()}…`;
}
