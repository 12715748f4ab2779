import type { Quantity } from '../batch.js';
import type { TemperatureUnit } from '../download.js';

/** How a stated number becomes °C, m or m³/s: `value = stated × times + plus`. */
export interface Conversion {
  readonly quantity: Quantity;
  readonly times: number;
  readonly plus: number;
  /** null where the quantity is no temperature. */
  readonly unit: TemperatureUnit | null;
}

const temperature = (unit: TemperatureUnit, times: number, plus: number): Conversion => ({
  quantity: 'temperature',
  times,
  plus,
  unit,
});

/** Kelvin is exact by definition of the Celsius scale; Fahrenheit by its definition from it. */
export const TEMPERATURES: Record<TemperatureUnit, Conversion> = {
  C: temperature('C', 1, 0),
  F: temperature('F', 5 / 9, -160 / 9),
  K: temperature('K', 1, -273.15),
};

const length = (times: number): Conversion => ({ quantity: 'level', times, plus: 0, unit: null });
const flow = (times: number): Conversion => ({ quantity: 'discharge', times, plus: 0, unit: null });
/** The international foot. */
const FOOT = 0.3048;

/**
 * Units as services write them, lower case, without blanks, degree signs and carets. UCUM codes (`Cel`, `[degF]`,
 * `K`, `m3/s`, `[ft_i]`) are what the WaterML 2.0 schema asks for; the others are met in practice (memory).
 */
const UNITS: ReadonlyMap<string, Conversion> = new Map([
  ...['cel', 'c', 'degc', 'celsius', 'degreecelsius', 'degreescelsius', 'degree_celsius', 'degcel'].map(
    (name) => [name, TEMPERATURES.C] as const,
  ),
  ...['[degf]', 'f', 'degf', 'fahrenheit', 'degreefahrenheit', 'degreesfahrenheit', 'degree_fahrenheit'].map(
    (name) => [name, TEMPERATURES.F] as const,
  ),
  ...['k', 'kelvin', 'degk'].map((name) => [name, TEMPERATURES.K] as const),
  ...['m', 'meter', 'metre', 'meters', 'metres'].map((name) => [name, length(1)] as const),
  ['cm', length(0.01)],
  ['mm', length(0.001)],
  ...['ft', 'foot', 'feet', '[ft_i]'].map((name) => [name, length(FOOT)] as const),
  ...['m3/s', 'm3.s-1', 'm3s-1', 'cumec', 'cumecs', 'm³/s'].map((name) => [name, flow(1)] as const),
  ...['l/s', 'l.s-1'].map((name) => [name, flow(0.001)] as const),
  ...['ft3/s', 'cfs', '[ft_i]3/s', '[cft_i]/s'].map((name) => [name, flow(FOOT ** 3)] as const),
]);

/** The last part of a URL, a URN or a reference into the document; any other text is its own last part. */
export function lastPart(reference: string): string {
  if (!/^(?:[a-z][\w+.-]*:\/\/|urn:|#)/i.test(reference)) return reference;
  return (
    reference
      .replace(/[/#:=]+$/, '')
      .split(/[/#:=]/)
      .at(-1) ?? reference
  );
}

/** What a unit says; null where it is none of the units known here. */
export function conversionOf(unit: string): Conversion | null {
  const plain = (text: string): string => text.toLowerCase().replace(/[\s°º^]/g, '');
  return UNITS.get(plain(unit)) ?? UNITS.get(plain(lastPart(unit))) ?? null;
}

const LEVEL = /level|stage|gau?ge.?height|water.?height|hauteur|niveau|\b00065\b/i;
const DISCHARGE = /discharge|streamflow|flow|d[ée]bit|\b00060\b/i;
/** USGS parameter code 00010 is water temperature, 00020 air temperature (USGS parameter list, memory). */
const TEMPERATURE = /temp|\b00010\b|\b00020\b/i;
const AIR = /\bair\b|_air|air_|airtemp|\b00020\b/i;
const DERIVED = /dew|wet.?bulb|conductance|ros[ée]e/i;

/** What an observed property measures, by its names and addresses; null where it is none of ours. */
export function quantityOf(property: string): Quantity | null {
  if (DERIVED.test(property)) return null;
  if (TEMPERATURE.test(property)) return 'temperature';
  if (DISCHARGE.test(property)) return 'discharge';
  return LEVEL.test(property) ? 'level' : null;
}

export const isAir = (property: string): boolean => AIR.test(property);

export const isWater = (property: string): boolean => /water|\beau\b|\b00010\b|river|stream/i.test(property);
