import type { BoxForecast, Forecast } from '../../../forecasting/forecast.js';
import type { Speech } from '../speech.js';

/**
 * What the season comes down to, in a sentence or two: how many boxes have probably passed the latest stage that any
 * has, and between which days the stage after it is expected in all boxes (the 80 % intervals of their median eggs,
 * from the earliest begin to the latest end).
 */
export function seasonAnswer(forecast: Forecast, { say }: Speech): string {
  if (forecast.boxes.length === 0) return say('page-season-empty', {});
  // A box that stands ready without eggs has nothing to pass.
  const boxes = forecast.boxes.filter(({ lots }) => lots.length > 0);
  if (boxes.length === 0) return say('page-season-no-eggs', {});
  const known = boxes.filter(({ windows }) => windows.some(({ median }) => median.p50 !== null));
  if (known.length === 0) return say('page-season-unknown', { boxes: boxes.length });
  const order = stagesInOrder(known);
  const passedBy = (name: string) => known.filter((box) => windowOf(box, name)?.passed);
  const latest = order.findLast((name) => passedBy(name).length > 0) ?? null;
  const next = order.find((name) => passedBy(name).length === 0) ?? null;
  const sentences = [
    latest === null
      ? say('page-season-none-passed', { boxes: boxes.length, stage: order[0] })
      : next === null && passedBy(latest).length === boxes.length
        ? say('page-season-all-over', { boxes: boxes.length, stage: latest })
        : say('page-season-passed', { passed: passedBy(latest).length, boxes: boxes.length, stage: latest }),
    ...(next === null ? [] : [expected(known, next, say)]),
    ...(known.length < boxes.length
      ? [say('page-season-cannot-say', { boxes: boxes.length - known.length })]
      : []),
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** Between which days a stage is expected in these boxes; empty where no box has a date for it. */
function expected(boxes: readonly BoxForecast[], stage: string, say: Speech['say']): string {
  const medians = boxes.flatMap((box) => windowOf(box, stage)?.median ?? []);
  const begins = medians.flatMap(({ p10, p50 }) => p10 ?? p50 ?? []);
  if (begins.length === 0) return '';
  const from = Math.floor(Math.min(...begins));
  const ends = medians.flatMap(({ p90 }) => p90 ?? []);
  return ends.length < medians.length
    ? say('page-season-next-open', { stage, from })
    : say('page-season-next', { stage, from, to: Math.floor(Math.max(...ends)) });
}

const windowOf = (box: BoxForecast, name: string) => box.windows.find((window) => window.stage === name);

/** Every stage that some box has, in the order the eggs pass them. */
export function stagesInOrder(boxes: readonly BoxForecast[]): string[] {
  const order: string[] = [];
  for (const { windows } of boxes) {
    windows.forEach(({ stage }, i) => {
      if (order.includes(stage)) return;
      const before = windows.slice(0, i).findLast((window) => order.includes(window.stage));
      order.splice(before === undefined ? 0 : order.indexOf(before.stage) + 1, 0, stage);
    });
  }
  return order;
}
