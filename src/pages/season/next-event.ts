import type { BoxForecast, StageWindow } from '../../../forecasting/forecast.js';

/** The first stage of a box that its median egg has not passed; null where all are passed or nothing is known. */
export function nextWindow(box: BoxForecast): StageWindow | null {
  return box.windows.find((window) => !window.passed) ?? null;
}

/** The last stage its median egg has passed; null before the first. */
export function lastPassed(box: BoxForecast): StageWindow | null {
  return box.windows.filter((window) => window.passed).at(-1) ?? null;
}

/** Boxes whose next stage comes soonest first; those of which nothing can be said, or with nothing to come, last. */
export function byNextEvent(a: BoxForecast, b: BoxForecast): number {
  return nextDay(a) - nextDay(b) || a.box.localeCompare(b.box, 'en', { numeric: true });
}

/** When the next stage begins to be likely: the early end of its median's interval. */
function nextDay(box: BoxForecast): number {
  const median = nextWindow(box)?.median;
  return median?.p10 ?? median?.p50 ?? Number.MAX_VALUE;
}
