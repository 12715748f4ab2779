import type { DateForm, Language, Stamp } from './stamp.js';

export type Unit = 'C' | 'F' | 'K';

export type TimeStyle =
  | { readonly kind: 'stamp'; readonly stamp: Stamp }
  | { readonly kind: 'epoch-s' | 'epoch-ms' | 'serial' };

/** Everything in which one delimited download may differ from the next. */
export interface Style {
  readonly encoding: 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'cp850';
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly decimal: '.' | ',';
  readonly eol: '\n' | '\r\n';
  /** Every cell in quotes, or only those that need them. */
  readonly quoteAll: boolean;
  readonly language: Language;
  /** Lines of preamble that say nothing of use, before those that do. */
  readonly chatter: readonly string[];
  /** Station, unit and offset in the preamble stand after a colon or in the next cell. */
  readonly preambleIn: 'line' | 'cells';
  readonly saysStation: 'preamble' | 'no';
  readonly header: boolean;
  /** The header again after this many readings; 0 never. */
  readonly headerEvery: number;
  readonly rowNumbers: boolean;
  /** Columns that are no temperature: a battery's voltage, events that are mostly empty. */
  readonly battery: boolean;
  readonly events: boolean;
  readonly notes: readonly string[];
  readonly time: TimeStyle;
  /** The zone the clock was kept in: IANA, `UTC` or `UTC±HH:MM`. */
  readonly zone: string;
  readonly saysOffset: 'header' | 'preamble' | 'value' | 'no';
  readonly unit: Unit;
  /** The temperature column's name, and how its unit stands behind it; null for the language's plain word. */
  readonly valueName: string | null;
  readonly unitForm: '(u)' | '[u]' | ', u';
  readonly saysUnit: 'header' | 'preamble' | 'no';
  readonly decimals: number;
  /** A second temperature column of the same kind, whose header says it is another sensor. */
  readonly secondColumn: boolean;
  /** Every third row holds this in place of a value; null never. */
  readonly missing: string | null;
  readonly gzipped: boolean;
}

export const stamp = (date: DateForm, more: Partial<Stamp> = {}): TimeStyle => ({
  kind: 'stamp',
  stamp: { date, clock: 24, seconds: true, apart: false, between: ' ', bare: false, ...more },
});

/** The plainest download there is; every layout says in what it differs. */
export const plainStyle: Style = {
  encoding: 'utf-8',
  delimiter: ',',
  decimal: '.',
  eol: '\n',
  quoteAll: false,
  language: 'en',
  chatter: [],
  preambleIn: 'line',
  saysStation: 'no',
  header: true,
  headerEvery: 0,
  rowNumbers: false,
  battery: false,
  events: false,
  notes: [],
  time: stamp('y-m-d', { between: 'T' }),
  zone: 'UTC',
  saysOffset: 'value',
  unit: 'C',
  valueName: null,
  unitForm: '(u)',
  saysUnit: 'header',
  decimals: 2,
  secondColumn: false,
  missing: null,
  gzipped: false,
};
