import { talliedStages } from '../season/index.js';
import { measures } from '../survival/index.js';
import { isoDay, isoInstant } from '../words/index.js';
import type { ReportFigures } from './figures.js';
import type { DataWords } from './words.js';

/** A code of the data's words that asks for no figures. */
type PlainWord = {
  [Code in keyof DataWords]: DataWords[Code] extends Record<never, never> ? Code : never;
}[keyof DataWords];
type Cell = string | number | boolean | null;

/** One column: its name for programs, what it means, its unit, and its value in a row. */
export interface DataColumn {
  readonly name: string;
  readonly type: 'string' | 'integer' | 'number' | 'boolean' | 'date' | 'datetime';
  /** Null where a unit has no meaning. */
  readonly unit: string | null;
  readonly means: PlainWord | { readonly code: 'data-at-least' | 'data-at-most'; readonly stage: string };
}

export interface Resource {
  readonly name: string;
  readonly about: PlainWord;
  readonly columns: readonly DataColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

const column = (
  name: string,
  means: DataColumn['means'],
  type: DataColumn['type'] = 'string',
  unit: string | null = null,
): DataColumn => ({ name, means, type, unit });
const share = (name: string, means: PlainWord) => column(name, means, 'number', '1');
const eggs = (name: string, means: DataColumn['means']) => column(name, means, 'number', 'eggs');
const season = column('season', 'data-season');
const box = column('box', 'data-box');
const site = column('site', 'data-site');
const lot = column('lot', 'data-lot');
const day = (at: number | null): string | null => (at === null ? null : isoDay(at));

/** The report's figures as tables for other programs. No coordinates: where wild fish lie is not everybody's business. */
export function resources(figures: ReportFigures): Resource[] {
  return [
    boxes(figures),
    groups(figures),
    winters(figures),
    windows(figures),
    spells(figures),
    lots(figures),
    years(figures),
    permits(figures),
  ];
}

function boxes({ season: id, survival }: ReportFigures): Resource {
  return {
    name: 'boxes',
    about: 'data-boxes',
    columns: [
      season,
      box,
      column('part', 'data-part'),
      site,
      lot,
      eggs('planted', 'data-planted'),
      column('found', 'data-found', 'boolean'),
      eggs('empty', 'data-empty'),
      eggs('dead', 'data-dead'),
      eggs('alive', 'data-alive'),
      column('counters', 'data-counters', 'integer', 'people'),
      ...talliedStages.flatMap((stage) => [
        eggs(`${stage.replace('-', '_')}_at_least`, { code: 'data-at-least', stage }),
        eggs(`${stage.replace('-', '_')}_at_most`, { code: 'data-at-most', stage }),
      ]),
      share('out_share', 'data-share'),
      share('out_from', 'data-from'),
      share('out_to', 'data-to'),
      share('of_fertilised', 'data-of-fertilised'),
      column('silt', 'data-silt', 'number', 'mm'),
    ],
    rows: survival.boxes.map(({ count, shares, ofFertilised }) => [
      id,
      count.box,
      count.part,
      count.site,
      count.lot,
      count.of,
      !count.gone,
      count.empty,
      count.dead,
      count.alive,
      count.counters,
      ...talliedStages.flatMap((stage) => [
        count.reached?.[stage].lower ?? null,
        count.reached?.[stage].upper ?? null,
      ]),
      shares.out?.share ?? null,
      shares.out?.from ?? null,
      shares.out?.to ?? null,
      ofFertilised?.share ?? null,
      count.siltMm,
    ]),
  };
}

function groups({ season: id, survival }: ReportFigures): Resource {
  return {
    name: 'groups',
    about: 'data-groups',
    columns: [
      season,
      column('by', 'data-by'),
      column('name', 'data-name'),
      column('measure', 'data-measure'),
      column('boxes', 'data-group-boxes', 'integer', 'boxes'),
      column('gone', 'data-gone', 'integer', 'boxes'),
      eggs('seen', 'data-seen'),
      eggs('planted', 'data-of'),
      share('share', 'data-share'),
      share('from', 'data-from'),
      share('to', 'data-to'),
      column('method', 'data-method'),
      share('lowest', 'data-lowest'),
      share('highest', 'data-highest'),
      share('share_with_gone', 'data-share-with-gone'),
      share('of_fertilised', 'data-of-fertilised'),
    ],
    rows: survival.groups
      .toSorted((a, b) => measures.indexOf(b.measure) - measures.indexOf(a.measure))
      .map(({ by, name, measure, found, withGone, gone, ofFertilised }) => [
        id,
        by,
        name,
        measure,
        found?.boxes ?? 0,
        gone,
        found?.seen ?? null,
        found?.of ?? null,
        found?.share ?? null,
        found?.from ?? null,
        found?.to ?? null,
        found?.method ?? null,
        found?.lowest ?? null,
        found?.highest ?? null,
        withGone?.share ?? null,
        ofFertilised?.share ?? null,
      ]),
  };
}

function winters({ season: id, winters: all, spellsJudged }: ReportFigures): Resource {
  const judged = (value: number) => (spellsJudged ? value : null);
  return {
    name: 'winters',
    about: 'data-winters',
    columns: [
      season,
      box,
      site,
      column('thermal_units', 'data-units', 'number', '°C·d'),
      column('days_at_freezing', 'data-freezing', 'integer', 'd'),
      column('coldest_day', 'data-coldest', 'number', '°C'),
      column('warmest_day', 'data-warmest', 'number', '°C'),
      column('days_measured', 'data-measured', 'integer', 'd'),
      column('days_filled', 'data-filled', 'integer', 'd'),
      column('days_projected', 'data-projected', 'integer', 'd'),
      column('spells', 'data-spell-count', 'integer', 'spells'),
      column('spell_hours', 'data-spell-hours', 'number', 'h'),
      column('exposures', 'data-exposures', 'integer', 'exposures'),
      column('gauge_events', 'data-gauge', 'integer', 'events'),
      column('depth', 'data-depth', 'number', 'm'),
      column('velocity', 'data-velocity', 'number', 'm/s'),
      column('silt', 'data-silt', 'number', 'mm'),
    ],
    rows: all.map((one) => [
      id,
      one.box,
      one.site,
      one.thermalUnits,
      one.atFreezing,
      one.lowest,
      one.highest,
      one.days.measured,
      one.days.filled,
      one.days.projected,
      judged(one.spells),
      judged(one.spellHours),
      judged(one.exposures),
      judged(one.gaugeEvents),
      one.depthM,
      one.velocityMs,
      one.siltMm,
    ]),
  };
}

function windows({ season: id, rightness }: ReportFigures): Resource {
  return {
    name: 'windows',
    about: 'data-windows',
    columns: [
      season,
      site,
      box,
      lot,
      column('stage', 'data-stage'),
      column('as_of', 'data-as-of', 'date'),
      column('p10', 'data-p10', 'date'),
      column('p50', 'data-p50', 'date'),
      column('p90', 'data-p90', 'date'),
      column('by_record', 'data-by-record', 'date'),
    ],
    rows: rightness.stages.flatMap((one) =>
      one.stood.map(({ asOf, p10, p50, p90 }) => [
        id,
        one.site,
        one.box,
        one.lot,
        one.stage,
        day(asOf),
        day(p10),
        day(p50),
        day(p90),
        day(one.byRecord),
      ]),
    ),
  };
}

function spells({ season: id, spells: all }: ReportFigures): Resource {
  return {
    name: 'spells',
    about: 'data-spells',
    columns: [
      season,
      column('spell', 'data-spell'),
      column('kind', 'data-kind'),
      column('severity', 'data-severity'),
      column('certainty', 'data-certainty'),
      column('from', 'data-spell-from', 'datetime'),
      column('to', 'data-spell-to', 'datetime'),
      column('hours', 'data-hours', 'number', 'h'),
      column('peak', 'data-peak', 'number', '°C'),
      column('boxes', 'data-spell-boxes'),
    ],
    rows: all.map((one) => [
      id,
      one.id,
      one.kind,
      one.severity,
      one.certainty,
      isoInstant(one.from),
      isoInstant(one.to),
      one.hours,
      one.peak,
      one.boxes.join(' '),
    ]),
  };
}

function lots({ season: id, lots: all }: ReportFigures): Resource {
  return {
    name: 'lots',
    about: 'data-lots',
    columns: [
      season,
      lot,
      column('fertilised', 'data-fertilised', 'date'),
      column('parents', 'data-parents'),
      eggs('eggs', 'data-eggs'),
      eggs('planted', 'data-lot-planted'),
      column('counted', 'data-counted-how'),
      column('table', 'data-table'),
      eggs('control_fertilised', 'data-control-fertilised'),
      eggs('control_looked_at', 'data-control-of'),
    ],
    rows: all.map((one) => [
      id,
      one.lot,
      one.fertilised,
      one.parents.join(' '),
      one.eggs,
      one.planted,
      one.counted,
      one.table,
      one.control?.fertilised ?? null,
      one.control?.of ?? null,
    ]),
  };
}

function years({ survival }: ReportFigures): Resource {
  return {
    name: 'years',
    about: 'data-years',
    columns: [
      season,
      column('source', 'data-year-source'),
      column('boxes', 'data-group-boxes', 'integer', 'boxes'),
      eggs('seen', 'data-seen'),
      eggs('planted', 'data-of'),
      share('share', 'data-share'),
      share('from', 'data-from'),
      share('to', 'data-to'),
    ],
    rows: survival.years.map(({ season: year, source, boxes: of }) => {
      const found = survival.groups.find(({ by, name }) => by === 'year' && name === year)?.found;
      return [
        year,
        source,
        of.length,
        found?.seen ?? null,
        found?.of ?? null,
        found?.share ?? null,
        found?.from ?? null,
        found?.to ?? null,
      ];
    }),
  };
}

function permits({ season: id, permits: all }: ReportFigures): Resource {
  return {
    name: 'permits',
    about: 'data-permits',
    columns: [
      season,
      column('permit', 'data-permit'),
      column('authority', 'data-authority'),
      column('valid_from', 'data-valid-from', 'date'),
      column('valid_to', 'data-valid-to', 'date'),
      column('report_due', 'data-due', 'date'),
      site,
      column('adults', 'data-adults', 'integer', 'fish'),
      eggs('eggs_planted', 'data-permit-planted'),
      column('boxes_planted', 'data-permit-boxes', 'integer', 'boxes'),
      column('boxes_lifted', 'data-permit-lifted', 'integer', 'boxes'),
      eggs('counted', 'data-permit-counted'),
      eggs('empty', 'data-empty'),
      eggs('dead', 'data-dead'),
    ],
    rows: all.map((one) => [
      id,
      one.number,
      one.authority,
      one.from,
      one.to,
      one.reportDue,
      one.site,
      one.adults,
      one.eggsPlanted,
      one.boxesPlanted,
      one.boxesLifted,
      one.counted,
      one.empty,
      one.dead,
    ]),
  };
}
