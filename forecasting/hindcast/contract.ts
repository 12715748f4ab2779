import type { DevelopmentTable, StageName } from '../table.js';
import type { DayNumber } from '../units.js';

/** What was hidden, and what was known, when a past winter was forecast. */
export type HindcastCase = 'history' | 'late-download' | 'under-ice';

/** A day of the year: month 1-12, day 1-31. */
export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

export interface HindcastOptions {
  readonly cases: readonly (HindcastCase | 'gaps')[];
  readonly table: DevelopmentTable;
  /** Stages of the table; "last-hatch" and "first-emergence" are those of the last and the first eggs (95 and 5 %). */
  readonly stages: readonly StageName[];
  readonly fertilised: MonthDay;
  readonly leads: readonly MonthDay[];
  /** Lengths of gaps, days. */
  readonly gapDays: readonly number[];
  /** 'leave-one-out': every other winter may be used; 'past-only': those before it. */
  readonly winters: 'leave-one-out' | 'past-only';
  /** Visits a crew could have made are simulated from the hidden record and used as evidence. */
  readonly visits?: boolean;
  readonly seed: number;
  readonly traces: number;
}

/** Names of the plain methods. */
export type PlainMethod = 'ensemble' | 'bestNeighbour' | 'bestNeighbourBeyond1km' | 'persistence';

/** Days from 00:00 on the fertilisation day; Infinity where the stage is not reached. */
export interface HindcastRow {
  readonly case: HindcastCase;
  readonly lead: MonthDay;
  readonly stage: StageName;
  readonly station: string;
  /** Stations no further than 25 km apart, one by one, are a network: what happens there happens to all of them. */
  readonly network: number;
  /** Year of fertilisation. */
  readonly winter: number;
  readonly fertilised: DayNumber;
  /** Null: the record ends before the stage. */
  readonly observed: number | null;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Continuous ranked probability score of the courses in its fair form, days; null where one never gets there. */
  readonly crps: number | null;
  readonly reference: Readonly<Partial<Record<PlainMethod, number>>>;
  /** Fair score of the plain ensemble's members, days. */
  readonly ensembleCrps: number | null;
  readonly icy: boolean;
  /** The stage had come before the lead date. */
  readonly passed: boolean;
  /** Past winters behind the projection. */
  readonly winters: number;
}

/** One hidden stretch of a measured record. */
export interface GapRow {
  readonly days: number;
  readonly station: string;
  readonly winter: number;
  readonly from: DayNumber;
  readonly n: number;
  readonly squares: number;
  readonly covered: number;
  readonly width: number;
  /** Days and squares of error on days where the plain method has an answer too, and its own. */
  readonly line: Compared;
  readonly bestNeighbour: Compared;
  /** The days on which both plain methods have an answer; squares of error throughout. */
  readonly shared: GapShared;
  readonly icy: boolean;
}

export interface GapShared {
  readonly n: number;
  readonly squares: number;
  readonly covered: number;
  readonly width: number;
  readonly line: number;
  readonly bestNeighbour: number;
}

export interface Compared {
  readonly n: number;
  readonly own: number;
  readonly plain: number;
}

export interface HindcastRows {
  readonly rows: readonly HindcastRow[];
  readonly gaps: readonly GapRow[];
  readonly notes: readonly HindcastNote[];
}

/** Why a station or a winter says nothing here. */
export interface HindcastNote {
  readonly kind: 'no-whole-winter' | 'one-winter' | 'no-forecast';
  readonly station: string;
  readonly winter: number | null;
}
