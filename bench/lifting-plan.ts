import { forecast, type LiftingQuestion, liftingPlan, USUAL_LEVELS } from '../forecasting/index.js';
import { benchSeason, milliseconds } from './forecast.js';
import { type BenchRow, lessIsBetter, median } from './row.js';

const BOXES = 200;
/** What the planner is to answer within, seconds. */
const PROMISED = 1;

/** The plan of 200 boxes at 40 sites over 116 candidate days, its forecast at hand: beside the second it is promised in. */
export function liftingBench({ quick }: { readonly quick: boolean }): BenchRow[] {
  const question: LiftingQuestion = {
    forecast: forecast(benchSeason(BOXES)),
    rule: 'before-emergence',
    levels: USUAL_LEVELS,
    blocked: [],
    boxesADay: 40,
    trips: [],
    over: new Set(),
  };
  const spent: number[] = [];
  for (let i = 0; i < (quick ? 3 : 7); i++) {
    spent.push(milliseconds(() => void liftingPlan(question)));
  }
  const value = median(spent) / 1000;
  return [lessIsBetter(`lifting-${BOXES}`, value, 's', { name: 'promised', value: PROMISED })];
}
