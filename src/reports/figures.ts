import type { DevelopmentTable, Forecast } from '../../forecasting/index.js';
import type { Spell } from '../../forecasting/spells/spell.js';
import { epochMillis, type Season, standardOffset } from '../season/index.js';
import {
  type BoxWinter,
  boxCounts,
  boxWinters,
  earlierYears,
  type Rightness,
  rightness,
  type SeasonDoor,
  type SiteWinter,
  type Survival,
  seasonId,
  siteWinters,
  stockAdjustments,
  survivalOf,
  type TableAdjustment,
  type YearBoxes,
} from '../survival/index.js';

const DAY = 86_400_000;
/** Changes where a figure of the report is worked out in another way than before. */
export const REPORT_METHOD = 1;

/** A lot as the report tells it. */
export interface LotFigures {
  readonly lot: string;
  readonly fertilised: string;
  readonly parents: readonly string[];
  readonly eggs: number;
  readonly planted: number;
  readonly counted: string | null;
  readonly table: string;
  readonly control: { readonly fertilised: number; readonly of: number } | null;
}

/** What one permit allowed and what was done under it. */
export interface PermitFigures {
  readonly number: string;
  readonly authority: string | null;
  readonly from: string;
  readonly to: string;
  readonly reportDue: string | null;
  readonly site: string | null;
  readonly adults: number;
  readonly eggsPlanted: number;
  readonly boxesPlanted: number;
  readonly boxesLifted: number;
  readonly counted: number;
  readonly dead: number;
  readonly empty: number;
}

export interface Done {
  readonly sites: number;
  readonly boxes: number;
  readonly lots: number;
  readonly females: number;
  readonly males: number;
  readonly eggs: number;
  readonly planted: number;
  readonly visits: number;
  /** Names written down on visits and plantings, each once. */
  readonly people: number;
  /** Null where nobody wrote hours down. */
  readonly hours: number | null;
  readonly visitsWithHours: number;
}

/** Every figure of a season's report, in no language: what closing a season keeps. Days are day numbers. */
export interface ReportFigures {
  readonly method: number;
  readonly season: string;
  readonly group: string;
  readonly asOf: number;
  readonly done: Done;
  readonly lots: readonly LotFigures[];
  readonly winters: readonly BoxWinter[];
  /** Of this season and of those closed before, site by site; absent where it was closed before it was kept. */
  readonly siteWinters?: readonly SiteWinter[];
  readonly spells: readonly Spell[];
  readonly spellsJudged: boolean;
  /** The group's standard time, minutes ahead of UTC: spells are told in its days. Seasons closed before 27 November 2026 have none. */
  readonly offset?: number;
  readonly lifting: {
    readonly rule: string | null;
    readonly approved: { readonly by: string; readonly days: readonly string[] } | null;
    readonly lifted: readonly { readonly box: string; readonly site: string; readonly day: number }[];
    readonly out: readonly string[];
  };
  readonly survival: Survival;
  readonly rightness: Rightness;
  readonly stock: readonly TableAdjustment[];
  readonly permits: readonly PermitFigures[];
  readonly tables: readonly DevelopmentTable[];
}

/** What a report is made from. */
export interface ReportSources {
  readonly door: SeasonDoor;
  readonly season: Season;
  readonly tables: readonly DevelopmentTable[];
  /** Null where nothing judges spells. */
  readonly spells: readonly Spell[] | null;
  /** Seasons that were closed, this one left out. */
  readonly closed: readonly YearBoxes[];
  /** Their winters. */
  readonly winters: readonly SiteWinter[];
}

export async function reportFigures(from: ReportSources): Promise<ReportFigures> {
  const { door, season, tables, closed } = from;
  const last = await door.forecast({ box: null, asOf: null });
  const id = seasonId(season) ?? '-';
  const counts = boxCounts(season);
  const years = yearsOf(season, counts, closed, id);
  const used = new Set(season.lots.map(({ table }) => table));
  const silt = new Map(counts.map(({ box, siltMm }) => [box, siltMm]));
  const begun = Math.min(...season.lots.map(({ fertilised }) => epochMillis(fertilised)));
  // The group keeps spells for ever, and boxes keep their names from winter to winter.
  const spells = from.spells?.filter(({ to }) => to >= begun) ?? null;
  const winters = boxWinters(season, last, silt, spells ?? []);
  const survival = survivalOf(season, counts, years);
  const mine = { season: id, winters, spells: spells ?? [], spellsJudged: spells !== null, survival };
  return {
    method: REPORT_METHOD,
    season: id,
    group: season.group.name,
    asOf: last.asOf,
    done: done(season, last.asOf),
    lots: lots(season),
    winters,
    siteWinters: [...from.winters.filter((one) => one.season !== id), ...siteWinters(mine)],
    spells: mine.spells,
    spellsJudged: mine.spellsJudged,
    offset: standardOffset(season.group.zone),
    lifting: lifting(season, last),
    survival,
    rightness: await rightness(
      door,
      last,
      Number(id.slice(0, 4)) || new Date(last.asOf * DAY).getUTCFullYear(),
    ),
    stock: stockAdjustments(season, last, tables),
    permits: season.permits.map((permit) => permitFigures(season, permit)),
    tables: tables.filter((table) => used.has(table.id)),
  };
}

