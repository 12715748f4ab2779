/** A moment as a clock on the wall shows it, and that clock's offset in minutes east of UTC. */
export interface Wall {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  readonly offset: number;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formats.set(zone, made);
  return made;
}

function ianaWallMillis(at: number, zone: string): number {
  const parts = new Map(
    formatOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const part = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? 0;
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second'));
}

/** Minutes east of UTC in `UTC`, `UTC±HH:MM`; null for an IANA name. */
export function fixedOffset(zone: string): number | null {
  if (zone === 'UTC') return 0;
  const found = /^UTC([+-])(\d\d):(\d\d)$/.exec(zone);
  if (found === null) return null;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 60 + Number(found[3]));
}

/**
 * What a clock kept in `zone` shows at an instant. The platform's own zone tables (Intl) are asked, never the code
 * under test.
 *
 * @param at a whole number of seconds
 */
export function wallAt(at: number, zone: string): Wall {
  const offset = fixedOffset(zone) ?? (ianaWallMillis(at, zone) - at) / 60_000;
  const shown = new Date(at + offset * 60_000);
  return {
    year: shown.getUTCFullYear(),
    month: shown.getUTCMonth() + 1,
    day: shown.getUTCDate(),
    hour: shown.getUTCHours(),
    minute: shown.getUTCMinutes(),
    second: shown.getUTCSeconds(),
    offset,
  };
}

const two = (n: number): string => String(n).padStart(2, '0');

/** `+05:45`, `-03:30`, `+00:00`. */
export function offsetText(minutes: number, colon = ':'): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}${colon}${two(size % 60)}`;
}
