import { type SharedBy, sharedBy } from '../../forecasting/survival/index.js';
import type { Season } from '../season/index.js';

/** What one season of the past shows of a site: what left the boxes (an upper figure) and the winter they had. */
export interface SitePast {
  readonly season: string;
  readonly source: 'closed' | 'table';
  readonly boxes: number;
  /** Share of the eggs that left the boxes, with its 95 % interval where a table gives box by box. */
  readonly out: number | null;
  readonly from: number | null;
  readonly to: number | null;
  /** Degree-days, and days at freezing, of a closed season's boxes; null where nobody measured. */
  readonly thermalUnits: number | null;
  readonly atFreezing: number | null;
}

export interface SiteCard {
  readonly site: Season['sites'][number];
  readonly boxes: readonly Season['boxes'][number][];
  /** Newest first. */
  readonly past: readonly SitePast[];
}

/** A site's winter as a closed season kept it (src/survival has more of it). */
export type ClosedWinter = Pick<SitePast, 'season' | 'boxes' | 'out' | 'thermalUnits' | 'atFreezing'> & {
  readonly site: string;
};

/**
 * The card of every site: how to get there and find each box, what the place is like, and what came of its boxes in
 * past seasons, from closed seasons and from tables of earlier ones. A season that was closed is not told twice.
 */
export function siteCards(season: Season, closed: readonly ClosedWinter[]): SiteCard[] {
  return season.sites.map((site) => {
    const kept = closed
      .filter((winter) => winter.site === site.id)
      .map(({ season: name, boxes, out, thermalUnits, atFreezing }): SitePast => {
        return { season: name, source: 'closed', boxes, out, from: null, to: null, thermalUnits, atFreezing };
      });
    const told = tabled(season, site).filter(({ season: name }) => !kept.some((one) => one.season === name));
    return {
      site,
      boxes: season.boxes.filter((box) => box.site === site.id),
      past: [...kept, ...told].toSorted((one, other) => (one.season < other.season ? 1 : -1)),
    };
  });
}

/** Past boxes of a table that name this site, by its short name or its name, whatever the capitals. */
function tabled({ earlier }: Season, { id, name }: Season['sites'][number]): SitePast[] {
  const called = [id, name].flatMap((one) => one?.toLowerCase() ?? []);
  const mine = earlier
    .flatMap(({ boxes }) => boxes)
    .filter(({ site }) => site !== null && called.includes(site.toLowerCase()));
  return [...new Set(mine.map((box) => box.season))].map((season): SitePast => {
    const boxes = mine.filter((box) => box.season === season);
    const shared: SharedBy | null = sharedBy(
      boxes.flatMap(({ eggs, empty }) =>
        eggs === null || empty === null || eggs === 0 ? [] : [{ seen: Math.min(empty, eggs), of: eggs }],
      ),
    );
    const { share = null, from = null, to = null } = shared ?? {};
    const unmeasured = { thermalUnits: null, atFreezing: null };
    return { season, source: 'table', boxes: boxes.length, out: share, from, to, ...unmeasured };
  });
}
