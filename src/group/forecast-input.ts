import type { DaySeries, StationDays } from '../../forecasting/day-series.js';
import type { BeforePlanting, BoxInput, ForecastInput, LotInput } from '../../forecasting/forecast.js';
import type { BoxCheck } from '../../forecasting/index.js';
import type { StageObservation } from '../../forecasting/observations/likelihood.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber, DayTime } from '../../forecasting/units.js';
import type { WaterSighting } from '../../forecasting/water.js';
import { blockedDays } from '../autumn/index.js';
import {
  type Box,
  epochMillis,
  type LocalDate,
  type Lot,
  type Moment,
  type Observed,
  type Season,
  standardOffset,
} from '../season/index.js';
import { isoDay } from '../words/index.js';
import { hatchSeen, LOOKED_AT, leastSeen, openings } from './seen.js';

const DAY = 86_400_000;

/** Where a logger reads the eggs' own water. */
const WITH_EGGS: readonly string[] = ['in-box', 'tied-to-box', 'gravel'];

/** A logger that states no accuracy is taken to hold this, °C (ours: what most stream loggers state). */
export const USUAL_ACCURACY = 0.2;

/** The same season always draws the same traces. */
const SEED = 20_260_215;

/**
 * The season and the kept days of its stations as the forecast takes them. `days` holds what each station has
 * measured, to the as-of day and not beyond.
 */
export function forecastInput(
  season: Season,
  days: ReadonlyMap<string, DaySeries>,
  tables: ReadonlyMap<string, DevelopmentTable>,
  asOf: DayNumber,
  box: string | null,
): ForecastInput {
  const offset = standardOffset(season.group.zone);
  const dayTime = (moment: Moment): DayTime => (epochMillis(moment) + offset * 60_000) / DAY;
  const boxes = season.boxes.filter(({ id }) => box === null || id === box);
  return {
    asOf,
    stations: stationDays(season, days),
    sightings: sightings(season, dayTime, asOf),
    curve: season.seasonalCurve,
    lots: season.lots.map((lot) => lotInput(lot, season, tables, dayTime)),
    boxes: boxes.map((one) => boxInput(one, season, dayTime)),
    observations: [
      ...observations(season),
      ...openings(season).flatMap((one) => hatchSeen(one, season) ?? []),
    ],
    blocked: blockedDays(season, isoDay(asOf), isoDay(asOf)).map(({ from, to, site }) => ({
      from: dayNumber(from),
      to: dayNumber(to),
      site,
    })),
    oldRule: season.oldRule,
    seed: SEED,
    checks: checks(season),
  };
}

/** Every station of the season that has measured temperature. */
export function stationDays(season: Season, days: ReadonlyMap<string, DaySeries>): StationDays[] {
  return season.stations.flatMap((station) => {
    const measured = days.get(station.id);
    if (measured === undefined) return [];
    return [
      {
        station: station.id,
        kind: station.kind,
        latitude: station.latitude,
        longitude: station.longitude,
        accuracy: accuracy(season, station),
        reports: station.reports,
        days: measured,
      },
    ];
  });
}

/** The worst accuracy that a logger deployed at the station states, else the station's own, else the usual. */
export function accuracy(season: Season, station: Season['stations'][number]): number {
  const loggers = new Set(
    season.deployments.filter((deployment) => deployment.station === station.id).map(({ logger }) => logger),
  );
  const stated = season.loggers
    .filter(({ id, accuracy }) => loggers.has(id) && accuracy !== null)
    .map(({ accuracy }) => accuracy ?? 0);
  return stated.length > 0 ? Math.max(...stated) : (station.accuracy ?? USUAL_ACCURACY);
}

function lotInput(
  lot: Lot,
  season: Season,
  tables: ReadonlyMap<string, DevelopmentTable>,
  dayTime: (moment: Moment) => DayTime,
): LotInput {
  const table = tables.get(lot.table);
  if (table === undefined)
    throw new RangeError(`lot ${lot.id} names table ${lot.table}, which does not exist`);
  return { lot: lot.id, fertilised: dayTime(lot.fertilised), table, before: before(lot, season) };
}

