import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Folder, Load } from '../../src/store/index.js';
import { HOUR, loadIn, loadReadings, MINUTE, type Readings, visible } from './loads.js';

const START = Date.UTC(2026, 0, 1);

const hours = (from: number, count: number, value: number): Readings =>
  Array.from({ length: count }, (_, i) => [START + (from + i) * HOUR, value]);

/**
 * What every ReadingStore has to do, tested through the folder's door. `open` gives a new, empty folder that uses
 * the store under test.
 */
export function readingStoreContract(
  name: string,
  open: () => Promise<Folder>,
  { sequences = 25 } = {},
): void {
  describe(`the contract of a reading store: ${name}`, () => {
    let folder: Folder;
    beforeEach(async () => {
      folder = await open();
      return () => folder.close();
    });

    test('gives back what a load brought, to 1e-4', async () => {
      await loadReadings(folder, {
        pool: [
          [START, -0.00001],
          [START + 1, 3.21987654],
          [START + 2, -12.5],
        ],
      });
      expect(await visible(folder, 'pool')).toEqual([
        [START, 0],
        [START + 1, 3.2199],
        [START + 2, -12.5],
      ]);
    });

    test('keeps instants before 1970 and after 2038, to the millisecond', async () => {
      const readings: Readings = [
        [-6_000_000_000_001, 1],
        [-1, 2],
        [0, 3],
        [2_147_483_648_001, 4],
        [4_102_444_799_999, 5],
      ];
      await loadReadings(folder, { pool: readings });
      expect(await visible(folder, 'pool')).toEqual(readings);
    });

    test('reads from an instant on and up to another, without it', async () => {
      await loadReadings(folder, { pool: hours(0, 5, 1) });
      const { at } = await folder.readings.read(folder.catalogue, 1, START + HOUR, START + 3 * HOUR);
      expect([...at]).toEqual([START + HOUR, START + 2 * HOUR]);
    });

    test('keeps more readings than fit in one piece, in order', async () => {
      const readings: Readings = Array.from({ length: 30_001 }, (_, i) => [
        START + i * MINUTE,
        (i % 400) / 10,
      ]);
      await loadReadings(folder, { pool: readings });
      expect(await visible(folder, 'pool')).toEqual(readings);
    });

    test('keeps the first of two readings at one instant, and names the line of the other', async () => {
      const readings: Readings = [
        [START + 2 * HOUR, 2],
        [START, 0],
        [START + HOUR, 1],
        [START, 9],
        [START + 2 * HOUR, 2],
      ];
      await folder.write('test', async (write) => {
        const { load, writer } = await write.beginLoad();
        const series = await write.seriesOf(
          await write.makeStation({
            id: 'pool',
            kind: 'stream',
            zone: 'UTC',
            offsetMinutes: 0,
            latitude: null,
            longitude: null,
          }),
          'temperature',
          'instant',
        );
        await writer.append({
          series,
          length: readings.length,
          at: Float64Array.from(readings, ([at]) => at),
          value: Float64Array.from(readings, ([, value]) => value),
          line: Float64Array.from(readings, (_, i) => i + 2),
        });
        const outcome = await writer.finish();
        expect(outcome.duplicates).toEqual({
          count: 2,
          examples: [
            { line: 5, series, at: START, kept: 0, left: 9 },
            { line: 6, series, at: START + 2 * HOUR, kept: 2, left: 2 },
          ],
        });
        await write.recordLoad({
          load,
          file: 'a.csv',
          sha256: 'a',
          bytes: 1,
          series: outcome.series,
          understood: '{}',
        });
      });
      expect(await visible(folder, 'pool')).toEqual([
        [START, 0],
        [START + HOUR, 1],
        [START + 2 * HOUR, 2],
      ]);
    });

    test('settles a file whose first part rises and whose second part goes back', async () => {
      await folder.write('test', async (write) => {
        await loadIn(write, { pool: [] });
      });
      const load = await folder.write('test', async (write) => {
        const { load, writer } = await write.beginLoad();
        const station = await write.station('pool');
        if (station === null) throw new Error('the station was made above');
        const series = await write.seriesOf(station, 'temperature', 'instant');
        const run = (from: number, value: number, line: Float64Array | null) => ({
          series,
          length: 3,
          at: Float64Array.from([0, 1, 2], (i) => START + (from + i) * HOUR),
          value: new Float64Array(3).fill(value),
          line,
        });
        await writer.append(run(0, 1, null));
        await writer.append(run(3, 2, null));
        await writer.append(run(2, 3, Float64Array.of(8, 9, 10)));
        await writer.append(run(4, 4, Float64Array.of(11, 12, 13)));
        const { series: own, duplicates } = await writer.finish();
        expect(duplicates.count).toBe(5);
        expect(duplicates.examples.map(({ line }) => line)).toEqual([8, 9, 10, 11, 12]);
        return write.recordLoad({
          load,
          file: 'b',
          sha256: 'b',
          bytes: 1,
          series: own,
          understood: '{}',
        });
      });
      expect(load.series[0].readings).toBe(7);
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 1, 1, 2, 2, 2, 4]);
    });

    test('forgets what it took before it starts again', async () => {
      await folder.write('test', async (write) => {
        const { load, writer } = await write.beginLoad();
        const station = await write.makeStation({
          id: 'pool',
          kind: 'stream',
          zone: 'UTC',
          offsetMinutes: 0,
          latitude: null,
          longitude: null,
        });
        const series = await write.seriesOf(station, 'temperature', 'instant');
        const run = (value: number, line: Float64Array | null) => ({
          series,
          length: 2,
          at: Float64Array.of(START, START + HOUR),
          value: Float64Array.of(value, value),
          line,
        });
        await writer.append(run(1, null));
        await writer.append(run(1, Float64Array.of(3, 4)));
        await writer.startAgain();
        await writer.append(run(2, null));
        const { series: own, duplicates } = await writer.finish();
        expect(duplicates.count).toBe(0);
        await write.recordLoad({ load, file: 'c', sha256: 'c', bytes: 1, series: own, understood: '{}' });
      });
      expect(await visible(folder, 'pool')).toEqual([
        [START, 2],
        [START + HOUR, 2],
      ]);
    });

    test('shows the newest load where loads overlap, and says how far they differ', async () => {
      await loadReadings(folder, { pool: hours(0, 6, 1) });
      const second = await loadReadings(folder, {
        pool: hours(3, 6, 1).map(([at], i) => [at, i === 1 ? 1.7 : 1]),
      });
      expect(second.series).toMatchObject([
        { readings: 6, overlapping: 3, differing: 1, largestDifference: 0.7 },
      ]);
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([
        1, 1, 1, 1, 1.7, 1, 1, 1, 1,
      ]);
    });

    test('a load keeps all its own readings, also covered ones and those that agree', async () => {
      const first = await loadReadings(folder, { pool: hours(0, 4, 1) });
      await loadReadings(folder, { pool: hours(0, 3, 1) });
      const own = await folder.readings.readLoad(folder.catalogue, first.load, 1);
      expect(own.at.length).toBe(4);
      expect([...own.load]).toEqual([1, 1, 1, 1]);
    });

    test('with A under B under C, withdrawing B leaves C, and withdrawing C then shows A', async () => {
      await loadReadings(folder, { pool: hours(0, 3, 1) });
      const b = await loadReadings(folder, { pool: hours(0, 3, 2) });
      const c = await loadReadings(folder, { pool: hours(1, 3, 3) });
      await folder.withdraw(b.load, 'test');
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 3, 3, 3]);
      await folder.withdraw(c.load, 'test');
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 1, 1]);
    });

    test('keeps stations apart, also those of one file', async () => {
      const load = await loadReadings(folder, { pool: hours(0, 3, 1), riffle: hours(0, 2, 5) });
      await loadReadings(folder, { pool: hours(1, 1, 9) });
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 9, 1]);
      expect((await visible(folder, 'riffle')).map(([, value]) => value)).toEqual([5, 5]);
      await folder.withdraw(load.load, 'test');
      expect(await visible(folder, 'riffle')).toEqual([]);
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([9]);
    });

    test('counts visible readings by series', async () => {
      await loadReadings(folder, { pool: hours(0, 3, 1), riffle: hours(0, 2, 5) });
      await loadReadings(folder, { pool: hours(1, 4, 1) });
      expect([...(await folder.readings.count(folder.catalogue))].sort()).toEqual([
        [1, 5],
        [2, 2],
      ]);
    });

    test('shows nothing of a write that failed', async () => {
      await loadReadings(folder, { pool: hours(0, 3, 1) });
      const broken = folder.write('test', async (write) => {
        await loadIn(write, { pool: hours(0, 9, 2) });
        throw new Error('the person thought better of it');
      });
      await expect(broken).rejects.toThrow('thought better');
      expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 1, 1]);
      expect(await folder.catalogue.loads()).toHaveLength(1);
    });

    test('after any sequence of loads and withdrawals the record is a fold over the standing loads', async () => {
      await fc.assert(
        fc.asyncProperty(steps, async (sequence) => {
          const own = await open();
          try {
            await expectFold(own, sequence);
          } finally {
            await own.close();
          }
        }),
        { numRuns: sequences },
      );
    }, 400_000);
  });
}

