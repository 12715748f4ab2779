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

interface Kept {
  highest: BatteryFigure | null;
  lowest: BatteryFigure | null;
  last: BatteryFigure | null;
  low: BatteryReport['low'];
}

/** Keeps of a file's battery column and remarks what tells whether the battery is dying. */
export class Battery {
  private readonly kept = new Map<Station, Kept>();
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
    const found = [...this.kept].flatMap(([{ name }, kept]) => {
      const unit = kept.highest === null ? null : unitOf(battery?.unit ?? 'unstated', kept.highest.value);
      // A column of zeros is a logger that does not measure its battery.
      const measured = unit !== null && (kept.highest?.value ?? 0) > 0;
      const scaled = (one: BatteryFigure | null) =>
        measured && one !== null ? { value: inUnit(one.value, unit), at: one.at } : null;
      if (!measured && kept.low === null) return [];
      return [
        {
          station: name,
          column: measured ? (battery?.name ?? null) : null,
          unit: measured ? (unit === '%' ? ('%' as const) : ('V' as const)) : null,
          highest: scaled(kept.highest),
          lowest: scaled(kept.lowest),
          last: scaled(kept.last),
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
    const kept = this.of(station);
    if (kept.highest === null || value > kept.highest.value) kept.highest = { value, at };
    if (kept.lowest === null || value < kept.lowest.value) kept.lowest = { value, at };
    if (kept.last === null || at >= (kept.last.at ?? at)) kept.last = { value, at };
  }

  private remark(station: Station, text: string, at: EpochMillis): void {
    const kept = this.of(station);
    if (kept.low === null || at < (kept.low.at ?? at)) kept.low = { text: shown(text), at };
  }

  private of(station: Station): Kept {
    const known = this.kept.get(station);
    if (known !== undefined) return known;
    const made: Kept = { highest: null, lowest: null, last: null, low: null };
    this.kept.set(station, made);
    return made;
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
