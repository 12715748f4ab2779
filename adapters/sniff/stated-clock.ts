import { MINUTE } from '../fields/civil.js';
import { abbreviatedOffset, foldWord } from '../fields/words-of-time.js';
import type { StatedClock } from '../reading/plan.js';
import { fixedZone, zoneNamed } from '../zones/zone.js';

const SIGN = '[+\\-\u2212\u2013]';
const iana =
  /\b(?:Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Canada|Etc|Europe|Indian|Pacific|US)\/[A-Za-z_+\-0-9]+(?:\/[A-Za-z_]+)?/;
const fromUtc = new RegExp(
  `\\b(?:UTC|GMT|TUC?)\\s*(${SIGN})\\s*(\\d{1,2})(?:[:hH]?([0-5]\\d)|[.,](\\d+))?(?!\\d)`,
);
/** A sign, hours and minutes at a header's end: no duration or time of day is written so. */
const bareOffset = new RegExp(`[\\s([](${SIGN})(\\d{1,2}):([0-5]\\d)\\s*[)\\]]?$`);
const zoneLine =
  /\b(?:time[ _-]?zone|timezone|fuseau(?:\s+horaire)?|(?:utc|gmt|tz|time[ _]zone)[ _-]*offset|d[ée]calage(?:\s+(?:horaire|utc|gmt))?|offset from (?:utc|gmt))\b/i;
const zoneLineOffset = new RegExp(
  `(${SIGN}?)\\s*(\\d{1,2})(?:[:hH]([0-5]\\d)|[.,](\\d+))?\\s*(?:h|hours?|heures?)?\\W*$`,
);
const standard = /\b(?:LST|HNL|local standard time|heure normale locale)\b/i;
const bracketed = /[([]\s*([A-Za-z]{2,4})\s*[)\]]/;
const plainUtc = /(?:^|[^A-Za-z])(?:UTC|GMT|TUC|Zulu)(?:$|[^A-Za-z+-])/i;
const zoneWord = /[:=;,\t]\s*"?([A-Za-z]{2,5})\b/;

/** A zone a file stated; one that nobody knows is kept as such, so that it can be said. */
function stated(text: string): StatedClock {
  const zone = zoneNamed(text);
  return zone === null ? { kind: 'unknown', text } : { kind: 'zone', zone, text };
}

function offsetOf(sign: string, hours: string, minutes?: string, fraction?: string): StatedClock {
  const size =
    Number(hours) * 60 + Number(minutes ?? 0) + (fraction === undefined ? 0 : Number(`0.${fraction}`) * 60);
  const zone = fixedZone((sign === '' || sign === '+' ? 1 : -1) * Math.round(size) * MINUTE);
  return { kind: 'zone', zone, text: zone.name };
}

function abbreviated(word: string | undefined): StatedClock | null {
  const offset = word === undefined ? null : abbreviatedOffset(foldWord(word));
  if (offset === null) return null;
  const zone = fixedZone(offset * MINUTE);
  return { kind: 'zone', zone, text: word ?? '' };
}

/** What the header of a time column says of its clock, or null. */
export function clockInHeader(header: string): StatedClock | null {
  const named = iana.exec(header);
  if (named !== null) return stated(named[0]);
  const offset = fromUtc.exec(header) ?? bareOffset.exec(header.trim());
  if (offset !== null) return offsetOf(offset[1], offset[2], offset[3], offset[4]);
  if (standard.test(header)) return { kind: 'standard' };
  const short = abbreviated(bracketed.exec(header)?.[1]) ?? abbreviated(/\s([A-Z]{3,4})$/.exec(header)?.[1]);
  if (short !== null) return short;
  return plainUtc.test(header.replaceAll('_', ' ')) ? stated('UTC') : null;
}

/** What a line of the preamble says of the file's clock, or null. A line with a date of its own speaks of that date. */
export function clockInPreamble(line: string): StatedClock | null {
  if (/\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[/.]\d{1,2}[/.]\d{2}/.test(line)) return null;
  const named = iana.exec(line);
  if (named !== null) return stated(named[0]);
  const offset = fromUtc.exec(line);
  if (offset !== null) return offsetOf(offset[1], offset[2], offset[3], offset[4]);
  if (standard.test(line)) return { kind: 'standard' };
  const about = zoneLine.exec(line);
  if (about === null) return null;
  const rest = line.slice(about.index + about[0].length);
  const number = zoneLineOffset.exec(rest);
  if (number !== null) return offsetOf(number[1], number[2], number[3], number[4]);
  const word = zoneWord.exec(rest)?.[1];
  return abbreviated(word) ?? unknownZone(rest);
}

/** "Time zone: Mars/Olympus" is a zone that nobody knows; "Time zone: local" is none. */
function unknownZone(rest: string): StatedClock | null {
  const text = /[:=;,\t]\s*"?([A-Za-z]+\/[A-Za-z_/]+)/.exec(rest)?.[1];
  return text === undefined ? null : { kind: 'unknown', text };
}
