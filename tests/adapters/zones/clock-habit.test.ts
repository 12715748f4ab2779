import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { codes, take } from '../reading.js';

const zones = [
  'America/Halifax',
  'America/St_Johns',
  'America/Toronto',
  'Europe/Dublin',
  'Australia/Lord_Howe',
];
const record = fc.record({
  zone: fc.constantFrom(...zones),
  minutes: fc.constantFrom(1, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360),
  start: fc.integer({ min: Date.UTC(2019, 0, 1) / 60_000, max: Date.UTC(2026, 0, 1) / 60_000 }),
  days: fc.integer({ min: 2, max: 400 }),
  falls: fc.boolean(),
});

/** Instants of a record, at most a few thousand. */
function instantsOf({ minutes, start, days }: { minutes: number; start: number; days: number }): number[] {
  const rows = Math.min(6000, Math.floor((days * 1440) / minutes));
  return Array.from({ length: rows }, (_, i) => (start + i * minutes) * 60_000);
}

function fileOf(instants: readonly number[], zone: string): string {
  const lines = instants.map((at, i) => {
    const time = DateTime.fromMillis(at, { zone }).toFormat('yyyy-MM-dd HH:mm');
    return `${time},${((i * 7) % 150) / 10}`;
  });
  return `Date and time,Water temp (°C)\n${lines.join('\n')}\n`;
}

const utcName = (offset: number) => {
  const minutes = Math.abs(offset);
  const hhmm = [Math.floor(minutes / 60), minutes % 60]
    .map((part) => String(part).padStart(2, '0'))
    .join(':');
  return `UTC${offset < 0 ? '-' : '+'}${hhmm}`;
};

describe('a clock, whatever zone and step', () => {
  it('that followed wall time comes out instant for instant', async () => {
    await fc.assert(
      fc.asyncProperty(record, async ({ zone, falls, ...shape }) => {
        const instants = instantsOf(shape);
        if (falls) instants.reverse();
        const { taken, report } = await take(fileOf(instants, zone), { zone });
        expect(taken.map(({ at }) => at)).toEqual(instants);
        expect(report.unusable.count).toBe(0);
      }),
      { numRuns: 60, seed: 1104 },
    );
  });

  it('that kept the offset it began with comes out instant for instant', async () => {
    await fc.assert(
      fc.asyncProperty(record, async ({ zone, falls, ...shape }) => {
        const instants = instantsOf(shape);
        const offset = DateTime.fromMillis(instants[0], { zone }).offset;
        if (falls) instants.reverse();
        const { taken, report } = await take(fileOf(instants, utcName(offset)), { zone });
        expect(taken.map(({ at }) => at)).toEqual(instants);
        expect(codes(report)).not.toContain('wall-time-shown');
      }),
      { numRuns: 60, seed: 1104 },
    );
  });
});

describe('a file across a change', () => {
  it('with a hole over it shows nothing, kept the offset it began with, and says so', async () => {
    const instants = instantsOf({ minutes: 60, start: Date.UTC(2025, 9, 30) / 60_000, days: 8 });
    const hole = instants.filter((at) => at < Date.UTC(2025, 10, 1, 12) || at > Date.UTC(2025, 10, 3));
    const { taken, report } = await take(
      fileOf(hole, 'UTC-03:00'),
      {},
      {
        zoneOf: () => ({ zone: 'America/Halifax', from: 'deployment' }),
      },
    );
    expect(taken.map(({ at }) => at)).toEqual(hole);
    expect(report.assumed).toContainEqual({
      code: 'kept-one-offset',
      with: { zone: 'America/Halifax', offset: 'UTC-03:00' },
    });
  });

  it('that does not reach one has nothing to settle', async () => {
    const instants = instantsOf({ minutes: 60, start: Date.UTC(2026, 0, 10) / 60_000, days: 8 });
    const { report } = await take(fileOf(instants, 'America/Halifax'), { zone: 'America/Halifax' });
    expect(codes(report)).toEqual(['zone-asked']);
  });

  it('may lose single readings beside it without being mistaken', async () => {
    const instants = instantsOf({ minutes: 15, start: Date.UTC(2025, 9, 30) / 60_000, days: 6 });
    const lost = instants.filter((_, i) => i % 17 !== 3);
    const wall = await take(fileOf(lost, 'America/St_Johns'), { zone: 'America/St_Johns' });
    expect(wall.taken.map(({ at }) => at)).toEqual(lost);
    const fixed = await take(fileOf(lost, 'UTC-02:30'), { zone: 'America/St_Johns' });
    expect(fixed.taken.map(({ at }) => at)).toEqual(lost);
  });
});
