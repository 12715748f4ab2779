import { z } from 'zod';
import { checkKinds } from '../../../forecasting/quality/finding.js';
import type { StoredFinding } from '../catalogue.js';
import type {
  ClosedSeasonRow,
  DeploymentEntry,
  FlagEntry,
  JudgedYear,
  Load,
  LoadedSeries,
  SeasonRow,
  Series,
  Station,
} from '../entries.js';
import type { Row } from './sql.js';

const kind = z.enum(['stream', 'gravel', 'air', 'tank', 'gauge']);
const quantity = z.enum(['temperature', 'level', 'discharge']);
const span = z.enum(['instant', 'day']);
const checks = z.array(z.object({ at: z.number(), add: z.number() }));
const flag = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(9)]);

export function stationOf(row: Row): Station {
  return {
    number: row.number('number'),
    id: row.text('id'),
    kind: kind.parse(row.text('kind')),
    zone: row.text('zone'),
    offsetMinutes: row.number('offset_minutes'),
    latitude: row.numberOrNull('latitude'),
    longitude: row.numberOrNull('longitude'),
    inSeason: row.yes('in_season'),
  };
}

export function seriesOf(row: Row): Series {
  return {
    number: row.number('number'),
    station: row.number('station'),
    quantity: quantity.parse(row.text('quantity')),
    span: span.parse(row.text('span')),
  };
}

export function deploymentOf(row: Row): DeploymentEntry {
  return {
    station: row.text('id'),
    logger: row.textOrNull('logger'),
    from: row.number('from_ms'),
    to: row.numberOrNull('to_ms'),
    zone: row.textOrNull('zone'),
    clock: checks.parse(JSON.parse(row.text('clock'))),
    temperature: checks.parse(JSON.parse(row.text('temperature'))),
  };
}

export function loadOf(row: Row, series: readonly LoadedSeries[]): Load {
  const withdrawnAt = row.numberOrNull('withdrawn_at');
  return {
    load: row.number('number'),
    file: row.text('file'),
    sha256: row.text('sha256'),
    bytes: row.number('bytes'),
    by: row.text('made_by'),
    at: row.number('made_at'),
    withdrawn: withdrawnAt === null ? null : { at: withdrawnAt, by: row.textOrNull('withdrawn_by') ?? '' },
    series,
    understood: row.text('understood'),
  };
}

export function loadedSeriesOf(row: Row): LoadedSeries {
  return {
    station: row.text('id'),
    quantity: quantity.parse(row.text('quantity')),
    span: span.parse(row.text('span')),
    readings: row.number('readings'),
    first: row.number('first_ms'),
    last: row.number('last_ms'),
    min: row.number('min_value'),
    max: row.number('max_value'),
    overlapping: row.number('overlapping'),
    differing: row.number('differing'),
    largestDifference: row.number('largest_difference'),
  };
}

export function closedOf(row: Row): ClosedSeasonRow {
  return {
    season: row.text('season'),
    version: row.number('season_version'),
    method: row.number('method'),
    by: row.text('made_by'),
    at: row.number('made_at'),
  };
}

export function seasonOf(row: Row): SeasonRow {
  return {
    version: row.number('version'),
    text: row.text('text'),
    by: row.text('made_by'),
    at: row.number('made_at'),
  };
}

/** A figure that was no number when it was kept is none when it is read: one row never stops a page. */
const figures = z.record(
  z.string(),
  z
    .number()
    .nullable()
    .transform((figure) => figure ?? Number.NaN),
);
const checkKind = z.enum(checkKinds);
const offer = z.object({
  quantity: z.enum(['temperature', 'clock']),
  add: z.number(),
  course: z.enum(['check', 'step', 'rising']),
});

export function findingOf(row: Row): StoredFinding {
  const offered = row.textOrNull('offer');
  return {
    quantity: quantity.parse(row.text('quantity')),
    kind: checkKind.parse(row.text('kind')),
    from: row.number('from_ms'),
    to: row.number('to_ms'),
    flag: flag.parse(row.number('flag')),
    figures: figures.parse(JSON.parse(row.text('figures'))),
    offer: offered === null ? null : offer.parse(JSON.parse(offered)),
  };
}

export function judgedOf(row: Row): JudgedYear {
  return {
    station: row.text('id'),
    quantity: quantity.parse(row.text('quantity')),
    year: row.number('year'),
    restsOn: row.text('rests_on'),
  };
}

export function flagOf(row: Row): FlagEntry {
  return {
    station: row.text('id'),
    quantity: quantity.parse(row.text('quantity')),
    from: row.number('from_ms'),
    to: row.number('to_ms'),
    flag: flag.parse(row.number('flag')),
    set: row.text('set_by_test'),
    by: row.text('made_by'),
    at: row.number('made_at'),
    note: row.text('note'),
  };
}
