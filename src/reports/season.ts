import type { Spell } from '../../forecasting/spells/spell.js';
import type { Group } from '../group/index.js';
import type { Season } from '../season/index.js';
import { type SiteWinter, seasonId, siteWinters, type YearBoxes } from '../survival/index.js';
import { type Documents, reportDocuments } from './documents.js';
import { type ReportFigures, type ReportSources, reportFigures } from './figures.js';
import { frozenSeason } from './frozen.js';
import { ReportRefused } from './refused.js';

/** A season with its figures and reports: closed, as it was kept; open, as it stands. */
export interface SeasonReported {
  readonly season: string;
  /** Null while it is open. */
  readonly closed: { readonly by: string; readonly at: number } | null;
  readonly figures: ReportFigures;
  readonly documents: Documents;
}

/** Every season that can be reported on: closed ones, and the one that is open (null where it has no eggs or is closed). */
export async function seasonsThere(
  group: Group,
): Promise<{ readonly closed: readonly string[]; readonly open: string | null }> {
  const closed = (await group.closedSeasons()).map(({ season }) => season);
  const id = seasonId(await group.season());
  return { closed, open: id === null || closed.includes(id) ? null : id };
}

/**
 * The report of a season; null: of the one in force, as it was kept where it is closed.
 * @throws ReportRefused 'close-unknown'
 */
export async function seasonReport(group: Group, asked: string | null): Promise<SeasonReported> {
  const current = seasonId(await group.season());
  const season = asked ?? current ?? '-';
  const row = (await group.closedSeasons()).find((one) => one.season === season);
  const content = row === undefined ? null : await group.closedContent(season);
  if (row !== undefined && content !== null) {
    const { figures, documents } = frozenSeason(content);
    return { season, closed: { by: row.by, at: row.at }, figures, documents };
  }
  if (asked !== null && asked !== current) {
    const { closed, open } = await seasonsThere(group);
    const seasons = [...closed, ...(open === null ? [] : [open])];
    throw new ReportRefused({ code: 'close-unknown', with: { season: asked, seasons } });
  }
  const { figures, document } = await standing(group);
  const documents = await reportDocuments(figures, document, null);
  return { season, closed: null, figures, documents };
}

/** Figures of the season in force as they stand; worked out once until the next write. */
const known = new WeakMap<object, Promise<{ figures: ReportFigures; document: Season }>>();

export async function standing(group: Group): Promise<{ figures: ReportFigures; document: Season }> {
  // The group gives the same forecast until something is written.
  const last = await group.forecast({ box: null, asOf: null });
  const made = known.get(last) ?? workOut(group);
  known.set(last, made);
  made.catch(() => known.delete(last));
  return made;
}

async function workOut(group: Group) {
  const document = await group.season();
  const figures = await reportFigures({
    door: group,
    season: document,
    tables: await group.tables(),
    spells: await spellsOf(group),
    ...(await closedYears(group)),
  });
  return { figures, document };
}

/** What a group that judges spells is asked. */
interface JudgesSpells {
  spells(asked: { readonly box: null; readonly since: null }): Promise<readonly Spell[]>;
}

/** The season's spells; null where the group does not judge any. */
async function spellsOf(group: Group): Promise<readonly Spell[] | null> {
  const judging: Group & Partial<JudgesSpells> = group;
  return judging.spells === undefined ? null : judging.spells({ box: null, since: null });
}

/** Boxes and winters of closed seasons, as each was counted in its own year. */
async function closedYears(group: Group): Promise<Pick<ReportSources, 'closed' | 'winters'>> {
  const years: YearBoxes[] = [];
  const winters: SiteWinter[] = [];
  for (const { season } of await group.closedSeasons()) {
    const content = await group.closedContent(season);
    if (content === null) continue;
    const { figures } = frozenSeason(content);
    winters.push(...siteWinters(figures));
    const { years: told } = figures.survival;
    const own = told.find((year) => year.season === season);
    if (own !== undefined) years.push({ ...own, source: 'closed' });
  }
  return { closed: years, winters };
}

/** The winters of closed seasons, site by site: what a site's card is read beside. */
export const closedWinters = async (group: Group): Promise<readonly SiteWinter[]> =>
  (await closedYears(group)).winters ?? [];
