import type { BoxForecast, StageWindow } from '../../../forecasting/forecast.js';
import { stagesInOrder } from './season-answer.js';

/** One line of every box's strip: the stages drawn on it, named together where their windows are one. */
export interface Lane {
  readonly stages: readonly string[];
  /** Which of the stage styles it has, 0 for the first stage. */
  readonly style: number;
}

/** A stage's window may differ by so many days from another's and still be drawn as one. */
const SAME = 1;

/** Four styles are told apart by colour, by lightness and by pattern; later lanes begin again. */
const STYLES = 4;

/** Lanes from top to bottom. Stages whose windows agree in every box (a table equates them) share one. */
export function lanesOf(boxes: readonly BoxForecast[]): Lane[] {
  const lanes: string[][] = [];
  for (const stage of stagesInOrder(boxes)) {
    const before = lanes.at(-1);
    if (before !== undefined && boxes.every((box) => agree(box, before[0], stage))) before.push(stage);
    else lanes.push([stage]);
  }
  return lanes.map((stages, i) => ({ stages, style: i % STYLES }));
}

function agree(box: BoxForecast, one: string, other: string): boolean {
  const a = box.windows.find(({ stage }) => stage === one);
  const b = box.windows.find(({ stage }) => stage === other);
  if (a === undefined || b === undefined) return a === b;
  return a.passed === b.passed && close(a, b, 'median') && close(a, b, 'first') && close(a, b, 'last');
}

function close(a: StageWindow, b: StageWindow, which: 'first' | 'median' | 'last'): boolean {
  const [x, y] = [a[which].p50, b[which].p50];
  return x === null || y === null ? x === y : Math.abs(x - y) <= SAME;
}
