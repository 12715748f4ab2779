import { DownloadRefused } from '../download.js';
import type { TextOf } from '../fields/bytes.js';
import { NumberField } from '../fields/number.js';
import { plain } from '../fields/plain.js';
import { ByteDictionary } from './byte-dictionary.js';
import type { Plan } from './plan.js';
import type { Station, Stations } from './stations.js';

/** More names than any programme has stations: the column was no station's. */
const MOST_STATIONS = 20_000;

/** Which station a row belongs to: the file's one, or the one its station column names. */
export class RowStation {
  private readonly one: Station | null;
  private readonly names = new ByteDictionary();
  private readonly named: (Station | null)[] = [];
  private readonly byName = new Map<string, Station>();
  private readonly number: NumberField;

  constructor(
    private readonly plan: Plan,
    private readonly stations: Stations,
    private readonly textOf: TextOf,
  ) {
    this.number = new NumberField(plan.decimal, textOf);
    const wide = plan.values.some(({ station }) => station !== null);
    this.one = plan.station < 0 && !wide ? stations.open(plan.stationName) : null;
  }

  /** null where each value column has its own; undefined where the row names none. */
  of(b: Uint8Array, starts: Int32Array, ends: Int32Array): Station | null | undefined {
    const { station } = this.plan;
    if (station < 0) return this.one;
    const id = this.names.id(b, starts[station], ends[station]);
    if (id === this.named.length) this.named.push(this.open(b, starts, ends));
    return this.named[id] ?? undefined;
  }

  private open(b: Uint8Array, starts: Int32Array, ends: Int32Array): Station | null {
    const { station, latitude, longitude } = this.plan;
    const name = plain(this.textOf(b, starts[station], ends[station]));
    if (name === '') return null;
    const known = this.byName.get(name);
    if (known !== undefined) return known;
    if (this.byName.size === MOST_STATIONS)
      throw new DownloadRefused({ code: 'too-many-stations', with: { limit: MOST_STATIONS, example: name } });
    const opened = this.stations.open(this.nameFor(name));
    if (latitude >= 0 && longitude >= 0) {
      const place = {
        latitude: this.coordinate(b, starts[latitude], ends[latitude]),
        longitude: this.coordinate(b, starts[longitude], ends[longitude]),
      };
      if (Math.abs(place.latitude) <= 90 && Math.abs(place.longitude) <= 180) opened.place = place;
    }
    this.byName.set(name, opened);
    return opened;
  }

  /** The person's name for the one station of a file; a file of several keeps its own names. */
  private nameFor(name: string): string {
    const { stationName } = this.plan;
    if (stationName === null) return name;
    const [other] = this.byName.keys();
    if (other === undefined) {
      if (name !== stationName)
        this.stations.say({ code: 'station-asked-not-file', with: { asked: stationName, stated: name } });
      return stationName;
    }
    throw new DownloadRefused(
      { code: 'several-stations', with: { asked: stationName, stations: [other, name] } },
      { code: 'leave-station-out', with: {} },
    );
  }

  private coordinate(b: Uint8Array, start: number, end: number): number {
    return this.number.read(b, start, end) ? this.number.value : Number.NaN;
  }
}
