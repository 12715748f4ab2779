import type { BoxForecast, Interval, StageWindow } from '../../../forecasting/forecast.js';
import { stagesInOrder } from './season-answer.js';
import type { TimeAxis } from './time-axis.js';

/** Stages drawn as one bar: more than one where their median eggs come on the same day in every box. */
export interface Bar {
  readonly stages: readonly string[];
  /** Which of the stage styles it has, 0 for the first. */
  readonly style: number;
  /** The line of the strip it stands on. */
  readonly lane: number;
}

/** Medians may differ by so many days and still be drawn as one (a table that equates two stages spreads one wider). */
const SAME = 1;

/** Room a bar needs for its name and date, in percent of the axis on the narrowest screen. */
const ROOM = 22;

/** Four styles are told apart by colour, by lightness and by pattern; later ones begin again. */
const STYLES = 4;

/** The bars of every strip, each on the first line where it meets no other in any box. */
export function barsOf(boxes: readonly BoxForecast[], axis: TimeAxis): Bar[] {
  const bars: Bar[] = [];
  for (const stages of together(boxes)) {
    let lane = 0;
    while (bars.some((bar) => bar.lane === lane && meet(boxes, bar.stages, stages, axis))) lane++;
    bars.push({ stages, style: bars.length % STYLES, lane });
  }
  return bars;
}

/** The window of a bar in one box: of several stages, the widest of each. Null where the box has none of them. */
export function windowOfBar(box: BoxForecast, stages: readonly string[]): StageWindow | null {
  const [one, ...others] = box.windows.filter(({ stage }) => stages.includes(stage));
  return one === undefined ? null : others.reduce(widest, one);
}

function widest(a: StageWindow, b: StageWindow): StageWindow {
  return {
    ...a,
    first: earlier(a.first, b.first),
    last: later(a.last, b.last),
    passed: a.passed && b.passed,
  };
}

const earlier = (a: Interval, b: Interval) => ((a.p10 ?? Infinity) <= (b.p10 ?? Infinity) ? a : b);
const later = (a: Interval, b: Interval) => ((a.p90 ?? Infinity) >= (b.p90 ?? Infinity) ? a : b);

function together(boxes: readonly BoxForecast[]): string[][] {
  const groups: string[][] = [];
  for (const stage of stagesInOrder(boxes)) {
    const before = groups.at(-1);
    if (before !== undefined && boxes.every((box) => agree(box, before[0], stage))) before.push(stage);
    else groups.push([stage]);
  }
  return groups;
}

function agree(box: BoxForecast, one: string, other: string): boolean {
  const a = box.windows.find(({ stage }) => stage === one);
  const b = box.windows.find(({ stage }) => stage === other);
  if (a === undefined || b === undefined) return a === b;
  const [x, y] = [a.median.p50, b.median.p50];
  return a.passed === b.passed && (x === null || y === null ? x === y : Math.abs(x - y) <= SAME);
}

function meet(
  boxes: readonly BoxForecast[],
  before: readonly string[],
  after: readonly string[],
  axis: TimeAxis,
): boolean {
  return boxes.some((box) => {
    const [a, b] = [windowOfBar(box, before), windowOfBar(box, after)];
    if (a === null || b === null || a.median.p50 === null || b.median.p50 === null) return false;
    const end = axis.at(a.last.p90 ?? axis.to);
    const begin = axis.at(b.first.p10 ?? b.first.p50 ?? b.median.p50);
    return begin - end < 2 * ROOM;
  });
}
