import { randomBytes } from 'node:crypto';
import type { Catalogue, Write } from '../catalogue.js';
import { connectionsOf } from '../embedded/catalogue.js';
import { embeddedReadings } from '../embedded/readings.js';
import { type Row, rows } from '../embedded/sql.js';
import type { EpochMillis, LoadNumber, SeriesNumber } from '../entries.js';
import type { LoadWriter, ReadingStore, ReadingSum, SeriesColumns } from '../reading-store.js';
import { RunningSum } from '../reading-sum.js';
import { rising } from '../rising.js';
import type { AnswerSeries } from './answer.js';
import type { InfluxServer } from './influx-server.js';
import { ServerLoadWriter } from './load-writer.js';
import { newestOf } from './newest.js';
import { fieldOf, MEASUREMENT } from './points.js';
import { sendLoad } from './send.js';

/** Points asked for at once where a whole load passes by. */
const POINTS_AT_ONCE = 100_000;
const TAGS_AT_ONCE = 100;

/** A standing load's readings of one series on the server. */
export interface Held {
  readonly load: LoadNumber;
  readonly tag: string;
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly readings: number;
}

/**
 * Readings on an InfluxDB server: measurement `reading`, tags `station` (its number) and `load`, a field for each
 * quantity; the catalogue stays in the data folder. A load's readings wait in the store file until its write is about to
 * commit, are then sent under a tag that was never used before, and stand once the catalogue knows that tag. Whatever else
 * is on the server (a withdrawn load, what a killed process left) is nobody's and never read. It stays there: on a 1.6.7
 * server a second DROP SERIES or DELETE by tag took standing series with it (measured), so nothing is ever dropped.
 */
export class ServerReadings implements ReadingStore {
  readonly kind = 'server';
  private readonly counted = new Map<SeriesNumber, { readonly of: string; readonly readings: number }>();

  constructor(readonly server: InfluxServer) {}

  async beginLoad(write: Write, load: LoadNumber): Promise<LoadWriter> {
    return new ServerLoadWriter(await embeddedReadings.beginLoad(write, load), write, load, this);
  }

  async withdraw(write: Write, load: LoadNumber): Promise<void> {
    await embeddedReadings.withdraw(write, load);
    await connectionsOf(write).use((connection) =>
      rows(connection, 'DELETE FROM server_load WHERE load = ?', [load]),
    );
  }

