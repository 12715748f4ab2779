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
  if (lot.stage === 'fertilised')
    return view.say('page-now-stage', { stage: null, next: ahead ?? 'eye-up', share });
  return view.say('page-now-stage', { stage: lot.stage, next: ahead, share });
}
