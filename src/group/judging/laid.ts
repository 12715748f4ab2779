import type { LaidLogger } from '../../../forecasting/quality/index.js';
import { epochMillis, type Season } from '../../season/index.js';
import type { EpochMillis } from '../../store/index.js';

/**
 * Where nobody stated a lifting day, boxes are taken to come out by then: 15 July. Fry leave the gravel about 29 June
 * in the coldest rivers known to the project (computed on open data); the rest is leeway (ours).
 */
const LATEST_LIFTING = { month: 6, day: 15 };
/** Loggers whose end of season is missed where they fill early. */
const WITH_EGGS: readonly string[] = ['in-box', 'tied-to-box', 'gravel', 'stream'];

/** The deployments that touch a year; one that began in another has told what its memory holds there. */
export function laidLoggers(
  season: Season,
  year: { readonly station: string; readonly from: EpochMillis; readonly to: EpochMillis },
): LaidLogger[] {
  return season.deployments
    .filter(({ station }) => station === year.station)
    .filter(({ from, to }) => epochMillis(from) <= year.to && (to === null || epochMillis(to) >= year.from))
    .map((deployment) => {
      const from = epochMillis(deployment.from);
      const logger = season.loggers.find(({ id }) => id === deployment.logger);
      const began = from >= year.from;
      return {
        from,
        to: deployment.to === null ? null : epochMillis(deployment.to),
        iceBath: deployment.iceBath,
        memory: began ? (logger?.memory ?? null) : null,
        intervalMinutes: logger?.interval ?? null,
        lifted: deployment.lost ? null : liftedAt(season, deployment),
      };
    });
}

/** When a logger's box is lifted, was planned to be, or is taken to be at the latest; null where it lies with no eggs. */
export function liftedAt(
  season: Season,
  { box, from, lay }: Pick<Season['deployments'][number], 'box' | 'from' | 'lay'>,
): number | null {
  if (!WITH_EGGS.includes(lay)) return null;
  const lifted = season.boxes.find(({ id }) => id === box)?.lifted ?? null;
  if (lifted !== null) return epochMillis(lifted);
  const planned = season.lifting?.approved?.days.find(({ boxes }) => box !== null && boxes.includes(box));
  if (planned !== undefined) return Date.parse(`${planned.date}T12:00Z`);
  const placed = new Date(epochMillis(from));
  const sameYear = Date.UTC(placed.getUTCFullYear(), LATEST_LIFTING.month, LATEST_LIFTING.day);
  return sameYear > placed.getTime()
    ? sameYear
    : Date.UTC(placed.getUTCFullYear() + 1, LATEST_LIFTING.month, LATEST_LIFTING.day);
}
