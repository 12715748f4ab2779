import type { BoxForecast, LotForecast } from '../../../forecasting/forecast.js';
import type { View } from '../view.js';

/** Where a box's eggs are now, in few words; each lot once where they differ. */
export function whereNow(box: BoxForecast, view: View): string {
  return [...new Set(box.lots.map((lot) => lotNow(lot, view)))].join(' / ');
}

export function lotNow(lot: LotForecast, view: View): string {
  const ahead = lot.windows.find((window) => !window.passed)?.stage ?? null;
  const share = view.percent(ahead === null ? 1 : Math.min(0.99, lot.progress[ahead] ?? 0));
  if (lot.stage === 'not-fertilised') return view.say('now-not-fertilised', {});
  if (lot.stage === 'unknown') return view.say('now-unknown', {});
  if (lot.stage === 'fertilised') return view.say('now-fertilised', { share });
  const next = ahead === null ? null : view.stage(ahead);
  return view.say('now-stage', { stage: view.stage(lot.stage), next, share });
}

/** How old a box's water is: the last day that was measured at the station that stands for it. */
export function waterAge(box: BoxForecast, { say, today }: View): string {
  if (box.dataThrough === null) return say('page-season-water-none', {});
  const days = today - box.dataThrough;
  return days <= 0
    ? say('page-season-water-today', {})
    : say('page-season-water-through', { day: box.dataThrough, days });
}