type Step =
  | { readonly kind: 'load'; readonly readings: Readings }
  | { readonly kind: 'withdraw'; readonly which: number };

const reading = fc.tuple(
  fc.integer({ min: 0, max: 60 }).map((i) => START + i * HOUR),
  fc.integer({ min: -3, max: 30 }).map((tenths) => tenths / 10),
);
const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    {
      weight: 3,
      arbitrary: fc.record({
        kind: fc.constant('load' as const),
        readings: fc.array(reading, { minLength: 1, maxLength: 40 }),
      }),
    },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('withdraw' as const), which: fc.nat(10) }) },
  ),
  { minLength: 1, maxLength: 8 },
);

async function expectFold(folder: Folder, sequence: readonly Step[]): Promise<void> {
  const standing: { load: Load; readings: Readings }[] = [];
  for (const step of sequence) {
    if (step.kind === 'load') {
      standing.push({ load: await loadReadings(folder, { pool: step.readings }), readings: step.readings });
    } else if (standing.length > 0) {
      const [gone] = standing.splice(step.which % standing.length, 1);
      await folder.withdraw(gone.load.load, 'test');
    }
    const fold = new Map<number, number>();
    for (const { readings } of standing) {
      const first = new Map<number, number>();
      for (const [at, value] of readings) if (!first.has(at)) first.set(at, value);
      for (const [at, value] of first) fold.set(at, value);
    }
    expect(await visible(folder, 'pool')).toEqual([...fold].sort((a, b) => a[0] - b[0]));
    await expectDaysAnew(folder);
  }
}

/** The days kept are those that would be computed anew. */
export async function expectDaysAnew(folder: Folder): Promise<void> {
  const kept = await folder.catalogue.days();
  await folder.renewAllDays();
  expect(kept).toEqual(await folder.catalogue.days());
}
