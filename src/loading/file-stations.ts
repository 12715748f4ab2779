import type { DownloadReport, SeriesKey } from '../../adapters/index.js';
import { standardOffset } from '../season/index.js';
import type { SeriesNumber, Station, StationEntry, Write } from '../store/index.js';
import type { StationCalled } from './index.js';
import type { LoadingRemark } from './outcome.js';
import { LoadingRefused } from './refused.js';
import { airStationOf, asStationId, stationNamed } from './station-names.js';

export interface StationsAsked {
  readonly station?: string | undefined;
  readonly createStations?: boolean | undefined;
  readonly called?: readonly StationCalled[] | undefined;
}

/** Stations made by one file that are each told; of more, the first so many are named. */
const TOLD_ONE_BY_ONE = 4;

/** Where the readings of one series of the file go, or that they are left for want of a station of that id. */
type Destination =
  | { readonly kind: 'series'; readonly series: SeriesNumber; readonly key: SeriesKey }
  | { readonly kind: 'left'; readonly air: string };

interface Made {
  station: Station;
  readonly named: string;
  /** Its key in the file is the air, and no water of the same name has come yet. */
  air: boolean;
  /** Index of its first series in the file. */
  readonly index: number;
  readonly key: SeriesKey;
}

/**
 * Settles, series by series as a file brings them, to which stations its readings go: the one asked for, else the
 * file's own names. Where a file holds the air beside the water, the air goes to the station `<id>-air`.
 */
export class FileStations {
  readonly remarks: LoadingRemark[] = [];
  private readonly destinations: (Destination | undefined)[] = [];
  private readonly made: Made[] = [];
  private readonly leftRows = new Map<string, number>();

  private constructor(
    private readonly write: Write,
    private readonly asked: StationsAsked,
    private known: readonly Station[],
  ) {}

  /** @throws LoadingRefused for a station asked for that nobody knows, before the file asks anything of its own. */
  static async of(write: Write, asked: StationsAsked): Promise<FileStations> {
    const known = await write.stations();
    const { station, createStations } = asked;
    if (
      station !== undefined &&
      createStations !== true &&
      stationNamed(station, withNames(known, asked)) === undefined
    ) {
      throw notInSeason(station, known);
    }
    return new FileStations(write, asked, known);
  }

  /** The series readings of the file's series `index` go to; null where they are left, `rows` of them. */
  async seriesOf(index: number, key: SeriesKey, rows: number): Promise<SeriesNumber | null> {
    const destination = this.destinations[index] ?? (await this.destination(index, key));
    this.destinations[index] = destination;
    if (destination.kind === 'series') return destination.series;
    this.leftRows.set(destination.air, (this.leftRows.get(destination.air) ?? 0) + rows);
    return null;
  }

  /** The station a name of the file stands for, once its series are settled; null where it brought none. */
  stationOf(name: string | null): string | null {
    const named = name ?? this.asked.station;
    if (named === undefined) return null;
    const made = this.made.find((one) => one.named === named);
    return made?.station.id ?? stationNamed(named, this.known)?.id ?? null;
  }

  forget(): void {
    this.leftRows.clear();
  }

  /** Gives the stations made what the whole file said of them, and tells what became of the air. */
  async settle(report: DownloadReport, zone: string | undefined): Promise<readonly StationEntry[]> {
    for (const made of this.made) {
      const own = zone ?? report.summaries[made.index]?.zone ?? 'UTC';
      const { place } = report.series[made.index] ?? made.key;
      const settled: Station = {
        ...made.station,
        zone: own,
        offsetMinutes: standardOffset(own),
        latitude: place?.latitude ?? null,
        longitude: place?.longitude ?? null,
      };
      await this.write.reviseStation(settled);
      made.station = settled;
    }
    this.tellMade();
    for (const [station, readings] of this.leftRows) {
      this.remarks.push({ code: 'air-left', with: { station, readings } });
    }
    return this.made.map(({ station }) => station);
  }

