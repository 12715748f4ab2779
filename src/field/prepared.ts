import type { DevelopmentTable } from '../../forecasting/index.js';
import { handling, lotBalances } from '../autumn/index.js';
import type { Group } from '../group/index.js';
import { Refusal } from '../refusal.js';
import type { Season } from '../season/index.js';
import { type Sheet, sheetsAhead } from './sheets.js';

/** What a phone needs of a development table to say how long eggs may still be moved, and how cold is too cold. */
export interface PreparedSpans {
  /** At each whole °C from 0: hours after fertilisation between which handling kills; null where the table says none. */
  readonly killsFrom: readonly (number | null)[];
  readonly killsTo: readonly (number | null)[];
  /** Water just after fertilisation is better not colder, °C. */
  readonly coldBelow: number | null;
  /** Degrees between transport and site from which tempering is asked for. */
  readonly temperBeyond: number | null;
}

/** A lot, with how long its eggs may still be moved. */
export interface PreparedLot extends PreparedSpans {
  readonly id: string;
  readonly unplaced: number;
  /** Epoch milliseconds. */
  readonly fertilised: number;
  /** Its development table. */
  readonly table: string;
}

/** Warmest water of the list, °C. */
const WARMEST = 20;

/** What a phone carries along for a day: enough to name every site, box, lot and logger without network. */
export interface Prepared {
  readonly group: string;
  /** Who prepared it; '' where nobody has an account. */
  readonly you: string;
  readonly version: number;
  readonly sites: readonly {
    readonly id: string;
    readonly name: string;
    readonly access: string;
    readonly find: string;
  }[];
  readonly boxes: readonly {
    readonly id: string;
    readonly site: string;
    readonly find: string;
    readonly planted: boolean;
    /** Eggs written down going in, by part where parts are named. */
    readonly eggs: number;
    readonly parts: readonly string[];
    readonly compartments: number | null;
    readonly latitude: number | null;
    readonly longitude: number | null;
  }[];
  readonly lots: readonly PreparedLot[];
  readonly loggers: readonly { readonly id: string; readonly lying: string }[];
  readonly adults: readonly { readonly id: string; readonly sex: string }[];
  readonly crosses: readonly {
    readonly id: string;
    readonly lot: string;
    readonly adults: readonly string[];
  }[];
  readonly sheets: readonly Sheet[];
  readonly tables: readonly (PreparedSpans & {
    readonly id: string;
    readonly en: string;
    readonly fr: string;
  })[];
}

/** Where no plan can be made the day is prepared all the same. */
async function sheetsOrNone(group: Group): Promise<readonly Sheet[]> {
  try {
    return await sheetsAhead(group);
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

/**
 * Names and how to find things; nobody's consent or note goes along.
 * @param you the name of who asks; '-' where nobody has an account
 */
export async function preparedDay(group: Group, you = '-'): Promise<Prepared> {
  const [season, versions, tables, sheets] = await Promise.all([
    group.season(),
    group.seasonVersions(),
    group.tables(),
    sheetsOrNone(group),
  ]);
  const lying = new Map(
    season.deployments
      .filter(({ to, lost }) => to === null && !lost)
      .map(({ logger, station }) => [logger, station]),
  );
  const text = (...parts: readonly (string | null)[]) => parts.filter((part) => part !== null).join('; ');
  return {
    group: season.group.name,
    you: you === '-' ? '' : you,
    version: versions[0]?.version ?? 0,
    sites: season.sites.map(({ id, name, access, find, bankMark }) => ({
      id,
      name: name ?? id,
      access: access ?? '',
      find: text(find, bankMark),
    })),
    boxes: season.boxes
      .filter(({ lifted }) => lifted === null)
      .map(({ id, site, find, bankMark, tiedTo, fills, compartments, latitude, longitude }) => ({
        id,
        site,
        find: text(find, bankMark, tiedTo),
        planted: fills.length > 0,
        eggs: fills.reduce((sum, fill) => sum + fill.eggs, 0),
        parts: [...new Set(fills.flatMap(({ part }) => part ?? []))],
        compartments,
        latitude,
        longitude,
      })),
    lots: lotBalances(season).map(({ lot, unplaced }) => preparedLot(season, tables, lot, unplaced)),
    loggers: season.loggers.map(({ id }) => ({ id, lying: lying.get(id) ?? '' })),
    adults: season.broodstock.map(({ id, sex }) => ({ id, sex: sex ?? '' })),
    crosses: season.crosses.map(({ id, female, males, lot }) => ({
      id,
      lot: lot ?? '',
      adults: [female, ...males],
    })),
    sheets,
    tables: tables.map((table) => ({ id: table.id, ...table.name, ...spansOf(table) })),
  };
}

function preparedLot(
  season: Season,
  tables: readonly DevelopmentTable[],
  id: string,
  unplaced: number,
): PreparedLot {
  const lot = season.lots.find((one) => one.id === id);
  return {
    id,
    unplaced,
    fertilised: lot === undefined ? 0 : Date.parse(lot.fertilised),
    table: lot?.table ?? '',
    ...spansOf(tables.find((one) => one.id === lot?.table)),
  };
}

function spansOf(table: DevelopmentTable | undefined): PreparedSpans {
  const degrees = table === undefined ? [] : Array.from({ length: WARMEST + 1 }, (_, celsius) => celsius);
  const spans = degrees.map((celsius) => (table === undefined ? null : handling(table, celsius, 0)));
  const whole = (hours: number | undefined) =>
    hours === undefined || !Number.isFinite(hours) ? null : Math.round(hours);
  return {
    killsFrom: spans.map((span) => whole(span?.hoursLeft)),
    killsTo: spans.map((span) => whole(span?.hoursToEnd)),
    coldBelow: table?.harm.find(({ kind }) => kind === 'cold-start')?.limit ?? null,
    temperBeyond: table?.temper.limit ?? null,
  };
}
