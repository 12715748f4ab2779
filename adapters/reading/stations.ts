import type { StatedPlace } from '../batch.js';
import { type AdapterRemark, type Asked, DownloadRefused, type Known } from '../download.js';
import { HOUR } from '../fields/civil.js';
import { ClockEvidence, type ClockHabit } from '../zones/clock-evidence.js';
import { compareWithAsked, givenZone, homeZoneForDays } from '../zones/given-zone.js';
import { StationClock } from '../zones/station-clock.js';
import { fixedZone, offsetName, type Zone } from '../zones/zone.js';
import type { Plan } from './plan.js';

/** A station while its rows are read. `series[i]` is the series of the plan's value column i, -1 before its first reading. */
export interface Station {
  readonly name: string | null;
  place: StatedPlace | null;
  clock: StationClock | null;
  readonly series: Int32Array;
}

/** The stations of a file, and in which zone each one's clock ran. */
export class Stations {
  readonly all: Station[] = [];
  readonly evidence: ClockEvidence;
  private readonly remarks = new Map<string, AdapterRemark>();

  constructor(
    private readonly plan: Plan,
    private readonly asked: Asked,
    private readonly known: Known,
    readonly habit: ClockHabit,
    private readonly began: number | null = null,
  ) {
    this.evidence = new ClockEvidence(plan.interval, plan.direction);
  }

  get assumed(): AdapterRemark[] {
    return [...this.remarks.values()];
  }

  open(name: string | null): Station {
    const series = new Int32Array(this.plan.values.length).fill(-1);
    const station: Station = { name, place: this.plan.place, clock: null, series };
    this.all.push(station);
    return station;
  }

  isAir(station: Station): boolean | null {
    return this.known.isAir?.(station.name) ?? null;
  }

  /** The clock of a station's rows, made when its first row without an offset of its own comes. */
  clockOf(station: Station, local: number): StationClock {
    if (station.clock !== null) return station.clock;
    let zone = this.zoneOf(station, local);
    if (this.plan.daily && zone.kind === 'named') zone = fixedZone(zone.transitions.standardOffset(local));
    const { interval, direction } = this.plan;
    station.clock = new StationClock(zone, this.habit, this.evidence, interval, direction, this.began);
    return station.clock;
  }

  private zoneOf(station: Station, local: number): Zone {
    const stated = this.plan.clock;
    if (stated.kind === 'zone') {
      compareWithAsked(stated.zone, this.asked, (remark) => this.say(remark));
      return stated.zone;
    }
    const zone = this.givenZone(station, local);
    if (stated.kind === 'unknown') this.say({ code: 'zone-stated-unknown', with: { stated: stated.text } });
    if (stated.kind !== 'standard' || zone.kind === 'fixed') return zone;
    const offset = zone.transitions.standardOffset(local);
    this.say({ code: 'standard-time-of-zone', with: { zone: zone.name, offset: offsetName(offset) } });
    return fixedZone(offset);
  }

  private givenZone(station: Station, local: number): Zone {
    const given = givenZone(this.asked, this.known, station.name, local, (remark) => this.say(remark));
    if (given !== null) return given;
    if (this.plan.daily) return this.zoneForDays(station, local);
    const { clock } = this.plan;
    const zone: AdapterRemark =
      clock.kind === 'unknown'
        ? { code: 'unknown-zone', with: { zone: clock.text } }
        : { code: 'no-zone', with: { station: station.name } };
    throw new DownloadRefused(zone, { code: 'which-zone', with: {} });
  }

  /** Daily means need only the day's edges: the sun's hour at the stated longitude is near enough, and said. */
  private zoneForDays(station: Station, local: number): Zone {
    if (station.place === null) return homeZoneForDays(this.asked, local, (remark) => this.say(remark));
    const { longitude } = station.place;
    const zone = fixedZone(Math.round(longitude / 15) * HOUR);
    this.say({ code: 'zone-from-longitude', with: { zone: zone.name, longitude } });
    return zone;
  }

  /** Notes something to tell, once. */
  say(remark: AdapterRemark): void {
    const key = remark.code + ('zone' in remark.with ? remark.with.zone : '');
    if (!this.remarks.has(key)) this.remarks.set(key, remark);
  }
}