/** A season told twice counts once: as it was closed, else as its own tallies say, else as a table told it. */
function yearsOf(
  season: Season,
  counts: ReturnType<typeof boxCounts>,
  closed: readonly YearBoxes[],
  id: string,
): YearBoxes[] {
  const mine = counts.filter(({ gone, empty }) => !gone && empty !== null);
  const boxes = new Map<string, { seen: number; of: number }>();
  for (const { box, empty, of } of mine) {
    const known = boxes.get(box) ?? { seen: 0, of: 0 };
    boxes.set(box, { seen: known.seen + (empty ?? 0), of: known.of + of });
  }
  const all: YearBoxes[] = [
    ...closed.filter((year) => year.season !== id),
    ...(boxes.size === 0 ? [] : [{ season: id, source: 'tallies' as const, boxes: [...boxes.values()] }]),
  ];
  const told = new Set(all.map((year) => year.season));
  return [...all, ...earlierYears(season).filter((year) => !told.has(year.season))].sort((a, b) =>
    a.season < b.season ? -1 : 1,
  );
}

function done(season: Season, asOf: number): Done {
  // A report looks back from its day: a visit made later is none of it.
  const visits = season.visits.filter(({ when }) => Date.parse(`${when.date}T00:00Z`) / 86_400_000 <= asOf);
  const names = [
    ...visits.flatMap(({ who }) => who),
    ...season.boxes.flatMap(({ planting }) => planting?.who ?? []),
    ...season.tallies.flatMap(({ counter }) => counter ?? []),
  ];
  const hours = visits.flatMap((visit) => visit.hours ?? []);
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  return {
    sites: new Set(season.boxes.map(({ site }) => site)).size,
    boxes: season.boxes.length,
    lots: season.lots.length,
    females: season.broodstock.filter(({ sex }) => sex === 'female').length,
    males: season.broodstock.filter(({ sex }) => sex === 'male').length,
    eggs: sum(season.lots.map(({ eggs }) => eggs)),
    planted: sum(season.boxes.flatMap(({ fills }) => fills.map(({ eggs }) => eggs))),
    visits: visits.length,
    people: new Set(names.map((name) => name.trim().toLowerCase())).size,
    hours: hours.length === 0 ? null : sum(hours),
    visitsWithHours: hours.length,
  };
}

function lots(season: Season): LotFigures[] {
  return season.lots.map((lot) => {
    const control = lot.control;
    return {
      lot: lot.id,
      fertilised: lot.fertilised.slice(0, 10),
      parents: lot.parents,
      eggs: lot.eggs,
      planted: season.boxes.reduce(
        (sum, { fills }) => fills.reduce((all, fill) => (fill.lot === lot.id ? all + fill.eggs : all), sum),
        0,
      ),
      counted: lot.counted,
      table: lot.table,
      control:
        control === null || control.fertilised === null
          ? null
          : { fertilised: control.fertilised, of: control.of ?? control.eggs },
    };
  });
}

function lifting(season: Season, last: Forecast): ReportFigures['lifting'] {
  const offset = standardOffset(season.group.zone) * 60_000;
  const approved = season.lifting?.approved ?? null;
  const lifted = season.boxes.flatMap((box) =>
    box.lifted === null
      ? []
      : [{ box: box.id, site: box.site, day: Math.floor((epochMillis(box.lifted) + offset) / DAY) }],
  );
  return {
    rule: season.lifting?.rule ?? null,
    approved: approved === null ? null : { by: approved.by, days: approved.days.map(({ date }) => date) },
    lifted: lifted.filter(({ day }) => day <= last.asOf),
    out: boxesOut(season),
  };
}

/** Boxes that were neither lifted nor found gone. */
export function boxesOut(season: Season): string[] {
  const over = new Set(season.tallies.map(({ box }) => box));
  // One that got no eggs was never put in.
  return season.boxes.flatMap(({ id, lifted, fills }) =>
    fills.length > 0 && lifted === null && !over.has(id) ? [id] : [],
  );
}

function permitFigures(season: Season, permit: Season['permits'][number]): PermitFigures {
  const { number, authority, from, to, reportDue, site } = permit;
  const within = (moment: string | null) =>
    moment !== null && moment.slice(0, 10) >= from && moment.slice(0, 10) <= to;
  const here = season.boxes.filter((box) => site === null || box.site === site);
  const planted = here.filter(({ fills }) => fills.some((fill) => within(fill.planted)));
  const ids = new Set(here.map(({ id }) => id));
  const counts = boxCounts(season).filter(({ box }) => ids.has(box));
  const talliedWithin = new Set(season.tallies.filter(({ when }) => within(when.date)).map(({ box }) => box));
  const counted = counts.filter(({ box, gone }) => talliedWithin.has(box) && !gone);
  const sum = (of: (count: (typeof counted)[number]) => number | null) =>
    counted.reduce((all, one) => all + (of(one) ?? 0), 0);
  return {
    number,
    authority,
    from,
    to,
    reportDue,
    site,
    adults: season.broodstock.filter(({ when }) => within(when?.date ?? null)).length,
    eggsPlanted: planted.reduce(
      (all, { fills }) => fills.reduce((eggs, fill) => (within(fill.planted) ? eggs + fill.eggs : eggs), all),
      0,
    ),
    boxesPlanted: planted.length,
    boxesLifted: here.filter(({ lifted }) => within(lifted)).length,
    counted: sum(({ empty, dead, alive }) => (empty ?? 0) + (dead ?? 0) + (alive ?? 0)),
    dead: sum(({ dead }) => dead),
    empty: sum(({ empty }) => empty),
  };
}
