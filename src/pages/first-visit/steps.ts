import type { Forecast } from '../../../forecasting/forecast.js';
import type { LoadRow } from '../../group/index.js';
import type { Season } from '../../season/index.js';

/** What is done of a first visit, in the order it is done. */
export interface Steps {
  readonly season: boolean;
  readonly download: boolean;
  /** Something tells of the days to come: past winters, or a curve. */
  readonly past: boolean;
  readonly window: boolean;
}

export function stepsDone(season: Season, loads: readonly LoadRow[], forecast: Forecast | null): Steps {
  const window =
    forecast?.boxes.some(({ windows }) => windows.some(({ median }) => median.p50 !== null)) ?? false;
  return {
    season: season.boxes.length > 0 && season.lots.length > 0,
    download: loads.some(({ withdrawn }) => withdrawn === null),
    past: window || season.seasonalCurve !== null,
    window,
  };
}