  async read(
    catalogue: Catalogue,
    series: SeriesNumber,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<SeriesColumns> {
    // Readings of a load that this very write brings are still in the store file, and newer than all others.
    const waiting = await embeddedReadings.read(catalogue, series, from, to);
    const standing = await this.onServer(catalogue, series, from, to);
    if (waiting.at.length + standing.at.length > 0) return newestOf([standing, waiting]);
    // They may have moved from the server to the store file in between.
    return embeddedReadings.read(catalogue, series, from, to);
  }

  async readLoad(catalogue: Catalogue, load: LoadNumber, series: SeriesNumber): Promise<SeriesColumns> {
    const held = (await this.held(catalogue, series)).filter((one) => one.load === load);
    if (held.length === 0) return embeddedReadings.readLoad(catalogue, load, series);
    const { first, last } = held[0];
    return this.ask(await this.place(catalogue, series), held, first, last + 1);
  }

  async count(catalogue: Catalogue): Promise<ReadonlyMap<SeriesNumber, number>> {
    const counts = new Map<SeriesNumber, number>();
    for (const { number } of await catalogue.series()) {
      const held = await this.held(catalogue, number);
      if (held.length > 0) counts.set(number, await this.countOf(catalogue, number, held));
    }
    return counts;
  }

  async scan(
    catalogue: Catalogue,
    load: LoadNumber,
    take: (series: SeriesNumber, at: Float64Array, value: Float64Array) => Promise<void>,
  ): Promise<void> {
    const brought = await connectionsOf(catalogue).use((connection) =>
      rows(connection, 'SELECT series FROM load_series WHERE load = ? ORDER BY series', [load]),
    );
    for (const series of brought.map((row) => row.number('series'))) {
      const held = (await this.held(catalogue, series)).filter((one) => one.load === load);
      if (held.length === 0) continue;
      const place = await this.place(catalogue, series);
      const { first, last } = held[0];
      for (let from = first; ; ) {
        const { at, value } = await this.ask(place, held, from, last + 1, POINTS_AT_ONCE);
        if (at.length > 0) await take(series, at, value);
        if (at.length < POINTS_AT_ONCE) break;
        from = at[at.length - 1] + 1;
      }
    }
  }

  async sums(catalogue: Catalogue, load: LoadNumber): Promise<ReadonlyMap<SeriesNumber, ReadingSum>> {
    const sums = new Map<SeriesNumber, RunningSum>();
    await this.scan(catalogue, load, async (series, at, value) => {
      const sum = sums.get(series) ?? new RunningSum();
      sums.set(series, sum);
      for (let i = 0; i < at.length; i++) sum.add(at[i], value[i]);
    });
    return new Map([...sums].map(([series, sum]) => [series, sum.sum()]));
  }

  async settle(write: Write): Promise<void> {
    const connections = connectionsOf(write);
    const waiting = await connections.use((connection) =>
      rows(connection, 'SELECT load FROM visible UNION SELECT load FROM covered ORDER BY load'),
    );
    for (const load of waiting.map((row) => row.number('load'))) {
      const tag = await this.send(write, load);
      await connections.use((connection) =>
        rows(connection, 'INSERT INTO server_load VALUES (?, ?)', [load, tag]),
      );
    }
    if (waiting.length > 0) {
      for (const table of ['visible', 'covered'])
        await connections.use((connection) => rows(connection, `DELETE FROM ${table}`));
    }
  }

  /** Sends what the store file holds of a load, under a new tag. */
  async send(write: Write, load: LoadNumber): Promise<string> {
    const tag = `${load}.${randomBytes(6).toString('hex')}`;
    const places = new Map(
      (await write.series()).map((one) => [one.number, { station: one.station, field: fieldOf(one) }]),
    );
    await connectionsOf(write).use((connection) => sendLoad(this.server, connection, load, tag, places));
    return tag;
  }

  /** Readings that committed loads have of a series, resolved: at each instant the newest load's. */
  async onServer(
    catalogue: Catalogue,
    series: SeriesNumber,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<SeriesColumns> {
    const held = (await this.held(catalogue, series)).filter(({ first, last }) => last >= from && first < to);
    if (held.length === 0) return newestOf([]);
    return this.ask(await this.place(catalogue, series), held, from, to);
  }

  async held(catalogue: Catalogue, series: SeriesNumber): Promise<Held[]> {
    const found = await connectionsOf(catalogue).use((connection) =>
      rows(
        connection,
        `SELECT s.load, s.tag, p.first_ms, p.last_ms, p.readings FROM server_load s
          JOIN load_series p ON p.load = s.load WHERE p.series = ? ORDER BY s.load`,
        [series],
      ),
    );
    return found.map((row: Row) => ({
      load: row.number('load'),
      tag: row.text('tag'),
      first: row.number('first_ms'),
      last: row.number('last_ms'),
      readings: row.number('readings'),
    }));
  }

  private async place(
    catalogue: Catalogue,
    series: SeriesNumber,
  ): Promise<{ station: number; field: string }> {
    const found = (await catalogue.series()).find(({ number }) => number === series);
    if (found === undefined) throw new RangeError(`there is no series ${series}`);
    return { station: found.station, field: fieldOf(found) };
  }

  private async ask(
    { station, field }: { readonly station: number; readonly field: string },
    held: readonly Held[],
    from: EpochMillis,
    to: EpochMillis,
    most: number | null = null,
  ): Promise<SeriesColumns> {
    const lower = from === Number.NEGATIVE_INFINITY ? '' : ` AND time >= ${Math.ceil(from)}ms`;
    const upper = to === Number.POSITIVE_INFINITY ? '' : ` AND time < ${Math.ceil(to)}ms`;
    const limit = most === null ? '' : ` LIMIT ${most}`;
    const loads = new Map(held.map(({ tag, load }) => [tag, load]));
    const parts: SeriesColumns[] = [];
    for (let i = 0; i < held.length; i += TAGS_AT_ONCE) {
      const tags = held.slice(i, i + TAGS_AT_ONCE).map(({ tag }) => `"load" = '${tag}'`);
      const answer = await this.server.query(
        `SELECT "${field}" FROM "${MEASUREMENT}" WHERE "station" = '${station}' AND (${tags.join(' OR ')})${lower}${upper}
          GROUP BY "load"${limit}`,
      );
      for (const part of answer) parts.push(columnsOf(part, loads.get(part.tags.load ?? '') ?? 0));
    }
    parts.sort((a, b) => (a.load[0] ?? 0) - (b.load[0] ?? 0));
    return newestOf(parts);
  }

  /** Loads that lie apart are counted in the catalogue; where they overlap, instants are counted once. */
  private async countOf(catalogue: Catalogue, series: SeriesNumber, held: readonly Held[]): Promise<number> {
    const of = held.map(({ tag }) => tag).join(' ');
    const known = this.counted.get(series);
    if (known?.of === of) return known.readings;
    let readings = 0;
    for (const cluster of clusters(held)) {
      readings +=
        cluster.length === 1
          ? cluster[0].readings
          : (await this.onServer(catalogue, series, cluster[0].first, lastOf(cluster) + 1)).at.length;
    }
    this.counted.set(series, { of, readings });
    return readings;
  }
}

/** Loads whose spans touch, together. */
function clusters(held: readonly Held[]): Held[][] {
  const found: Held[][] = [];
  for (const one of [...held].sort((a, b) => a.first - b.first)) {
    const last = found.at(-1);
    if (last !== undefined && lastOf(last) >= one.first) last.push(one);
    else found.push([one]);
  }
  return found;
}

function lastOf(cluster: readonly Held[]): EpochMillis {
  return cluster.reduce((most, { last }) => Math.max(most, last), Number.NEGATIVE_INFINITY);
}

function columnsOf({ values }: AnswerSeries, load: LoadNumber): SeriesColumns {
  const at = new Float64Array(values.length);
  const value = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    at[i] = Number(values[i][0]);
    value[i] = Number(values[i][1]);
  }
  return rising({ at, value, load: new Int32Array(values.length).fill(load) });
}
