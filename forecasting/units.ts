/** Degrees Celsius. */
export type Celsius = number;
/** Whole days since 1970-01-01 in a station's fixed standard-time offset: no day has 23 or 25 hours. */
export type DayNumber = number;
/** A moment: milliseconds since 1970-01-01 UTC. */
export type EpochMillis = number;
/** A moment on the day axis: DayNumber plus the fraction of the day gone (12:00 is .5). */
export type DayTime = number;
/** Degree-days above a table's base, °C·day. */
export type ThermalUnits = number;
/** Fraction of the way to a stage: 0 at fertilisation, 1 when half of the eggs have reached it. */
export type Progress = number;
