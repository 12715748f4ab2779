import type { TemperatureUnit } from '../download.js';
import type { TextOf } from '../fields/bytes.js';
import { isMissingNumber, isMissingText } from '../fields/missing.js';
import { NumberField } from '../fields/number.js';
import { plain } from '../fields/plain.js';
import { COLDEST, celsius, inMetres, WARMEST } from '../fields/units.js';
import { foldWord } from '../fields/words-of-time.js';
import type { LineRemark } from '../words.js';
import { ByteDictionary } from './byte-dictionary.js';
import type { Plan } from './plan.js';
import type { Station, Stations } from './stations.js';

/** The values of a row in °C, m or m³/s. */
export class RowValues {
  readonly count: number;
  readonly positions: Int32Array;
  /** The station of each column, where each has its own. */
  readonly stations: readonly Station[];
  /** The value read last, in °C, m or m³/s. */
  value = Number.NaN;
  /** The unit its row states, where the plan has a column of units. */
  unit: TemperatureUnit = 'C';
  /** Why there is none; null where it is missing. */
  fault: LineRemark | null = null;
  private readonly number: NumberField;
  private readonly units = new ByteDictionary();
  private readonly unitOf: (TemperatureUnit | null)[] = [];

  constructor(
    private readonly plan: Plan,
    stations: Stations,
    private readonly textOf: TextOf,
  ) {
    this.count = plan.values.length;
    this.positions = Int32Array.from(plan.values, ({ index }) => index);
    this.stations = plan.values.flatMap(({ station }) => (station === null ? [] : [stations.open(station)]));
    this.number = new NumberField(plan.decimal, textOf);
  }

  get decimals(): number {
    return this.number.decimals;
  }

  /** Whether the row has a usable value in column k, which then stands in `value`; otherwise `fault` says why not. */
  read(k: number, b: Uint8Array, starts: Int32Array, ends: Int32Array): boolean {
    const { number } = this;
    const start = starts[this.positions[k]];
    const end = ends[this.positions[k]];
    if (!number.read(b, start, end)) return this.noNumber(b, start, end);
    const raw = number.value;
    if ((raw <= COLDEST || raw >= WARMEST) && isMissingNumber(raw)) return this.absent();
    const column = this.plan.values[k];
    if (column.quantity !== 'temperature') {
      this.value = inMetres(raw, column.factor);
      return true;
    }
    if (this.plan.unitColumn >= 0 && !this.statedUnit(b, starts, ends)) return false;
    this.value = celsius(raw, this.plan.unitColumn >= 0 ? this.unit : column.unit);
    return (this.value >= COLDEST && this.value <= WARMEST) || this.impossible(b, start, end);
  }

  private absent(): boolean {
    this.fault = null;
    return false;
  }

  private noNumber(b: Uint8Array, start: number, end: number): boolean {
    const text = this.textOf(b, start, end);
    if (isMissingText(text) || this.plan.missing.has(foldWord(text.trim()))) return this.absent();
    this.fault = { code: 'line-not-a-number', with: { text: shown(text) } };
    return false;
  }

  private impossible(b: Uint8Array, start: number, end: number): boolean {
    this.fault = { code: 'line-impossible-value', with: { text: shown(this.textOf(b, start, end)) } };
    return false;
  }

  private statedUnit(b: Uint8Array, starts: Int32Array, ends: Int32Array): boolean {
    const start = starts[this.plan.unitColumn];
    const end = ends[this.plan.unitColumn];
    const id = this.units.id(b, start, end);
    if (id === this.unitOf.length) this.unitOf.push(unitInCell(this.textOf(b, start, end)));
    const unit = this.unitOf[id];
    if (unit !== null) {
      this.unit = unit;
      return true;
    }
    this.fault = { code: 'line-unknown-unit', with: { text: shown(this.textOf(b, start, end)) } };
    return false;
  }
}

/** A unit standing alone in a cell: C, °F, deg C, Kelvin. */
export function unitInCell(cell: string): TemperatureUnit | null {
  const found = /^\W{0,3}(?:deg(?:rees?|r[eé]s)?\.?\s*)?(c|f|k|celsius|fahrenheit|kelvin)$/i.exec(
    cell.trim(),
  );
  const letter = found?.[1][0].toUpperCase();
  return letter === 'C' || letter === 'F' || letter === 'K' ? letter : null;
}

/** A field as a person is shown it: its beginning, without anything a terminal or a page would act upon. */
export function shown(text: string): string {
  const line = plain(text);
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}
