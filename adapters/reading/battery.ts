import type { EpochMillis } from '../batch.js';
import type { TextOf } from '../fields/bytes.js';
import { NumberField } from '../fields/number.js';
import { type BatteryUnit, saysLowBattery } from '../sniff/battery.js';
import { ByteDictionary } from './byte-dictionary.js';
import type { Plan } from './plan.js';
import { shown } from './row-values.js';
import type { Station } from './stations.js';

/** One figure of a battery; `at` is null where the file gives it without a moment. */
export interface BatteryFigure {
  readonly value: number;
  readonly at: EpochMillis | null;
}

/** What a file says of a logger's battery, in a few figures: no second series. */
export interface BatteryReport {
  /** As the file names it; null where it names none. */
  readonly station: string | null;
  /** Header the figures came from; null where only words or the lines above the table say something. */
  readonly column: string | null;
  /** mV are given in V. null where only words say something. */
  readonly unit: 'V' | '%' | null;
  readonly highest: BatteryFigure | null;
  readonly lowest: BatteryFigure | null;
  readonly last: BatteryFigure | null;
  /** The first remark that calls it low. */
  readonly low: { readonly text: string; readonly at: EpochMillis | null } | null;
}

/** More different remarks than this are not told apart any more, only read. */
const MOST_NOTES = 4096;
/** Where no unit is stated: up to this it is volts, up to 100 %, above it millivolts (ours: no logger has 20 V). */
const MOST_VOLTS = 20;

/** Of one station, as plain numbers: an object a row would cost more than reading the figure. */
class Kept {
  highest = Number.NEGATIVE_INFINITY;
  highestAt: EpochMillis = Number.NaN;
  lowest = Number.POSITIVE_INFINITY;
  lowestAt: EpochMillis = Number.NaN;
  last = Number.NaN;
  lastAt: EpochMillis = Number.NEGATIVE_INFINITY;
  low: BatteryReport['low'] = null;

  constructor(readonly station: Station) {}

  figure(value: number, at: EpochMillis): void {
    if (value > this.highest) {
      this.highest = value;
      this.highestAt = at;
    }
    if (value < this.lowest) {
      this.lowest = value;
      this.lowestAt = at;
    }
    if (at >= this.lastAt) {
      this.last = value;
      this.lastAt = at;
    }
  }
}

/** Keeps of a file's battery column and remarks what tells whether the battery is dying. */
export class Battery {
  private readonly kept = new Map<Station, Kept>();
  private newest: Kept | null = null;
  private readonly number: NumberField;
  private readonly notes = new ByteDictionary();
  private readonly isLow: boolean[] = [];

  constructor(
    private readonly plan: Plan,
    private readonly textOf: TextOf,
  ) {
    this.number = new NumberField(plan.decimal, textOf);
  }

  /** Whether the file has anything to say of a battery, row by row. */
  get looks(): boolean {
    return this.plan.battery !== null || this.plan.notes.length > 0;
  }

  /** Takes a row's figure and remarks, whether or not its reading was of use. */
  row(
    station: Station,
    at: EpochMillis,
    b: Uint8Array,
    starts: Int32Array,
    ends: Int32Array,
    fields: number,
  ): void {
    const { battery, notes } = this.plan;
    if (
      battery !== null &&
      battery.index < fields &&
      this.number.read(b, starts[battery.index], ends[battery.index])
    )
      this.figure(station, this.number.value, at);
    for (const note of notes) {
      if (note.index >= fields || ends[note.index] <= starts[note.index]) continue;
      if (this.noteIsLow(b, starts[note.index], ends[note.index], note.battery))
        this.remark(station, this.textOf(b, starts[note.index], ends[note.index]), at);
    }
  }

  /** A line without a reading that calls the battery low; `at`: the reading before it. */
  line(station: Station, text: string, at: EpochMillis): void {
    if (saysLowBattery(text)) this.remark(station, text, at);
  }

  /** What was kept, station by station; what the lines above the table say where no row said anything. */
  reports(): BatteryReport[] {
    const { battery, stated } = this.plan;
    const found = [...this.kept.values()].flatMap((kept) => {
      // A column of zeros is a logger that does not measure its battery.
      const unit = kept.highest > 0 ? unitOf(battery?.unit ?? 'unstated', kept.highest) : null;
      const scaled = (value: number, at: EpochMillis) =>
        unit === null ? null : { value: inUnit(value, unit), at };
      if (unit === null && kept.low === null) return [];
      return [
        {
          station: kept.station.name,
          column: unit === null ? null : (battery?.name ?? null),
          unit: unit === null ? null : unit === '%' ? ('%' as const) : ('V' as const),
          highest: scaled(kept.highest, kept.highestAt),
          lowest: scaled(kept.lowest, kept.lowestAt),
          last: scaled(kept.last, kept.lastAt),
          low: kept.low,
        },
      ];
    });
    if (found.length > 0 || (stated.low === null && stated.value === null)) return found;
    const unit = stated.value === null ? null : unitOf(stated.unit, stated.value);
    const figure =
      stated.value === null || unit === null ? null : { value: inUnit(stated.value, unit), at: null };
    return [
      {
        station: this.plan.stationInFile,
        column: null,
        unit: unit === null ? null : unit === '%' ? '%' : 'V',
        highest: figure,
        lowest: figure,
        last: figure,
        low: stated.low === null ? null : { text: shown(stated.low), at: null },
      },
    ];
  }

  private figure(station: Station, value: number, at: EpochMillis): void {
    // −999 and the like are no voltage, and neither is more than 100 %.
    if (!(value >= 0) || value > (this.plan.battery?.unit === '%' ? 100 : 100_000)) return;
    this.of(station).figure(value, at);
  }

  private remark(station: Station, text: string, at: EpochMillis): void {
    const kept = this.of(station);
    if (kept.low === null || at < (kept.low.at ?? at)) kept.low = { text: shown(text), at };
  }

  private of(station: Station): Kept {
    if (this.newest?.station === station) return this.newest;
    this.newest = this.kept.get(station) ?? new Kept(station);
    this.kept.set(station, this.newest);
    return this.newest;
  }

  private noteIsLow(b: Uint8Array, start: number, end: number, ofBattery: boolean): boolean {
    if (this.notes.size >= MOST_NOTES) return saysLowBattery(this.textOf(b, start, end), ofBattery);
    const id = this.notes.id(b, start, end);
    if (id === this.isLow.length) this.isLow.push(saysLowBattery(this.textOf(b, start, end), ofBattery));
    return this.isLow[id] ?? false;
  }
}

function unitOf(stated: BatteryUnit, highest: number): Exclude<BatteryUnit, 'unstated'> {
  if (stated !== 'unstated') return stated;
  if (highest <= MOST_VOLTS) return 'V';
  return highest <= 100 ? '%' : 'mV';
}

/** V or %, to a thousandth. */
function inUnit(value: number, unit: Exclude<BatteryUnit, 'unstated'>): number {
  return Math.round(unit === 'mV' ? value : value * 1000) / 1000;
}
