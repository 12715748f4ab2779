import type { ForecastRemark, Interval, StageWindow } from '../forecast.js';
import type { StageName } from '../table.js';
import type { DayTime } from '../units.js';
import type { Ensemble } from '../windows/ensemble.js';
import { intervalOf, neverShare } from '../windows/interval.js';
import type { StageDraws } from '../windows/stage-draws.js';

const intervals = new WeakMap<StageDraws, Pick<StageWindow, 'first' | 'median' | 'last'>>();

/** The window of one stage out of what was drawn for it, as seen at `moment` (the end of the as-of day). */
export function stageWindow(
  stage: StageName,
  draws: StageDraws,
  all: Ensemble,
  moment: DayTime,
  canProject: boolean,
  outsideValidity: boolean,
): StageWindow {
  const found = intervals.get(draws) ?? {
    first: intervalOf(draws.first),
    median: intervalOf(draws.median),
    last: intervalOf(draws.last),
  };
  intervals.set(draws, found);
  const open = [found.first, found.median, found.last].some(hasGap);
  return {
    stage,
    ...found,
    passed: found.median.p50 !== null && found.median.p50 <= moment,
    unreached: open ? whyOpen(stage, draws, all, canProject) : null,
    outsideValidity,
  };
}

function hasGap({ p10, p50, p90 }: Interval): boolean {
  return p10 === null || p50 === null || p90 === null;
}

function whyOpen(stage: StageName, draws: StageDraws, all: Ensemble, canProject: boolean): ForecastRemark {
  if (!canProject) return { code: 'cannot-say', with: { needs: 'later-water', station: all.station } };
  const { firstDay, traces } = all.winters;
  const unknown = traces[0].findIndex((celsius) => Number.isNaN(celsius));
  if (unknown >= 0)
    return { code: 'water-ends', with: { stage, station: all.station, from: firstDay + unknown } };
  const through = firstDay + traces[0].length - 1;
  return { code: 'not-reached', with: { stage, through, share: neverShare(draws.last) } };
}

const NOTHING: Interval = { p10: null, p50: null, p90: null };

/** A window without dates, and what it would take to have them. */
export function unknownWindow(stage: StageName, why: ForecastRemark): StageWindow {
  return {
    stage,
    first: NOTHING,
    median: NOTHING,
    last: NOTHING,
    passed: false,
    unreached: why,
    outsideValidity: false,
  };
}
