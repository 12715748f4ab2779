import type { Group } from '../group/index.js';
import { UnknownName } from '../group/unknown-name.js';
import {
  type EntryRefused,
  renderSeason,
  type Season,
  SeasonRefused,
  seasonDocument,
  seasonFrom,
} from '../season/index.js';
import { isoDay } from '../words/index.js';
import { withLifted } from './lifted.js';
import { liftingState } from './plan.js';
import { LiftingRefused } from './refused.js';

/** A count as it was entered: keys of the season file, values as written. */
export type Entered = Readonly<Record<string, unknown>>;
type Document = Record<string, unknown>;

export interface Kept {
  /** False: this entry was there already, and is there once. */
  readonly fresh: boolean;
}

/** How often an entry is tried again where somebody else's came in between. */
const ATTEMPTS = 8;
/** What the season is called in a sentence about an entry. */
const SHOWN_AS = 'season';

/**
 * Keeps a tally. The box counts as lifted from then on, unless it was gone. The same entry id again changes nothing;
 * two people's tallies at once are both kept.
 * @throws SeasonRefused where the count cannot be, UnknownName for a box that is not there
 */
export function enterTally(group: Group, entered: Entered, who: string): Promise<Kept> {
  return enter(group, 'tallies', entered, who, (document) => {
    const gone = entered.found === 'not-found' || entered.found === 'carried-away';
    return gone ? document : withLifted(document, String(entered.box), String(entered.when ?? ''));
  });
}

/** Keeps a box that was checked and put back: evidence, and no lifting. Same promises as a tally's. */
export function enterPutBack(group: Group, entered: Entered, who: string): Promise<Kept> {
  return enter(group, 'checkedAndPutBack', entered, who, (document) => document);
}

async function enter(
  group: Group,
  list: 'tallies' | 'checkedAndPutBack',
  entered: Entered,
  who: string,
  also: (document: Document) => Document,
): Promise<Kept> {
  const asEntry: EntryRefused = { kind: KINDS[list], box: String(entered.box ?? '') };
  const change = (season: Season) => {
    const boxes = season.boxes.map(({ id }) => id);
    const box = String(entered.box ?? '');
    if (!boxes.includes(box)) throw new UnknownName({ code: 'unknown-box', with: { box, boxes } });
    const { entry } = entered;
    if (entry !== undefined && season[list].some((one) => one.entry === entry)) return null;
    const document = seasonDocument(season);
    return also({ ...document, [list]: [...listOf(document, list), entered] });
  };
  try {
    return await changing(group, who, change);
  } catch (error) {
    if (!(error instanceof SeasonRefused)) throw error;
    const { file, problems } = error.remark.with;
    throw new SeasonRefused(file, problems, asEntry);
  }
}

const KINDS = { tallies: 'tally', checkedAndPutBack: 'putBack' } as const;

/** States how the group lifts: rule, levels, limits. What is not named stays as it is; null takes it away. */
export async function stateLifting(group: Group, stated: Entered, who: string): Promise<void> {
  await changing(group, who, (season) => {
    const document = seasonDocument(season);
    const lifting = Object.entries({ ...asDocument(document.lifting), ...stated });
    return { ...document, lifting: Object.fromEntries(lifting.filter(([, value]) => value !== null)) };
  });
}

/**
 * Approves the plan as it stands: who, when, and what was approved stay in the season. `seen` are the days the person
 * had before them, where a page showed them.
 * @throws LiftingRefused where there is nothing to approve, or the plan is another by now
 */
export async function approvePlan(
  group: Group,
  who: string,
  now: number,
  seen: readonly string[] | null = null,
): Promise<void> {
  const { plan } = await liftingState(group, null);
  const days = plan.recommended.map(({ day, boxes }) => ({ date: isoDay(day), boxes: [...boxes] }));
  if (days.length === 0) throw new LiftingRefused({ code: 'lifting-nothing-to-approve', with: {} });
  if (seen !== null && seen.join() !== days.map(({ date }) => date).join())
    throw new LiftingRefused({ code: 'lifting-plan-changed', with: {} });
  const at = new Date(now).toISOString().slice(0, 19);
  const chance = Number(plan.chance.toFixed(4));
  const approved = { by: who, at: `${at}Z`, asOf: isoDay(plan.asOf), chance, days };
  await stateLifting(group, { approved }, who);
}

/** Changes the season; tried again where another change came first. `change` gives null where nothing is to be done. */
export async function changing(
  group: Group,
  who: string,
  change: (season: Season) => Document | null,
): Promise<Kept> {
  for (let attempt = 1; ; attempt++) {
    const version = (await group.seasonVersions())[0]?.version ?? 0;
    const document = change(await group.season());
    if (document === null) return { fresh: false };
    const text = renderSeason(seasonFrom(document, SHOWN_AS));
    try {
      await group.applySeason(text, SHOWN_AS, who, version);
      return { fresh: true };
    } catch (error) {
      if (attempt >= ATTEMPTS || !hasMoved(error)) throw error;
    }
  }
}

/** Whether another version came first; through a running service the refusal is of another kind, with the same code. */
function hasMoved(error: unknown): boolean {
  return (
    error instanceof Error &&
    'remark' in error &&
    typeof error.remark === 'object' &&
    error.remark !== null &&
    'code' in error.remark &&
    error.remark.code === 'season-moved'
  );
}

function listOf(document: Document, key: string): readonly unknown[] {
  const list = document[key];
  return Array.isArray(list) ? list : [];
}

function asDocument(value: unknown): Document {
  return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value)) : {};
}
