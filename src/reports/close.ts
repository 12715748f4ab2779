import { readFileSync } from 'node:fs';
import type { Group } from '../group/index.js';
import { readSeason, renderSeason, type Season } from '../season/index.js';
import type { ClosedSeasonRow } from '../store/index.js';
import { boxWinters, type SeasonDoor, seasonId } from '../survival/index.js';
import { reportDocuments } from './documents.js';
import { boxesOut, type ReportFigures } from './figures.js';
import { FROZEN_FORMAT, frozenSeason } from './frozen.js';
import { ReportRefused, refuseClosed } from './refused.js';
import { standing } from './season.js';
import { someOf } from './sentences.js';
import type { ClosingWords } from './words.js';

/** Whoever asks a service that nobody has to sign in to. */
export const NOBODY = '-';

/**
 * Closes the season in force: its document, figures, tables and reports are kept as they stand. `who` is the account it
 * is done from, `named` the person the reports name (null: nobody, for an account of the computer says little).
 * @throws ReportRefused where it has no eggs, no tally, boxes still out, or was closed before
 */
export async function closeSeason(
  group: Group,
  who: string,
  named: string | null = who === NOBODY ? null : who,
): Promise<ClosedSeasonRow> {
  const season = await group.season();
  const version = (await group.seasonVersions())[0]?.version ?? 0;
  const id = refuseUnready(season, await group.closedSeasons());
  const { figures } = await standing(group);
  const day = await group.today();
  const kept: ReportFigures = JSON.parse(JSON.stringify({ ...figures, asOf: day }));
  const content = {
    format: FROZEN_FORMAT,
    program: programVersion(),
    text: renderSeason(season),
    figures: kept,
    // Made from what is kept, so that what is printed is what is kept.
    documents: await reportDocuments(kept, season, { by: named, day }),
  };
  const { method } = kept;
  return group.keepClosed({ season: id, version, method, content: JSON.stringify(content) }, named ?? who);
}

/** The season's id, where it can be closed. */
export function refuseUnready(season: Season, closed: readonly ClosedSeasonRow[]): string {
  const id = seasonId(season);
  if (id === null) throw new ReportRefused({ code: 'close-no-eggs', with: {} });
  refuseClosed(closed, id);
  if (season.tallies.length === 0) throw new ReportRefused({ code: 'close-no-tally', with: {} });
  const out = boxesOut(season);
  if (out.length > 0) throw new ReportRefused({ code: 'close-boxes-out', with: someOf(out) });
  return id;
}

export type LateRemark = {
  [Code in 'late-units' | 'late-freezing' | 'late-stage']: {
    readonly code: Code;
    readonly with: ClosingWords[Code];
  };
}['late-units' | 'late-freezing' | 'late-stage'];

export interface LateChanges {
  readonly season: string;
  readonly changes: readonly LateRemark[];
}

/** A day, and a degree-day: smaller differences are not told (ours). */
const TOLD_DAYS = 0.5;
const TOLD_UNITS = 0.5;

/**
 * What the record as it is now would have made of a closed season's figures, by the document and the tables kept with
 * it. The closed season stays as it was.
 * @throws ReportRefused 'close-unknown'
 */
export async function lateChanges(group: Group, closed: string): Promise<LateChanges> {
  const content = await group.closedContent(closed);
  if (content === null) {
    const seasons = (await group.closedSeasons()).map(({ season }) => season);
    throw new ReportRefused({ code: 'close-unknown', with: { season: closed, seasons } });
  }
  const { figures, text } = frozenSeason(content);
  const season = readSeason(text, closed);
  const door: SeasonDoor = {
    season: async () => season,
    today: () => group.today(),
    forecast: (asked) => group.forecast({ ...asked, closed }),
  };
  const last = await door.forecast({ box: null, asOf: null });
  const now = new Map(boxWinters(season, last, new Map(), []).map((winter) => [winter.box, winter]));
  const winters = figures.winters.flatMap(({ box, thermalUnits, atFreezing }): LateRemark[] => {
    const then = now.get(box);
    return [
      ...(differ(thermalUnits, then?.thermalUnits, TOLD_UNITS)
        ? [{ code: 'late-units' as const, with: { box, was: thermalUnits, now: then?.thermalUnits ?? null } }]
        : []),
      ...(differ(atFreezing, then?.atFreezing, TOLD_UNITS)
        ? [{ code: 'late-freezing' as const, with: { box, was: atFreezing, now: then?.atFreezing ?? null } }]
        : []),
    ];
  });
  const stages = figures.rightness.stages.flatMap(({ box, lot, stage, byRecord }): LateRemark[] => {
    const window = last.boxes
      .find((one) => one.box === box)
      ?.lots.find((one) => one.lot === lot)
      ?.windows.find((one) => one.stage === stage);
    const median = window?.median.p50 ?? null;
    // A stage that had not come when the season was closed was no figure of it.
    const recorded = median !== null && median <= last.asOf ? median : null;
    if (byRecord === null || !differ(byRecord, recorded, TOLD_DAYS)) return [];
    // Half a day that leaves the date as it was would be told as "4 May instead of 4 May".
    if (recorded !== null && Math.floor(recorded) === Math.floor(byRecord)) return [];
    return [{ code: 'late-stage', with: { box, lot, stage, was: byRecord, now: recorded } }];
  });
  return { season: closed, changes: [...winters, ...stages] };
}

function differ(was: number | null, now: number | null | undefined, by: number): boolean {
  if (was === null || now === null || now === undefined) return was !== (now ?? null);
  return Math.abs(was - now) >= by;
}

function programVersion(): string {
  const above = import.meta.url.includes('/dist/') ? '../../../package.json' : '../../package.json';
  const manifest: unknown = JSON.parse(readFileSync(new URL(above, import.meta.url), 'utf8'));
  return typeof manifest === 'object' && manifest && 'version' in manifest ? String(manifest.version) : '';
}
