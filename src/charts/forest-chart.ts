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

const LONGEST_NAME = 22;
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
      marginLeft: 150,
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

function short(name: string): string {
  const letters = [...name];
  return letters.length > LONGEST_NAME ? `${letters.slice(0, LONGEST_NAME - 1).join('')}…` : name;
}
