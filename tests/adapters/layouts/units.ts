import type { Unit } from './style.js';

/** Celsius to the unit; the definitions of the scales. */
export function fromCelsius(celsius: number, unit: Unit): number {
  if (unit === 'C') return celsius;
  return unit === 'F' ? celsius * 1.8 + 32 : celsius + 273.15;
}

export function toCelsius(stated: number, unit: Unit): number {
  if (unit === 'C') return stated;
  return unit === 'F' ? (stated - 32) / 1.8 : stated - 273.15;
}

/** Readings are kept to 1e-4 °C (the store's resolution). */
export const kept = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;

/** A number as a download writes it; never with thousands, never as -0.00. */
export function numberText(value: number, decimals: number, mark: '.' | ',' = '.'): string {
  const text = value.toFixed(decimals);
  const plain = Number(text) === 0 ? (0).toFixed(decimals) : text;
  return mark === ',' ? plain.replace('.', ',') : plain;
}

/** What a reading of `celsius` comes back as after it was written in `unit` with so many decimals. */
export const throughText = (celsius: number, unit: Unit, decimals: number): number =>
  kept(toCelsius(Number(numberText(fromCelsius(celsius, unit), decimals)), unit));
