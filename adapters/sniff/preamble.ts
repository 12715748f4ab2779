import type { StatedPlace } from '../batch.js';
import type { DateOrder, Delimiter, TemperatureUnit } from '../download.js';
import { plain } from '../fields/plain.js';
import { fieldsOf } from '../fields/quoted.js';
import type { StatedClock } from '../reading/plan.js';
import { fold } from './fold.js';
import { clockInPreamble } from './stated-clock.js';
import { temperatureUnit } from './unit-text.js';

/** What the lines before a table say of it. */
export interface Preamble {
  readonly unit: TemperatureUnit | null;
  readonly clock: StatedClock | null;
  readonly station: string | null;
  readonly serial: string | null;
  readonly order: DateOrder | null;
  readonly place: StatedPlace | null;
  readonly daily: boolean;
  readonly medium: 'water' | 'air' | null;
}

const stationKey =
  /^(?:station(?: name| id| no| number)?|site(?: name| id| code)?|nom (?:de la station|du site)|nom de station|location|lieu|emplacement|endroit|poste)$/;
const serialKey =
  /^(?:(?:logger |device |instrument |enregistreur |sensor )?(?:serial(?: number| no)?|s n|sn)|(?:n|no|num|numero) de serie(?: de l enregistreur)?|serie|logger(?: id)?|enregistreur|device id|serial num)$/;
const serialInText = /\bS\/?N[:\s#]+([A-Za-z0-9-]{3,})/;
const notAboutReadings =
  /accuracy|pr[ée]cision|range|alarm|alerte|r[ée]solution|plage|seuil|exactitude|threshold/i;
const aboutUnit = /unit|temp|°|celsius|fahrenheit|kelvin/i;
const dailyMean = /\b(?:daily|journali[eè]re?s?|quotidien(?:ne)?s?)\b/i;

/** "Key: value", "Key = value", or key and value in two fields. */
function statement(line: string, delimiter: Delimiter): { key: string; value: string } | null {
  const text = line.replace(/^[#"\s/*]+/, '');
  const fields = text.split(delimiter);
  const colon = /^([^:=]{1,40})[:=]\s*(.+)$/.exec(fields[0]);
  const key = colon?.[1] ?? (fields.length > 1 ? fields[0] : null);
  const value = plain((colon?.[2] ?? fields[1] ?? '').replace(/^"+|"+$/g, ''));
  return key === null || value === '' ? null : { key: fold(key), value };
}

/** The logger or station that a line of a preamble names, or null. */
export function loggerNamed(
  line: string,
  delimiter: Delimiter,
): { kind: 'station' | 'serial'; name: string } | null {
  const said = statement(line, delimiter);
  if (said !== null && serialKey.test(said.key) && /\d/.test(said.value))
    return { kind: 'serial', name: said.value };
  if (said !== null && stationKey.test(said.key)) return { kind: 'station', name: said.value };
  return null;
}

/** A serial number as headers mention it ("S/N: 1234"), or null. */
export function serialInHeader(header: string): string | null {
  return serialInText.exec(header)?.[1] ?? null;
}

/** The order of dates that a pattern such as jj/mm/aaaa states, or null. */
export function statedOrder(text: string): DateOrder | null {
  if (/\b(?:dd?|jj?)[/.\- ](?:mm?|mmm)[/.\- ](?:yy|aa)/i.test(text)) return 'dmy';
  if (/\bmm?[/.\- ](?:dd?|jj?)[/.\- ](?:yy|aa)/i.test(text)) return 'mdy';
  return /\b(?:yy|aa)(?:yy|aa)?[/.\- ]mm?[/.\- ](?:dd?|jj?)\b/i.test(text) ? 'ymd' : null;
}

function coordinate(lines: readonly string[], delimiter: Delimiter, key: RegExp): number | null {
  for (const line of lines) {
    const said = statement(line, delimiter);
    if (said === null || !key.test(said.key)) continue;
    const value = Number(said.value.replace(',', '.').replace(/°.*$/, ''));
    if (Number.isFinite(value)) return value;
  }
  return null;
}

function unitStated(line: string): TemperatureUnit | null {
  if (notAboutReadings.test(line) || !aboutUnit.test(line)) return null;
  return temperatureUnit(
    line
      .replaceAll('"', '')
      .replace(/^[#\s]+/, '')
      .replace(/[\s;,\t|]+$/, ''),
  );
}

/** Reads the lines before a table. The header itself is read column by column elsewhere. */
export function readPreamble(lines: readonly string[], delimiter: Delimiter): Preamble {
  // Key and value may stand in cells of their own: "Unit|K" is "Unit: K".
  const joined = lines.map((line) =>
    fieldsOf(line, delimiter)
      .filter((field) => field.trim() !== '')
      .join(': '),
  );
  const named = lines.map((line) => loggerNamed(line, delimiter));
  const first = <Found>(seek: (line: string) => Found | null): Found | null => {
    for (const line of joined) {
      const found = seek(line);
      if (found !== null) return found;
    }
    return null;
  };
  const latitude = coordinate(lines, delimiter, /^lat(?:itude)?$/);
  const longitude = coordinate(lines, delimiter, /^(?:lon|long|lng|longitude)$/);
  const inPlace =
    latitude !== null && longitude !== null && Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;
  return {
    unit: first(unitStated),
    clock: first(clockInPreamble),
    station: named.find((found) => found?.kind === 'station')?.name ?? null,
    serial: named.find((found) => found?.kind === 'serial')?.name ?? first(serialInHeader),
    order: first(statedOrder),
    place: inPlace ? { latitude, longitude } : null,
    daily: lines.some((line) => dailyMean.test(line)),
    medium: first((line) =>
      /\bair\b/i.test(line) && !/\b(?:water|eau)\b/i.test(line) && /temp/i.test(line) ? 'air' : null,
    ),
  };
}
