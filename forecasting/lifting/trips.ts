import type { LiftingQuestion } from './contract.js';

/** Boxes that come out together on one day. */
export interface Trip {
  readonly boxes: readonly number[];
  readonly sites: readonly string[];
}

/**
 * Boxes as the crew works: those of the sites of a trip together, where they are not too many for a day; else site by
 * site, and a site with too many boxes in parts of a day each.
 *
 * @param sites the site of each box, by the box's number
 */
export function tripsOf(
  sites: readonly string[],
  { trips, boxesADay }: Pick<LiftingQuestion, 'trips' | 'boxesADay'>,
): Trip[] {
  const most = Math.max(1, boxesADay ?? Number.POSITIVE_INFINITY);
  const boxesAt = new Map<string, number[]>();
  for (const [i, site] of sites.entries()) boxesAt.set(site, [...(boxesAt.get(site) ?? []), i]);
  const grouped = new Set(trips.flat());
  const alone = [...boxesAt.keys()].filter((site) => !grouped.has(site)).map((site) => [site]);
  return [...trips, ...alone].flatMap((of) => {
    const there = [...new Set(of)].filter((site) => boxesAt.has(site));
    const boxes = there.flatMap((site) => boxesAt.get(site) ?? []);
    if (boxes.length === 0) return [];
    if (boxes.length <= most) return [{ boxes, sites: there }];
    return there.flatMap((site) => parts(boxesAt.get(site) ?? [], most, site));
  });
}

function parts(boxes: readonly number[], most: number, site: string): Trip[] {
  const made: Trip[] = [];
  for (let i = 0; i < boxes.length; i += most) made.push({ boxes: boxes.slice(i, i + most), sites: [site] });
  return made;
}
