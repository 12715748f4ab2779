import type { EpochMillis } from './entries.js';

/** A spell as the catalogue keeps it; `judged` is JSON, the judging's own. */
export interface SpellEntry {
  readonly id: string;
  readonly found: EpochMillis;
  readonly changed: EpochMillis;
  readonly judged: string;
  readonly seen: { readonly by: string; readonly at: EpochMillis; readonly note: string } | null;
  readonly settled: {
    readonly how: string;
    readonly by: string;
    readonly at: EpochMillis;
    readonly note: string;
  } | null;
}

export interface SpellEventRow {
  readonly number: number;
  readonly judging: number;
  readonly change: string;
  readonly at: EpochMillis;
  readonly judged: string;
}

export interface JudgingRow {
  readonly number: number;
  readonly at: EpochMillis;
  /** What was known: see `judgedFrom`. */
  readonly from: string;
}

/** One judging: the spells that are new or have changed, and what is to be told of them. */
export interface JudgingEntry {
  readonly view: number;
  readonly at: EpochMillis;
  readonly from: string;
  readonly spells: readonly SpellEntry[];
  readonly events: readonly { readonly change: string; readonly judged: string }[];
}
