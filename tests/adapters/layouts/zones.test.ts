import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameReadings } from './compare.js';
import { knowsZone } from './layout.js';
import { expectedOf } from './layouts-delimited.js';
import { type InventedSeries, invent } from './record.js';
import { plainStyle, type Style, stamp } from './style.js';
import { type Read, readThrough } from './through.js';
import { write } from './write.js';

const HOUR = 3_600_000;
const said = ({ report }: Read): string[] => report.assumed.map(({ code }) => code);

const record = (first: number, stepMinutes: number, readings: number, seed = 5): InventedSeries =>
  invent({ seed, stations: ['ford'], first, stepMinutes, readings })[0]!;

const kept = (zone: string): Style => ({
  ...plainStyle,
  zone,
  saysOffset: 'no',
  time: stamp('y-m-d', { seconds: false }),
});

/** Changes of 2024-2026 (IANA tz database; the dates are the published ones). */
const changes = [
  ['America/Halifax', Date.UTC(2025, 10, 2, 5), 'back'],
  ['America/Halifax', Date.UTC(2026, 2, 8, 6), 'forward'],
  ['America/St_Johns', Date.UTC(2025, 10, 2, 4, 30), 'back'],
  ['America/St_Johns', Date.UTC(2026, 2, 8, 5, 30), 'forward'],
  ['America/Vancouver', Date.UTC(2024, 10, 3, 9), 'back'],
  ['Europe/Dublin', Date.UTC(2025, 9, 26, 1), 'back'],
  ['Europe/Oslo', Date.UTC(2025, 2, 30, 1), 'forward'],
  ['Australia/Lord_Howe', Date.UTC(2025, 3, 5, 15), 'back'],
] as const;

describe('a clock that followed wall time', () => {
  it.each(changes)(
    '%s at %d: the hour back twice in the right order, the hour forward empty',
    async (zone, at) => {
      for (const step of [10, 30, 60]) {
        const series = record(at - 30 * HOUR, step, (60 * 60) / step);
        const style = kept(zone);
        sameReadings(await readThrough(write(series, style), { zone }), expectedOf(series, style));
        sameReadings(await readThrough(write(series, style), {}, knowsZone(zone)), expectedOf(series, style));
      }
    },
  );

  it('is found out from steps longer than the change, too', async () => {
    for (const step of [120, 180]) {
      const series = record(Date.UTC(2025, 9, 30, 12), step, 60);
      const style = kept('America/Halifax');
      sameReadings(
        await readThrough(write(series, style), { zone: 'America/Halifax' }),
        expectedOf(series, style),
      );
    }
  });

  it('over a whole winter, both changes in it', async () => {
    const series = record(Date.UTC(2025, 9, 20), 60, 24 * 200);
    const style = kept('America/Halifax');
    const read = await readThrough(write(series, style), { zone: 'America/Halifax' });
    sameReadings(read, expectedOf(series, style));
    expect(said(read)).toContain('wall-time-shown');
  });

  it('in a file that runs backwards in time', async () => {
    const series = record(Date.UTC(2025, 10, 1, 12), 30, 100);
    const newestFirst = { ...series, at: series.at.toReversed(), value: series.value.toReversed() };
    const style = kept('America/Halifax');
    const read = await readThrough(write(newestFirst, style), { zone: 'America/Halifax' });
    sameReadings(read, expectedOf(newestFirst, style));
  });

  it('costs the line in an hour that does not exist, and says which', async () => {
    const series = record(Date.UTC(2025, 9, 20), 60, 24 * 150);
    const lines = Buffer.from(write(series, kept('America/Halifax')))
      .toString()
      .split('\n');
    const before = lines.findIndex((line) => line.startsWith('2026-03-08 03:00'));
    const file = lines.toSpliced(before, 0, '2026-03-08 02:30,1.00').join('\n');
    const read = await readThrough(new Uint8Array(Buffer.from(file)), { zone: 'America/Halifax' });
    sameReadings(read, expectedOf(series, kept('America/Halifax')));
    expect(read.report.unusable).toMatchObject({
      count: 1,
      examples: [{ line: before + 1, reason: { code: 'line-skipped-hour' } }],
    });
  });
});

describe('a clock that kept one offset', () => {
  it.each(changes)('%s at %d: the one in force when the file began, and said', async (zone, at) => {
    const series = record(at - 30 * HOUR, 30, 120);
    const began = kept(zone);
    const first = Buffer.from(
      write({ ...series, at: [series.at[0]!], value: [1] }, { ...began, saysOffset: 'value' }),
    ).toString();
    const offset = /([+-]\d\d:\d\d)/.exec(first.split('\n')[1]!.slice(11))?.[1] ?? '+00:00';
    const style = kept(`UTC${offset}`);
    const read = await readThrough(write(series, style), {}, knowsZone(zone));
    sameReadings(read, expectedOf(series, style));
    expect(said(read).some((code) => /^(?:kept-one-offset|fixed-offset-shown)$/.test(code))).toBe(true);
  });

  it('the one the file states, whatever the station’s zone', async () => {
    const series = record(Date.UTC(2025, 10, 1, 12), 60, 72);
    const style: Style = { ...kept('UTC-05:00'), saysOffset: 'header' };
    sameReadings(
      await readThrough(write(series, style), {}, knowsZone('America/Halifax')),
      expectedOf(series, style),
    );
  });

  it('the deployment’s where the file states none', async () => {
    const series = record(Date.UTC(2025, 10, 1, 12), 60, 72);
    const style = kept('UTC-04:00');
    const read = await readThrough(write(series, style), {}, knowsZone('UTC-04:00', 'deployment'));
    sameReadings(read, expectedOf(series, style));
    expect(said(read)).toContain('zone-from-deployment');
  });

  it('any offset a clock can keep, stated anywhere', async () => {
    const minutes = fc.integer({ min: -48, max: 56 }).map((quarters) => quarters * 15);
    const where = fc.constantFrom('header', 'preamble', 'value', 'no');
    await fc.assert(
      fc.asyncProperty(minutes, where, fc.integer({ min: 0, max: 1e6 }), async (offset, saysOffset, seed) => {
        const size = Math.abs(offset);
        const clock = `${String(Math.floor(size / 60)).padStart(2, '0')}:${String(size % 60).padStart(2, '0')}`;
        const zone = `UTC${offset < 0 ? '-' : '+'}${clock}`;
        const style: Style = { ...kept(zone), saysOffset };
        const series = record(Date.UTC(2025, 9, 20), 60, 60, seed);
        const asked = saysOffset === 'no' ? { zone } : {};
        sameReadings(await readThrough(write(series, style), asked), expectedOf(series, style));
      }),
      { numRuns: 60, seed: 11 },
    );
  });
});

describe('every zone of the database, over a year, in wall time', () => {
  const names = Intl.supportedValuesOf('timeZone').filter((_, i) => i % 7 === 0);

  it.each(names)('%s', async (zone) => {
    const series = record(Date.UTC(2025, 0, 10, 12), 60, 24 * 365);
    const style = kept(zone);
    sameReadings(await readThrough(write(series, style), { zone }), expectedOf(series, style));
  });
});
