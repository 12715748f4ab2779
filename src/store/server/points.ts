import type { Series } from '../entries.js';

export const MEASUREMENT = 'reading';

/** Temperature readings are the field `value`; other quantities and daily means have fields of their own. */
export function fieldOf({ quantity, span }: Pick<Series, 'quantity' | 'span'>): string {
  if (span === 'day') return `${quantity}_day`;
  return quantity === 'temperature' ? 'value' : quantity;
}

/** What stands before the value in every line of a station's readings of one load. */
export function linePrefix(station: number, load: string, field: string): string {
  return `${MEASUREMENT},load=${load},station=${station} ${field}=`;
}
