import type { Spell } from '../../forecasting/spells/spell.js';
import type { GroupSurvival } from './groups.js';
import { AT_THE_GAUGE, type BoxWinter } from './winter.js';

/** The winter of one site's boxes in one season, to be read beside its other winters. */
export interface SiteWinter {
  readonly season: string;
  readonly site: string;
  readonly boxes: number;
  /** Medians over the boxes whose water is known: degree-days, and days at freezing. */
  readonly thermalUnits: number | null;
  readonly atFreezing: number | null;
  /** Daily means, °C: the lowest and the highest of any box. */
  readonly lowest: number | null;
  readonly highest: number | null;
  /** Each counted once, however many boxes it touched; null where nothing judged them. */
  readonly spells: number | null;
  readonly exposures: number | null;
  readonly gaugeEvents: number | null;
  /** Mean depth of silt where it was measured, mm. */
  readonly siltMm: number | null;
  /** Share out of the box, an upper figure; null where nothing was counted. */
  readonly out: number | null;
}

/** What is known of a season, open or closed. */
export interface SeasonWinters {
  readonly season: string;
  readonly winters: readonly BoxWinter[];
  readonly spells: readonly Spell[];
  readonly spellsJudged: boolean;
  readonly survival: { readonly groups: readonly GroupSurvival[] };
}

/** A season's winters site by site. */
export function siteWinters({
  season,
  winters,
  spells,
  spellsJudged,
  survival,
}: SeasonWinters): SiteWinter[] {
  return [...new Set(winters.map(({ site }) => site))].map((site) => {
    const here = winters.filter((one) => one.site === site);
    const boxes = new Set(here.map(({ box }) => box));
    const touched = spells.filter(
      ({ state, boxes: hit }) => state !== 'withdrawn' && hit.some((box) => boxes.has(box)),
    );
    const number = (of: (spell: Spell) => boolean) => (spellsJudged ? touched.filter(of).length : null);
    const known = (of: (winter: BoxWinter) => number | null) => here.flatMap((winter) => of(winter) ?? []);
    const [low, high, silt] = [known((w) => w.lowest), known((w) => w.highest), known((w) => w.siltMm)];
    const group = survival.groups.find(
      ({ by, name, measure }) => by === 'site' && name === site && measure === 'out',
    );
    return {
      season,
      site,
      boxes: here.length,
      thermalUnits: middle(known((winter) => winter.thermalUnits)),
      atFreezing: middle(known((winter) => winter.atFreezing)),
      lowest: low.length === 0 ? null : Math.min(...low),
      highest: high.length === 0 ? null : Math.max(...high),
      spells: number(({ kind }) => kind !== 'exposure' && !AT_THE_GAUGE.includes(kind)),
      exposures: number(({ kind }) => kind === 'exposure'),
      gaugeEvents: number(({ kind }) => AT_THE_GAUGE.includes(kind)),
      siltMm: silt.length === 0 ? null : silt.reduce((a, b) => a + b, 0) / silt.length,
      out: group?.found?.share ?? null,
    };
  });
}

function middle(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  if (sorted.length === 0) return null;
  return (sorted[Math.ceil(half) - 1] + sorted[Math.floor(half)]) / 2;
}
