import { DateTime, FixedOffsetZone, IANAZone, type Zone } from 'luxon';

/** `UTC` or `UTC±HH:MM`, the way this program writes a fixed offset. */
const FIXED = /^UTC(?:([+-])(\d{2}):([0-5]\d))?$/;
/** IANA names start with a letter and hold no bare offset, which Intl would accept too. */
const IANA = /^[A-Za-z][A-Za-z0-9_+-]*(?:\/[A-Za-z0-9_+-]+)*$/;
/** The widest offset any zone on Earth has used, in minutes (+14:00). */
const WIDEST_OFFSET = 14 * 60;

/**
 * The zone a name stands for, or null: an IANA name (`America/St_Johns`), `UTC`, or a fixed `UTC±HH:MM`.
 */
export function zoneNamed(name: string): Zone | null {
  const fixed = FIXED.exec(name);
  if (fixed) {
    const minutes = Number(fixed[2] ?? 0) * 60 + Number(fixed[3] ?? 0);
    if (minutes > WIDEST_OFFSET) return null;
    return FixedOffsetZone.instance(fixed[1] === '-' ? -minutes : minutes);
  }
  const known = knownZones.get(name);
  if (known !== undefined) return known;
  if (!IANA.test(name) || !IANAZone.isValidZone(name)) return null;
  const zone = IANAZone.create(name);
  knownZones.set(name, zone);
  return zone;
}

/** Asking whether a name is a zone costs a millisecond each time; there are some six hundred. */
const knownZones = new Map<string, Zone>();

/**
 * The fixed standard-time offset of a zone in minutes east of UTC: the smaller of its January and July offsets in
 * `year`, so that a day never has 23 or 25 hours. Throws RangeError where the zone has no such name.
 * Example: standardOffset('America/St_Johns') is -210 (summer time is -150).
 */
export function standardOffset(name: string, year = REFERENCE_YEAR): number {
  const zone = zoneNamed(name);
  if (zone === null) throw new RangeError(`no such zone: ${name}`);
  return Math.min(zone.offset(Date.UTC(year, 0, 1)), zone.offset(Date.UTC(year, 6, 1)));
}

/** One year for every station of a group, so that a station's days do not shift with the season. */
const REFERENCE_YEAR = 2025;

/** The moments (epoch ms) a wall clock in this zone shows these digits: none in the spring gap, two in autumn. */
export function momentsShowing(wall: WallClock, zone: Zone): number[] {
  const asUtc = Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second);
  const halfDay = 12 * 3_600_000;
  const offsets = new Set([zone.offset(asUtc - halfDay), zone.offset(asUtc), zone.offset(asUtc + halfDay)]);
  return [...offsets]
    .map((minutes) => asUtc - minutes * 60_000)
    .filter((at) => at + zone.offset(at) * 60_000 === asUtc)
    .sort((a, b) => a - b);
}

/** Digits on a wall clock; month and day count from 1. */
export interface WallClock {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** A moment as ISO 8601 with the zone's offset then, to the second: 2025-11-04T14:30:00-03:30. */
export function isoIn(zone: Zone, at: number): string {
  return DateTime.fromMillis(at, { zone }).toFormat("yyyy-MM-dd'T'HH:mm:ssZZ");
}