/** Where the eggs were before planting; "kept with another lot" is followed to where that one was. */
function before(lot: Lot, season: Season): BeforePlanting {
  if (lot.before.kind !== 'lot') return lot.before;
  const { lot: other } = lot.before;
  const companion = season.lots.find(({ id }) => id === other);
  return companion === undefined ? { kind: 'none' } : before(companion, season);
}

/** A local date as a day number: the calendar's own, whatever the offset. */
function dayNumber(date: LocalDate): DayNumber {
  return Date.parse(`${date}T00:00Z`) / DAY;
}

function boxInput(box: Box, season: Season, dayTime: (moment: Moment) => DayTime): BoxInput {
  const siteStation = season.sites.find(({ id }) => id === box.site)?.station ?? null;
  const gone = season.tallies.find((one) => one.box === box.id && one.found === 'not-found');
  return {
    box: box.id,
    site: box.site,
    fills: box.fills.map(({ lot, eggs, planted }) => ({ lot, eggs, planted: dayTime(planted) })),
    lifted: box.lifted === null ? null : dayTime(box.lifted),
    ...(gone === undefined ? {} : { notFound: dayNumber(gone.when.date) + 1 }),
    stations: box.stations.length > 0 || siteStation === null ? box.stations : [siteStation],
    withEggs: season.deployments
      .filter((deployment) => WITH_EGGS.includes(deployment.lay))
      .map(({ station }) => station),
  };
}

/** The lot whose eggs were looked at: as stated, or the only one of its box. */
export function lotSeen({ lot, box }: Pick<Observed, 'lot' | 'box'>, season: Season): string | null {
  if (lot !== null) return lot;
  const lots = new Set(season.boxes.find(({ id }) => id === box)?.fills.map((fill) => fill.lot));
  const [only] = lots;
  return lots.size === 1 && only !== undefined ? only : null;
}

/** Stages seen in lots. */
function observations(season: Season): StageObservation[] {
  return season.observed.flatMap((one): StageObservation[] => {
    const { date, box, stage, seen, of } = one;
    const lot = lotSeen(one, season);
    if (lot === null) return [];
    const counted = of !== null && seen !== null;
    const figures = counted
      ? { seen, upTo: seen, of }
      : { seen: leastSeen(stage), upTo: LOOKED_AT, of: LOOKED_AT };
    return [{ lot, box, stage, day: dayNumber(date), ...figures }];
  });
}

/** Boxes opened and found so far on: put back, or lifted and counted. Both say what share had not left. */
function checks(season: Season): BoxCheck[] {
  return openings(season).map(({ box, date, alive, empty }) => ({ box, day: dayNumber(date), alive, empty }));
}

/** Hand-thermometer readings and ice seen on visits, to the as-of day. */
function sightings(season: Season, dayTime: (moment: Moment) => DayTime, asOf: DayNumber): WaterSighting[] {
  return season.visits.flatMap((visit): WaterSighting[] => {
    const station = visit.station ?? season.sites.find(({ id }) => id === visit.site)?.station ?? null;
    const day = dayNumber(visit.when.date);
    if (day > asOf) return [];
    const hand = visit.hand.flatMap((reading): WaterSighting[] => {
      const at = reading.station ?? station;
      const on = reading.at === null ? day : Math.floor(dayTime(reading.at));
      return at === null
        ? []
        : [{ kind: 'hand', station: at, day: on, celsius: reading.celsius, accuracy: reading.accuracy }];
    });
    const ice = { on: 'ice-on', out: 'ice-out', under: 'under-ice' } as const;
    if (station === null || visit.ice === null || visit.ice === 'none') return hand;
    return [...hand, { kind: ice[visit.ice], station, day }];
  });
}
