import type { z } from 'zod';
import type { StationKind } from '../../forecasting/day-series.js';
import {
  choice,
  figure,
  id,
  latitude,
  longitude,
  maybe,
  oneOrMore,
  otherwise,
  text,
  thing,
  yesNo,
  zoneName,
} from './fields.js';
import { standardOffset } from './zones.js';

export const stationKind = choice('stream', 'gravel', 'air', 'tank', 'gauge');
export const quantity = choice('temperature', 'level', 'discharge');

/** Stations of these kinds are read from afar all winter unless the file says otherwise. */
const REPORTING_KINDS: readonly string[] = ['air', 'gauge'];

/**
 * A place where something is recorded. `zone` is where its downloads say nothing; `dayOffset` (minutes east of UTC,
 * derived from the zone, never written) is the fixed standard-time offset its days are counted in.
 */
export const stationSchema = (groupZone: string) =>
  thing({
    id,
    name: maybe(text),
    kind: otherwise(stationKind, 'stream'),
    quantities: oneOrMore(quantity),
    place: maybe(text),
    zone: otherwise(zoneName, groupZone),
    latitude: maybe(latitude),
    longitude: maybe(longitude),
    /** Whether it reports through the winter; where not, it is read on ice-free visits. */
    reports: maybe(yesNo),
    /** Stated accuracy, °C, where no deployed logger states one. */
    accuracy: maybe(figure(0, 5)),
    note: maybe(text),
  }).transform((station) => ({
    ...station,
    name: station.name ?? station.id,
    quantities: station.quantities.length > 0 ? station.quantities : usualQuantities(station.kind),
    reports: station.reports ?? reportsUsually(station.kind),
    dayOffset: standardOffset(station.zone),
  }));
export type Station = z.infer<ReturnType<typeof stationSchema>>;
export type Quantity = z.infer<typeof quantity>;

/** What a station of this kind records where the file does not say. */
export const usualQuantities = (kind: StationKind): Quantity[] =>
  kind === 'gauge' ? ['level', 'discharge'] : ['temperature'];

/** Whether a station of this kind reports all winter where the file does not say. */
export const reportsUsually = (kind: StationKind): boolean => REPORTING_KINDS.includes(kind);
