import { readdir, readFile, stat } from 'node:fs/promises';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { sameReadings } from './compare.js';
import { sampleRecord } from './layout.js';
import { layouts } from './layouts.js';
import { readThrough } from './through.js';

const folder = new URL('../../../sample-logs/layouts/', import.meta.url);
const MOST_BYTES = 600_000;

/** Compressed bytes differ from one zlib to the next; what is in them does not. */
const plain = (file: string, bytes: Uint8Array): Buffer =>
  file.endsWith('.gz') ? gunzipSync(bytes) : Buffer.from(bytes);

describe('the samples of sample-logs/layouts', () => {
  it.each(layouts.map((layout) => [layout.file, layout] as const))(
    '%s: every instant and value is the record’s',
    async (file, layout) => {
      const bytes = new Uint8Array(await readFile(new URL(file, folder)));
      const read = await readThrough(bytes, layout.asked, layout.known, file);
      sameReadings(read, layout.expected(sampleRecord(layout)));
      expect(read.report.understood).toMatchObject(layout.understood);
    },
  );

  it.each(layouts.map((layout) => [layout.file, layout] as const))(
    '%s is what make.ts writes',
    async (file, layout) => {
      const bytes = new Uint8Array(await readFile(new URL(file, folder)));
      const written = layout.write(sampleRecord(layout));
      expect(plain(file, bytes).equals(plain(file, written))).toBe(true);
    },
  );

  it('are all of them, and small', async () => {
    const files = (await readdir(folder)).filter((file) => file !== 'make.ts' && !file.startsWith('.'));
    expect(files.sort()).toEqual(layouts.map(({ file }) => file).sort());
    const sizes = await Promise.all(files.map(async (file) => (await stat(new URL(file, folder))).size));
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(MOST_BYTES);
  });
});
