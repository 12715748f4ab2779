import type { BoxForecast, Interval, StageWindow } from '../../forecasting/index.js';

/** The codes of some remarks, in their order. */
export const codes = (remarks: readonly { code: string }[]): string[] => remarks.map(({ code }) => code);

/** The window of a stage; it must be there. */
export function stage(of: { readonly windows: readonly StageWindow[] }, name: string): StageWindow {
  const found = of.windows.find((window) => window.stage === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

/** Days from p10 to p90; NaN where there are none. */
export const width = ({ p10, p90 }: Interval): number => (p90 ?? Number.NaN) - (p10 ?? Number.NaN);

/** What a forecast says of some boxes, without the days it rests on, as text to compare. */
export const asText = (boxes: readonly BoxForecast[]): string =>
  JSON.stringify(boxes.map((each) => ({ ...each, water: null })));

/** Every number in an answer but its water. */
export function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (ArrayBuffer.isView(value) || value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'water' ? [] : numbers(inner)));
}
