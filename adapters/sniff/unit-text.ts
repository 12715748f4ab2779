import type { TemperatureUnit } from '../download.js';

const degrees = '(?:[°º˚\\ufffd]|deg(?:rees?|r[eé]s|s)?\\.?|degr[eé]s?)\\s*';
const patterns: readonly RegExp[] = [
  new RegExp(`${degrees}(c|f|k)(?![a-z])`, 'i'),
  /\b(celsius|fahrenheit|kelvin)\b/i,
  /[([]\W{0,3}(c|f|k)[)\]]/i,
  /[,;:]\s*(c|f|k)\s*$/i,
  /(?:^|[a-z0-9])_(?:deg_?)?(c|f|k)$/i,
  /\btemp(?:erature|\.)?\s(c|f|k)$/i,
  /(?:temp|temperature)(C|F|K)$/,
  /^(C|F|K)$/,
];

/** The unit of temperature that a header or a line of the preamble states, or null. */
export function temperatureUnit(text: string): TemperatureUnit | null {
  const trimmed = text.trim();
  for (const pattern of patterns) {
    const letter = pattern.exec(trimmed)?.[1][0].toUpperCase();
    if (letter === 'C' || letter === 'F' || letter === 'K') return letter;
  }
  return null;
}

/** Metres in a unit of level. The foot is the international one, 0.3048 m exactly. */
const levels: readonly (readonly [RegExp, number])[] = [
  [/[([,_\s](?:mm|millim[eè]tres?|millimeters?)[)\]]?$/i, 0.001],
  [/[([,_\s](?:cm|centim[eè]tres?|centimeters?)[)\]]?$/i, 0.01],
  [/[([,_\s](?:m|m[eè]tres?|meters?)[)\]]?$/i, 1],
  [/[([,_\s](?:ft|feet|pieds?)[)\]]?$/i, 0.3048],
];

/** Cubic metres per second in a unit of discharge. */
const discharges: readonly (readonly [RegExp, number])[] = [
  [/(?:cms|m3\/s|m³\/s|m\^3\/s|m3s|m3 s-1|cumecs?)[)\]]?$/i, 1],
  [/(?:l\/s|litres? par seconde|lps)[)\]]?$/i, 0.001],
  [/(?:cfs|ft3\/s|ft³\/s|pi3\/s)[)\]]?$/i, 0.3048 ** 3],
];

function factorIn(text: string, units: readonly (readonly [RegExp, number])[]): number | null {
  return units.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? null;
}

/** Metres in the unit that a header of a level states, or null. */
export function levelFactor(header: string): number | null {
  return factorIn(header, levels);
}

/** m³/s in the unit that a header of a discharge states, or null. */
export function dischargeFactor(header: string): number | null {
  return factorIn(header, discharges);
}
