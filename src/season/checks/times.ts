import { epochMillis } from '../moments.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** Deployments, fills, liftings and blocked days in an order that can have happened. */
export function times(season: Season): Found[] {
  return [
    ...deploymentTimes(season),
    ...boxTimes(season),
    ...spanTimes('blocked', season.blocked),
    ...spanTimes('permits', season.permits),
  ];
}

function deploymentTimes({ deployments }: Season): Found[] {
  const found: Found[] = [];
  const spans = deployments.map(({ logger, from, to, read }, i) => {
    read.forEach((at, j) => {
      const inside =
        epochMillis(at) > epochMillis(from) && (to === null || epochMillis(at) <= epochMillis(to));
      if (!inside)
        found.push({
          path: ['deployments', i, 'read', j],
          trouble: { code: 'season.read-outside', with: { logger, at, from, to } },
        });
    });
    if (to !== null && epochMillis(to) <= epochMillis(from))
      found.push({
        path: ['deployments', i, 'to'],
        trouble: { code: 'season.ends-before-start', with: { from, to } },
      });
    return { i, logger, from, start: epochMillis(from), end: to === null ? Infinity : epochMillis(to) };
  });
  const inOrder = spans.toSorted((a, b) => a.logger.localeCompare(b.logger, 'en') || a.start - b.start);
  inOrder.forEach((span, k) => {
    const earlier = inOrder[k - 1];
    if (earlier === undefined || earlier.logger !== span.logger || earlier.end <= span.start) return;
    found.push({
      path: ['deployments', span.i, 'from'],
      trouble: {
        code: 'season.overlapping-deployment',
        with: { logger: span.logger, from: span.from, other: earlier.from },
      },
    });
  });
  return found;
}

function boxTimes({ boxes, lots }: Season): Found[] {
  const fertilisedOf = new Map(lots.map((lot) => [lot.id, lot.fertilised]));
  return boxes.flatMap((box, i) =>
    box.fills.flatMap(({ lot, planted }, j): Found[] => {
      const found: Found[] = [];
      const fertilised = fertilisedOf.get(lot);
      if (fertilised !== undefined && epochMillis(planted) < epochMillis(fertilised))
        found.push({
          path: ['boxes', i, 'fills', j, 'planted'],
          trouble: { code: 'season.planted-before-fertilised', with: { lot, planted, fertilised } },
        });
      if (box.lifted !== null && epochMillis(box.lifted) <= epochMillis(planted))
        found.push({
          path: ['boxes', i, 'lifted'],
          trouble: {
            code: 'season.lifted-before-planted',
            with: { box: box.id, lifted: box.lifted, planted },
          },
        });
      return found;
    }),
  );
}

function spanTimes(list: string, spans: readonly { from: string; to: string }[]): Found[] {
  return spans.flatMap(({ from, to }, i): Found[] =>
    to < from
      ? [{ path: [list, i, 'to'], trouble: { code: 'season.ends-before-start', with: { from, to } } }]
      : [],
  );
}
