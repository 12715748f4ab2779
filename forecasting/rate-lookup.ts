import { COLDEST, dailyRate } from './law.js';
import type { Law } from './table.js';

/** Steps a degree: with straight lines between steps the rate of every shipped law is right to 1e-7 of itself. */
export const STEPS = 100;
const WARMEST = 40;
const LENGTH = Math.round((WARMEST - COLDEST) * STEPS) + 1;

const known = new WeakMap<Law, Float64Array>();

/** dailyRate at COLDEST, COLDEST + 0.01 … 40 °C: a power in every inner loop is what makes a season slow. */
export function rateTable(law: Law): Float64Array {
  let rates = known.get(law);
  if (rates === undefined) {
    rates = Float64Array.from({ length: LENGTH }, (_, i) => dailyRate(law, COLDEST + i / STEPS));
    known.set(law, rates);
  }
  return rates;
}

/** Rate per day at T out of a rate table; warmer than 40 °C is read as 40. */
export function lookUp(rates: Float64Array, celsius: number): number {
  const x = (celsius - COLDEST) * STEPS;
  if (!(x > 0)) return rates[0];
  if (x >= LENGTH - 1) return rates[LENGTH - 1];
  const i = x | 0;
  return rates[i] + (x - i) * (rates[i + 1] - rates[i]);
}
