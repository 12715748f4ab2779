import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import { keepPhotograph, photographBytes } from '../../src/field/index.js';

const folder = mkdtempSync(join(tmpdir(), 'underice-photo-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const GPS = { IFD0: { Make: 'invented' }, IFD3: { GPSLatitude: '47/1 9/1 45/1', GPSLatitudeRef: 'N' } };
const picture = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#336688' } });

describe('a photograph', () => {
  test('is drawn anew, small, and without its position', async () => {
    const taken = await picture(3000, 2000).withExif(GPS).jpeg().toBuffer();
    expect((await sharp(taken).metadata()).exif).toBeDefined();
    const name = await keepPhotograph(folder, taken, false);
    const kept = await sharp(await photographBytes(folder, name)).metadata();
    expect(kept).toMatchObject({ format: 'jpeg', width: 1600 });
    expect(kept.exif).toBeUndefined();
  });

  test('keeps its position where that is wanted, and the same one is kept once', async () => {
    const taken = await picture(300, 200).withExif(GPS).jpeg().toBuffer();
    const name = await keepPhotograph(folder, taken, true);
    expect((await sharp(await photographBytes(folder, name)).metadata()).exif).toBeDefined();
    const before = readdirSync(join(folder, 'photographs')).length;
    expect(await keepPhotograph(folder, taken, true)).toBe(name);
    expect(readdirSync(join(folder, 'photographs'))).toHaveLength(before);
  });

  test.each([
    ['a program', Buffer.from('#!/bin/sh\nrm -rf /\n'), 'photo-not-one'],
    [
      'a program behind a picture’s first bytes',
      Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.from('#!/bin/sh')]),
      'photo-not-one',
    ],
    [
      'a drawing that could run',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'),
      'photo-not-one',
    ],
    ['nothing', Buffer.alloc(0), 'photo-not-one'],
  ])('that is %s is refused', async (_what, bytes, code) => {
    await expect(keepPhotograph(folder, bytes, false)).rejects.toMatchObject({ remark: { code } });
  });

  test('of 200 megapixels is refused before it is unpacked', async () => {
    // The header of a small one, rewritten: a PNG states its width and height at bytes 16 and 20, then a checksum.
    const head = await picture(2, 2).png().toBuffer();
    head.writeUInt32BE(20_000, 16);
    head.writeUInt32BE(10_000, 20);
    head.writeUInt32BE(crc32(head.subarray(12, 29)), 29);
    await expect(keepPhotograph(folder, head, false)).rejects.toMatchObject({
      remark: { code: 'photo-too-large', with: { megapixels: 200 } },
    });
  });

  test('that breaks off is refused', async () => {
    const noise = Buffer.from(Array.from({ length: 300 * 200 * 3 }, (_, i) => (i * 7919) % 251));
    const whole = await sharp(noise, { raw: { width: 300, height: 200, channels: 3 } })
      .jpeg()
      .toBuffer();
    const half = whole.subarray(0, whole.length / 2);
    await expect(keepPhotograph(folder, half, false)).rejects.toMatchObject({
      remark: { code: 'photo-not-one' },
    });
  });

  test('has a name that leads nowhere else', async () => {
    await expect(photographBytes(folder, '../season.yaml')).rejects.toMatchObject({
      remark: { code: 'photo-none' },
    });
  });
});
