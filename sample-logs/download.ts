/** What a sample download holds of one station: the readings as anybody should read them out of the file. */
export interface Written {
  readonly station: string;
  readonly quantity: 'temperature' | 'level' | 'discharge';
  /** Means of local days (the instant is the day's midnight, local standard time) rather than readings. */
  readonly daily: boolean;
  /** Epoch ms, UTC. */
  readonly at: readonly number[];
  /** °C, m or m³/s as the file rounds them. */
  readonly value: readonly number[];
}

/** One file of the sample season. */
export interface SampleFile {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly holds: readonly Written[];
}

/** One reading as an instrument kept it. */
export interface Kept {
  readonly at: number;
  readonly value: number;
}

export const rounded = (value: number, decimals: number): number => {
  const factor = 10 ** decimals;
  return Math.round(value * factor + 0) / factor + 0;
};

/** A number with so many decimals; a decimal comma for the French files. */
export const written = (value: number, decimals: number, comma = false): string => {
  const text = rounded(value, decimals).toFixed(decimals);
  return comma ? text.replace('.', ',') : text;
};

export const holding = (
  station: string,
  kept: readonly Kept[],
  { daily = false, quantity = 'temperature' as Written['quantity'] } = {},
): Written => ({
  station,
  quantity,
  daily,
  at: kept.map(({ at }) => at),
  value: kept.map(({ value }) => value),
});

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
