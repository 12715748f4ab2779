import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import type { Finding } from '../../forecasting/quality/finding.js';
import {
  type BoxAtRisk,
  type GaugeRecord,
  type LotAtRisk,
  type Lying,
  type SpellInput,
  UsualSwing,
  type WaterRecord,
} from '../../forecasting/spells/index.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { Water } from '../../forecasting/water.js';
import { accuracy } from '../group/forecast-input.js';
import { Slices } from '../group/slices.js';
import { type Box, epochMillis, type Lot, type Season, standardOffset } from '../season/index.js';
import type { Quantity, StationRecord } from '../store/index.js';

const DAY = 86_400_000;
/** What is read of gauges and air before the first eggs: what is usual needs a month. */
const BEFORE = 45 * DAY;

/** Where what a judging needs comes from. */
export interface RiverSource {
  record(station: string, quantity: Quantity, from: number, to: number): Promise<StationRecord>;
  /**
   * Once the checks have looked at all that came to these stations since a moment, where no write is under way; says
   * whether they have looked at all that came before it too.
   */
  checked(stations: readonly string[], since: number): Promise<boolean>;
  /** What quality checks found in a station's temperatures, as far as they have looked. */
  findings(station: string): Promise<readonly Finding[]>;
  /** Whether a day of a station (its own day number) could be known. */
  known(station: string): (day: number) => boolean;
  /** Kept days of every station, of all years. */
  days(): Promise<ReadonlyMap<string, DaySeries>>;
  /** Stations with readings of a quantity. */
  recorded(quantity: Quantity): Promise<ReadonlySet<string>>;
}

/** Records are read from so long before the first eggs. */
const BEFORE_EGGS = DAY;

/**
 * Has every record that eggs depend on checked since the first of them: what fails a check changes the days that
 * forecasts rest on. Whether the checks have looked at all that came to these stations by now, or are still at it.
 */
export async function checkedFirst(season: Season, river: RiverSource): Promise<boolean> {
  const recorded = await river.recorded('temperature');
  const wanted = season.stations.filter(({ id, kind }) => kind !== 'air' && recorded.has(id));
  const fertilised = season.boxes.flatMap(({ fills }) =>
    fills.flatMap(({ lot }) => season.lots.find(({ id }) => id === lot)?.fertilised ?? []),
  );
  const since = Math.min(...fertilised.map(epochMillis)) - BEFORE_EGGS;
  return river.checked(
    wanted.map(({ id }) => id),
    since,
  );
}

/** The eggs of a season, their possible winters, and all that is known of their water up to `now`. */
export async function spellInput(
  season: Season,
  forecast: Forecast,
  tables: ReadonlyMap<string, DevelopmentTable>,
  river: RiverSource,
  now: number,
): Promise<SpellInput> {
  const dayOffset = standardOffset(season.group.zone) * 60_000;
  const swings = swingsOf(season, await river.days());
  const boxes: BoxAtRisk[] = [];
  const slices = new Slices();
  for (const box of season.boxes) {
    boxes.push(...boxAtRisk(box, season, forecast, tables, swings));
    await slices.between();
  }
  const base = { now, dayOffset, boxes };
  const begin = Math.min(...boxes.flatMap(({ lots }) => lots.map(({ fertilised }) => fertilised)));
  if (!Number.isFinite(begin)) return { ...base, records: [], gauges: [] };
  const span = { from: begin - BEFORE, to: now + 1 };
  return {
    ...base,
    records: await waterRecords(season, boxes, river, { from: begin - BEFORE_EGGS, to: span.to }),
    gauges: await gaugeRecords(season, river, span),
  };
}

function boxAtRisk(
  box: Box,
  season: Season,
  forecast: Forecast,
  tables: ReadonlyMap<string, DevelopmentTable>,
  swings: (water: Water) => UsualSwing,
): BoxAtRisk[] {
  if (box.fills.length === 0) return [];
  const known = forecast.boxes.find((one) => one.box === box.id);
  const site = season.sites.find(({ id }) => id === box.site)?.station ?? null;
  const lots = [...new Set(box.fills.map(({ lot }) => lot))].flatMap((id): LotAtRisk[] => {
    const lot = season.lots.find((one) => one.id === id);
    const table = lot === undefined ? undefined : tables.get(lot.table);
    if (lot === undefined || table === undefined) return [];
    const fills = box.fills.filter((fill) => fill.lot === id);
    return [
      {
        lot: id,
        eggs: fills.reduce((sum, { eggs }) => sum + eggs, 0),
        table,
        fertilised: epochMillis(lot.fertilised),
        planted: Math.min(...fills.map(({ planted }) => epochMillis(planted))),
        hatchery: hatcheryOf(lot, season),
        draws: known?.lots.find((one) => one.lot === id)?.draws ?? null,
      },
    ];
  });
  return [
    {
      box: box.id,
      stations: box.stations.length > 0 || site === null ? box.stations : [site],
      lots,
      lifted: box.lifted === null ? null : epochMillis(box.lifted),
      water: known?.water ?? null,
      ...(known?.water == null ? {} : { swing: swings(known.water) }),
    },
  ];
}

