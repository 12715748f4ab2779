import { createHash } from 'node:crypto';
import { kilometresBetween } from '../../../forecasting/water-parts/kilometres.js';
import { epochMillis, type Season } from '../../season/index.js';
import type { DeploymentEntry, JudgedYear, Load, Quantity, Station } from '../../store/index.js';
import { accuracy } from '../forecast-input.js';
import { laidLoggers } from './laid.js';

/** Raised where a check changes, so that everything is judged again. */
const CHECKS = 3;

/** Places beside which a record is judged, at most: the nearest. */
const NEIGHBOURS = 4;
const AIR_STATIONS = 2;

/** A year of a record that has readings, with what to judge it by. */
export interface YearToJudge extends JudgedYear {
  readonly from: number;
  readonly to: number;
  readonly readings: number;
  readonly neighbours: readonly string[];
  readonly air: readonly string[];
}

/** What the catalogue holds, as far as judging rests on it. */
export interface Standing {
  readonly season: Season;
  readonly stations: readonly Station[];
  readonly loads: readonly Load[];
  readonly deployments: readonly DeploymentEntry[];
}

/** The year from 1 August in which a moment lies, in the station's days. */
export function yearOf(at: number, offsetMinutes: number): number {
  const there = new Date(at + offsetMinutes * 60_000);
  return there.getUTCMonth() >= 7 ? there.getUTCFullYear() : there.getUTCFullYear() - 1;
}

/** First and last instant of a year. */
export function spanOf(year: number, offsetMinutes: number): { readonly from: number; readonly to: number } {
  const start = (one: number) => Date.UTC(one, 7, 1) - offsetMinutes * 60_000;
  return { from: start(year), to: start(year + 1) - 1 };
}

/**
 * Every year of every record, newest first, and what its judgement would rest on now: in steps of a station, for a thread
 * that others wait for.
 */
export function* yearsToJudge(standing: Standing): Generator<undefined, YearToJudge[]> {
  const brought = broughtBy(standing.loads);
  const found: YearToJudge[] = [];
  for (const station of standing.stations) {
    found.push(...yearsAt(station, standing, brought));
    yield;
  }
  return found.sort((a, b) => b.year - a.year);
}

function yearsAt(
  station: Station,
  { season, stations, deployments }: Standing,
  brought: ReadonlyMap<string, Brought[]>,
): YearToJudge[] {
  const beside = besides(station, stations);
  const named = season.stations.find(({ id }) => id === station.id);
  return (['temperature', 'level', 'discharge'] as const).flatMap((quantity) => {
    const own = brought.get(`${station.id} ${quantity}`) ?? [];
    return yearsOf(station, quantity, own, season).map((year) => {
      const { from, to } = spanOf(year, station.offsetMinutes);
      const there = (id: string) =>
        (brought.get(`${id} temperature`) ?? []).filter((one) => one.last >= from && one.first <= to);
      const nearby = (ids: readonly string[], most: number) => {
        const found: string[] = [];
        if (quantity !== 'temperature') return found;
        for (const id of ids) {
          if (found.length === most) break;
          if (there(id).length > 0) found.push(id);
        }
        return found;
      };
      const neighbours = nearby(beside.water, NEIGHBOURS);
      const air = nearby(beside.air, AIR_STATIONS);
      const mine = own.filter((one) => one.span === 'instant' && one.last >= from && one.first <= to);
      const restsOn = [
        CHECKS,
        station.kind,
        station.offsetMinutes,
        mine.map(({ load }) => load),
        [...neighbours, ...air].map((id) => [id, there(id).map(({ load }) => load)]),
        deployments.filter(
          (one) =>
            (one.station === station.id || neighbours.includes(one.station)) &&
            one.from <= to &&
            (one.to === null || one.to >= from),
        ),
        season.rulings.filter(
          (one) =>
            one.station === station.id &&
            one.quantity === quantity &&
            epochMillis(one.from) <= to &&
            epochMillis(one.to) >= from,
        ),
        named === undefined ? null : accuracy(season, named),
        laidLoggers(season, { station: station.id, from, to }),
      ];
      return {
        station: station.id,
        quantity,
        year,
        restsOn: createHash('sha256').update(JSON.stringify(restsOn)).digest('base64url').slice(0, 22),
        from,
        to,
        readings: mine.reduce((sum, one) => sum + inside(one, from, to), 0),
        neighbours,
        air,
      };
    });
  });
}

/** The years whose judgement rests on something else by now, and those that have nothing left to judge. */
export function staleYears(
  wanted: readonly YearToJudge[],
  judged: readonly JudgedYear[],
): { readonly stale: readonly YearToJudge[]; readonly gone: readonly JudgedYear[] } {
  const key = (one: JudgedYear) => `${one.station} ${one.quantity} ${one.year}`;
  const known = new Map(judged.map((one) => [key(one), one.restsOn]));
  const keys = new Set(wanted.map(key));
  return {
    stale: wanted.filter((one) => known.get(key(one)) !== one.restsOn),
    gone: judged.filter((one) => !keys.has(key(one))),
  };
}

interface Brought {
  readonly load: number;
  readonly span: 'instant' | 'day';
  readonly first: number;
  readonly last: number;
  readonly readings: number;
}

function broughtBy(loads: readonly Load[]): Map<string, Brought[]> {
  const found = new Map<string, Brought[]>();
  for (const { load, withdrawn, series } of loads) {
    if (withdrawn !== null) continue;
    for (const { station, quantity, span, first, last, readings } of series) {
      const key = `${station} ${quantity}`;
      const before = found.get(key);
      const one = { load, span, first, last, readings };
      if (before === undefined) found.set(key, [one]);
      else before.push(one);
    }
  }
  return found;
}

/** Readings of a load in a stretch, as if they lay evenly. */
function inside({ first, last, readings }: Brought, from: number, to: number): number {
  const share = (Math.min(last, to) - Math.max(first, from)) / Math.max(1, last - first);
  return Math.ceil(readings * Math.max(0, Math.min(1, share)));
}

function yearsOf(
  { id, offsetMinutes }: Station,
  quantity: Quantity,
  own: readonly Brought[],
  season: Season,
): number[] {
  const years = new Set<number>();
  for (const { span, first, last } of own) {
    if (span !== 'instant') continue;
    for (let year = yearOf(first, offsetMinutes); year <= yearOf(last, offsetMinutes); year++)
      years.add(year);
  }
  // What a logger's memory holds is known before its first reading.
  if (quantity === 'temperature') {
    for (const one of season.deployments)
      if (one.station === id) years.add(yearOf(epochMillis(one.from), offsetMinutes));
  }
  return [...years];
}

/** Other stations by distance; those whose place nobody stated come after them. */
function besides(
  station: Station,
  stations: readonly Station[],
): { readonly water: readonly string[]; readonly air: readonly string[] } {
  const others = stations
    .filter(({ id }) => id !== station.id)
    .map((one) => ({ one, far: kilometresBetween(station, one) ?? Number.POSITIVE_INFINITY }))
    .sort((a, b) => a.far - b.far || (a.one.id < b.one.id ? -1 : 1));
  const ofKind = (kinds: readonly string[]) =>
    others.filter(({ one }) => kinds.includes(one.kind)).map(({ one }) => one.id);
  return { water: ofKind(['stream', 'gravel', 'gauge']), air: ofKind(['air']) };
}
