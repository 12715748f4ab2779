import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { MessagesRefused } from '../messages/refused.js';
import { isoInstant } from '../words/index.js';
import { type Gatherer, replaceLoad, type TakenIn, takeIn } from './take-in.js';

export interface PushedReading {
  /** Epoch milliseconds. */
  readonly at: number;
  readonly celsius: number;
}

/**
 * Readings that stations send, gathered in one file for each station and month: each time the month's file is loaded
 * anew and the load before it taken back, so that a station which sends every quarter of an hour has one standing load a
 * month.
 */
export class Pushes {
  private turn: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly group: Gatherer,
    private readonly folder: string,
  ) {}

  /** @throws MessagesRefused 'feeds-unknown-station', 'feeds-no-readings' */
  take(station: string, readings: readonly PushedReading[], who: string): Promise<TakenIn> {
    const turn = this.turn.then(() => this.takeNow(station, readings, who));
    this.turn = turn.catch(() => undefined);
    return turn;
  }

  private async takeNow(station: string, readings: readonly PushedReading[], who: string): Promise<TakenIn> {
    const known = (await this.group.season()).stations.find(({ id }) => id === station);
    if (known === undefined) throw new MessagesRefused({ code: 'feeds-unknown-station', with: { station } });
    if (readings.length === 0) throw new MessagesRefused({ code: 'feeds-no-readings', with: {} });
    await mkdir(this.folder, { recursive: true, mode: 0o700 });
    const months = new Map<string, PushedReading[]>();
    for (const reading of readings) {
      const month = isoInstant(reading.at).slice(0, 7);
      months.set(month, [...(months.get(month) ?? []), reading]);
    }
    let fresh = 0;
    let last: TakenIn | null = null;
    for (const [month, some] of months) {
      last = await this.month(station, month, some, who);
      fresh += last.fresh;
    }
    if (last === null) throw new MessagesRefused({ code: 'feeds-no-readings', with: {} });
    return { ...last, fresh };
  }

  private async month(
    station: string,
    month: string,
    readings: readonly PushedReading[],
    who: string,
  ): Promise<TakenIn> {
    const base = join(this.folder, `push-${Buffer.from(station).toString('hex')}-${month}`);
    const lines = new Map<string, string>();
    for (const line of (await textOf(`${base}.csv`)).split('\n').slice(1)) {
      const [at, value] = line.split(',');
      if (at !== undefined && value !== undefined) lines.set(at, value);
    }
    for (const { at, celsius } of readings) lines.set(isoInstant(at), String(Number(celsius.toFixed(4))));
    const rows = [...lines].sort(([a], [b]) => (a < b ? -1 : 1)).map(([at, value]) => `${at},${value}`);
    await replaceFile(`${base}.csv`, `${['Time (UTC),Temperature (°C)', ...rows].join('\n')}\n`);
    const [taken] = await takeIn(
      this.group,
      [{ path: `${base}.csv`, name: `${station} ${month}.csv` }],
      station,
      who,
    );
    if (taken === undefined || taken.refused)
      throw new MessagesRefused({ code: 'feeds-no-readings', with: {} });
    const before = await textOf(`${base}.load`);
    const kept = await replaceLoad(this.group, station, before === '' ? null : before, taken);
    if (kept !== null) await replaceFile(`${base}.load`, kept);
    return taken;
  }
}

async function textOf(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return '';
    throw error;
  }
}

/** Beside and renamed: the old file or the new one. */
async function replaceFile(path: string, text: string): Promise<void> {
  await writeFile(`${path}.new`, text, { mode: 0o600 });
  await rename(`${path}.new`, path);
}
