import type { HindcastOptions, HindcastReport } from '../../forecasting/hindcast/index.js';
import type { StationDays } from '../../forecasting/index.js';
import type { Group } from '../group/index.js';
import { UnknownName } from '../group/unknown-name.js';
import { groupStations } from './group-stations.js';
import { type HindcastAsked, hindcastOptions } from './question.js';
import { runHindcast } from './run.js';

/** Answers kept for a group; each is a few hundred kilobytes at most. */
const KEPT = 6;
/** Threads of the service's own hindcasts: one, so that readers have the other core. */
const THREADS = 1;

/** A hindcast that is being worked out, or has been. */
export interface HindcastRun {
  readonly report: Promise<HindcastReport>;
  /** Null until it is there. */
  ready: HindcastReport | null;
  /** Steps done and how many there are, as far as it is known. */
  done: number;
  all: number;
}

/**
 * The hindcasts a service has been asked for: each question is worked out once between two writes, beside the
 * service in a thread, one after the other.
 */
class HindcastDesk {
  private readonly runs = new Map<string, HindcastRun>();
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly group: Group) {}

  async ask(asked: HindcastAsked, tableId: string): Promise<HindcastRun> {
    const tables = await this.group.tables();
    const table = tables.find(({ id }) => id === tableId);
    if (table === undefined)
      throw new UnknownName({
        code: 'unknown-table',
        with: { table: tableId, tables: tables.map(({ id }) => id) },
      });
    const options = hindcastOptions(asked, table);
    // The question as it is understood: what is left out and what is stated as usual are the same.
    const key = JSON.stringify([await this.standing(), options]);
    const known = this.runs.get(key);
    if (known !== undefined) return known;
    const run = this.started(options);
    this.runs.set(key, run);
    for (const old of [...this.runs.keys()].slice(0, -KEPT)) this.runs.delete(old);
    run.report.catch(() => this.runs.delete(key));
    return run;
  }

  /** What the answer rests on: season, loads, and the day the group stands at. */
  private async standing(): Promise<string> {
    const [versions, loads, today] = await Promise.all([
      this.group.seasonVersions(),
      this.group.loads(),
      this.group.today(),
    ]);
    const withdrawn = loads.filter((load) => load.withdrawn !== null).length;
    return `${versions[0]?.version ?? 0} ${loads.length} ${withdrawn} ${today}`;
  }

  private started(options: HindcastOptions): HindcastRun {
    const before = this.last;
    const begin = async (): Promise<HindcastReport> => {
      await before.catch(() => undefined);
      const stations: StationDays[] = await groupStations(this.group);
      const step = (done: number, all: number) => Object.assign(run, { done, all });
      const report = await runHindcast(stations, options, step, THREADS);
      run.ready = report;
      return report;
    };
    const report = begin();
    const run: HindcastRun = { report, ready: null, done: 0, all: 0 };
    this.last = report;
    return run;
  }
}

const desks = new WeakMap<Group, HindcastDesk>();

/** @throws HindcastRefused, UnknownName for a question that cannot be asked */
export function askHindcast(group: Group, asked: HindcastAsked, table: string): Promise<HindcastRun> {
  const desk = desks.get(group) ?? new HindcastDesk(group);
  desks.set(group, desk);
  return desk.ask(asked, table);
}