/** A day's usual swing where a box lies: by its station's own days, those of what filled it, then the other streams'. */
function swingsOf(season: Season, days: ReadonlyMap<string, DaySeries>): (water: Water) => UsualSwing {
  const streams = season.stations.filter(({ kind }) => kind === 'stream' || kind === 'gauge');
  const made = new Map<string, UsualSwing>();
  return ({ station, stretches }) => {
    const order = [
      station,
      ...stretches.flatMap(({ sources }) => sources.map((source) => source.station)),
      ...streams.map(({ id }) => id),
    ];
    const swing =
      made.get(station) ?? new UsualSwing([...new Set(order)].flatMap((id) => days.get(id) ?? []));
    made.set(station, swing);
    return swing;
  };
}

/** The station that held a lot before planting; "kept with another lot" is followed to where that one was. */
function hatcheryOf({ before }: Lot, season: Season): string | null {
  if (before.kind === 'station') return before.station;
  if (before.kind !== 'lot') return null;
  const other = season.lots.find(({ id }) => id === before.lot);
  return other === undefined ? null : hatcheryOf(other, season);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

async function waterRecords(
  season: Season,
  boxes: readonly BoxAtRisk[],
  river: RiverSource,
  { from, to }: Span,
): Promise<WaterRecord[]> {
  const recorded = await river.recorded('temperature');
  const air = season.stations.find(({ kind, id }) => kind === 'air' && recorded.has(id));
  const wanted = new Set([
    ...boxes.flatMap(({ stations, lots }) => [
      ...stations,
      ...lots.flatMap(({ hatchery }) => hatchery ?? []),
    ]),
    ...(air === undefined ? [] : [air.id]),
  ]);
  const records: WaterRecord[] = [];
  const slices = new Slices();
  for (const station of season.stations) {
    await slices.between();
    const { id, kind, dayOffset } = station;
    if (!wanted.has(id) || !recorded.has(id)) continue;
    const all = await river.record(id, 'temperature', from, to);
    const known = knownPart(all, river.known(id), dayOffset);
    records.push({
      station: id,
      kind,
      accuracy: accuracy(season, station),
      ...known,
      findings: kind === 'air' ? [] : await river.findings(id),
      lying: lyingAt(season, id),
    });
  }
  return records;
}

async function gaugeRecords(season: Season, river: RiverSource, { from, to }: Span): Promise<GaugeRecord[]> {
  const gauges: GaugeRecord[] = [];
  const discharge = await river.recorded('discharge');
  const level = await river.recorded('level');
  const slices = new Slices();
  for (const { id, dayOffset } of season.stations) {
    await slices.between();
    // One event a rise: the flow says more than the level, where there are both.
    const quantity = discharge.has(id) ? 'discharge' : level.has(id) ? 'level' : null;
    if (quantity === null) continue;
    const { at, value } = knownPart(await river.record(id, quantity, from, to), river.known(id), dayOffset);
    gauges.push({ station: id, quantity, at, value });
  }
  return gauges;
}

/** Readings of days that could be known. */
function knownPart({ at, value, flag }: StationRecord, known: (day: number) => boolean, minutes: number) {
  const kept = new Uint8Array(at.length);
  let [count, day, is] = [0, Number.NaN, false];
  for (let i = 0; i < at.length; i++) {
    const there = Math.floor((at[i]! + minutes * 60_000) / DAY);
    if (there !== day) [day, is] = [there, known(there)];
    if (!is) continue;
    kept[i] = 1;
    count++;
  }
  if (count === at.length) return { at, value, flag };
  const part = { at: new Float64Array(count), value: new Float64Array(count), flag: new Uint8Array(count) };
  for (let i = 0, k = 0; i < at.length; i++) {
    if (kept[i] === 0) continue;
    [part.at[k], part.value[k], part.flag[k]] = [at[i]!, value[i]!, flag[i]!];
    k++;
  }
  return part;
}

function lyingAt(season: Season, station: string): Lying[] {
  return season.deployments
    .filter((deployment) => deployment.station === station)
    .map(({ lay, box, from, to }) => ({
      lay,
      box,
      from: epochMillis(from),
      to: to === null ? Number.POSITIVE_INFINITY : epochMillis(to),
    }));
}