  /** One sentence a station; one for all where a table of a whole network made them. */
  private tellMade(): void {
    const many = this.made.length > TOLD_ONE_BY_ONE;
    if (many) {
      const stations = this.made.slice(0, TOLD_ONE_BY_ONE).map(({ station }) => station.id);
      this.remarks.push({ code: 'stations-made', with: { count: this.made.length, stations } });
    }
    for (const { station, named } of this.made) {
      if (!many || station.id !== named)
        this.remarks.push({ code: 'station-made', with: { station: station.id, named } });
    }
  }

  /** Marks the made stations as named by the season document. */
  async takenIntoSeason(): Promise<void> {
    for (const made of this.made) {
      await this.write.reviseStation({ ...made.station, inSeason: true });
    }
  }

  private async destination(index: number, key: SeriesKey): Promise<Destination> {
    const station = await this.stationFor(index, key);
    if (typeof station === 'string') return { kind: 'left', air: station };
    const series = await this.write.seriesOf(station, key.quantity, key.span);
    const before = this.destinations.find((one) => one?.kind === 'series' && one.series === series);
    if (before?.kind === 'series') {
      throw new LoadingRefused({
        code: 'station-twice',
        with: { first: this.nameOf(before.key), second: this.nameOf(key), station: station.id },
      });
    }
    return { kind: 'series', series, key };
  }

  /** The station, or the id of the one that is wanting for the air. */
  private async stationFor(index: number, key: SeriesKey): Promise<Station | string> {
    const name = this.nameOf(key);
    const known = stationNamed(name, withNames(this.known, this.asked));
    const made = this.made.find(({ named }) => named === name);
    if (known !== undefined && made === undefined) {
      return key.medium === 'air' && known.kind !== 'air' ? this.airBeside(index, key, known) : known;
    }
    if (made === undefined) return this.make(index, key, asStationId(name), name);
    if (key.medium === 'air' && !made.air) return this.airBeside(index, key, made.station);
    if (key.medium !== 'air' && made.air) await this.moveAside(made);
    else return made.station;
    return this.make(index, key, asStationId(name), name);
  }

  private async airBeside(index: number, key: SeriesKey, water: Station): Promise<Station | string> {
    const id = airStationOf(water.id);
    const known = stationNamed(id, this.known);
    if (known !== undefined) {
      this.remarks.push({ code: 'air-to-station', with: { station: known.id } });
      return known;
    }
    return this.asked.createStations === true ? this.make(index, key, id, id) : id;
  }

  /** The air of a new station came first, under the plain name that its water needs. */
  private async moveAside(made: Made): Promise<void> {
    made.station = { ...made.station, id: airStationOf(made.station.id) };
    made.air = false;
    await this.write.reviseStation(made.station);
    this.made.splice(this.made.indexOf(made), 1, { ...made, named: made.station.id });
    this.known = await this.write.stations();
  }

  private async make(index: number, key: SeriesKey, id: string, named: string): Promise<Station> {
    if (this.asked.createStations !== true) throw notInSeason(named, this.known);
    if (id === '') throw new LoadingRefused({ code: 'no-station', with: { known: [] } });
    const air = key.medium === 'air';
    const kind = air ? 'air' : key.quantity === 'temperature' ? 'stream' : 'gauge';
    const place = { latitude: null, longitude: null };
    const station = await this.write.makeStation({ id, kind, zone: 'UTC', offsetMinutes: 0, ...place });
    this.made.push({ station, named, air, index, key });
    this.known = await this.write.stations();
    return station;
  }

  private nameOf(key: SeriesKey): string {
    const name = key.station ?? this.asked.station;
    if (name !== undefined) return name;
    throw new LoadingRefused({ code: 'no-station', with: { known: this.known.map(({ id }) => id) } });
  }
}

/** The stations with the names the season has for them. */
function withNames(known: readonly Station[], { called }: StationsAsked): (Station & { name: string })[] {
  return known.map((station) => ({
    ...station,
    name: called?.find((one) => one.station === station.id)?.name ?? station.id,
  }));
}

function notInSeason(station: string, known: readonly Station[]): LoadingRefused {
  return new LoadingRefused({
    code: 'station-not-in-season',
    with: { station, known: known.map(({ id }) => id) },
  });
}
