export const READINGS = 120;
const HOUR = 3_600_000;
const START = Date.UTC(2025, 10, 1);

/** Load k holds the value k (of tenths) at 120 hours from hour 30·k on: each load covers three quarters of the one before. */
export function loadValues(load: number): { length: number; at: Float64Array; value: Float64Array } {
  return {
    length: READINGS,
    at: Float64Array.from({ length: READINGS }, (_, i) => START + (30 * load + i) * HOUR),
    value: new Float64Array(READINGS).fill(load / 10),
  };
}
