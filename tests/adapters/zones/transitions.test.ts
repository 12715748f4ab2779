import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { zoneNamed } from '../../../adapters/zones/zone.js';

function named(name: string) {
  const zone = zoneNamed(name);
  if (zone?.kind !== 'named') throw new Error(`${name} is no named zone`);
  return zone.transitions;
}

describe('changes of a zone', () => {
  // Canadian and United States rule since 2007: second Sunday of March, first Sunday of November, 02:00 wall time
  // (St. John's likewise since November 2011); IANA time zone database.
  it.each([
    ['America/Halifax', ['2026-03-08T06:00:00Z', '2026-11-01T05:00:00Z']],
    ['America/St_Johns', ['2026-03-08T05:30:00Z', '2026-11-01T04:30:00Z']],
    ['America/Toronto', ['2026-03-08T07:00:00Z', '2026-11-01T06:00:00Z']],
    ['Asia/Kathmandu', []],
    ['America/Regina', []],
  ])('%s in 2026', (zone, expected) => {
    const found = named(zone).between(Date.UTC(2026, 0, 1), Date.UTC(2027, 0, 1));
    expect(found.map(({ at }) => new Date(at).toISOString().replace('.000Z', 'Z'))).toEqual(expected);
  });

  it('lie where luxon puts them, whatever years are asked for first', () => {
    const zones = fc.constantFrom(
      'America/St_Johns',
      'Europe/Dublin',
      'Australia/Lord_Howe',
      'Africa/Casablanca',
    );
    const instants = fc.array(fc.integer({ min: Date.UTC(1950, 0, 1), max: Date.UTC(2040, 0, 1) }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(zones, instants, (zone, asked) => {
        const year = 366 * 86_400_000;
        for (const at of asked) {
          for (const change of named(zone).between(at - year, at + year)) {
            const offset = (instant: number) => DateTime.fromMillis(instant, { zone }).offset * 60_000;
            expect(offset(change.at - 1)).toBe(change.before);
            expect(offset(change.at)).toBe(change.after);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keep the smaller offset as standard time on both sides of the equator', () => {
    expect(named('America/St_Johns').standardOffset(Date.UTC(2026, 6, 1))).toBe(-3.5 * 3_600_000);
    expect(named('Australia/Hobart').standardOffset(Date.UTC(2026, 0, 1))).toBe(10 * 3_600_000);
    expect(named('Europe/Dublin').standardOffset(Date.UTC(2026, 6, 1))).toBe(0);
  });
});

describe('names of zones', () => {
  it.each([
    ['UTC', 'UTC'],
    ['UTC-03:30', 'UTC-03:30'],
    ['UTC+05:45', 'UTC+05:45'],
    ['UTC−4', 'UTC-04:00'],
    ['-0330', 'UTC-03:30'],
    ['+00:00', 'UTC'],
    ['America/Halifax', 'America/Halifax'],
  ])('%s', (text, name) => {
    expect(zoneNamed(text)?.name).toBe(name);
  });

  it.each(['', 'Mars/Olympus', 'local', 'UTC+15:00', 'UTC+4:75', 'AST', 'Halifax'])('%s is none', (text) => {
    expect(zoneNamed(text)).toBeNull();
  });
});
