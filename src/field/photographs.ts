import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { PHOTOGRAPH_NAME, PHOTOGRAPHS } from '../store/index.js';
import { FieldRefused } from './refused.js';

/** What a phone's camera makes today is 12 to 50 megapixels; more is no photograph of a bank mark. */
const MOST_MEGAPIXELS = 80;
export const MOST_PHOTO_MEGABYTES = 25;
/** Long side of what is kept, pixels: enough to tell a boulder by, small enough for a phone. */
const LONG_SIDE = 1600;
const QUALITY = 78;

/** What a camera writes; a drawing (SVG) or a document could carry more than a picture. */
const TAKEN = ['jpeg', 'png', 'webp', 'heif', 'tiff', 'gif'];

/**
 * Keeps a photograph in a data folder: drawn anew as JPEG, turned upright, at most 1600 pixels long, without anything
 * the camera wrote beside it; its position only where `position` asks for it. Gives the name it is kept by.
 * @throws FieldRefused 'photo-not-one', 'photo-too-large', 'photo-too-heavy'
 */
export async function keepPhotograph(folder: string, bytes: Uint8Array, position: boolean): Promise<string> {
  if (bytes.byteLength > MOST_PHOTO_MEGABYTES * 1_000_000)
    throw new FieldRefused({ code: 'photo-too-heavy', with: { megabytes: MOST_PHOTO_MEGABYTES } });
  const jpeg = await redrawn(bytes, position);
  const name = `${createHash('sha256').update(jpeg).digest('hex').slice(0, 40)}.jpg`;
  const place = join(folder, PHOTOGRAPHS);
  await mkdir(place, { recursive: true, mode: 0o700 });
  const written = join(place, `.${name}.${process.pid}.${performance.now()}`);
  await writeFile(written, jpeg, { mode: 0o600, flush: true });
  await rename(written, join(place, name));
  return name;
}

/** A kept photograph's bytes. @throws FieldRefused 'photo-none' */
export async function photographBytes(folder: string, name: string): Promise<Buffer> {
  const none = () => new FieldRefused({ code: 'photo-none', with: { name: name.slice(0, 60) } });
  if (!PHOTOGRAPH_NAME.test(name)) throw none();
  return readFile(join(folder, PHOTOGRAPHS, name)).catch(() => {
    throw none();
  });
}

async function redrawn(bytes: Uint8Array, position: boolean): Promise<Buffer> {
  const notOne = () => new FieldRefused({ code: 'photo-not-one', with: {} });
  if (bytes.byteLength === 0) throw notOne();
  const image = sharp(bytes, { limitInputPixels: false, failOn: 'truncated', pages: 1 });
  const { width, height, format } = await image.metadata().catch(() => {
    throw notOne();
  });
  if (!TAKEN.includes(format)) throw notOne();
  const megapixels = (width * height) / 1e6;
  if (megapixels > MOST_MEGAPIXELS)
    throw new FieldRefused({
      code: 'photo-too-large',
      with: { megapixels: Math.round(megapixels), most: MOST_MEGAPIXELS },
    });
  const upright = image
    .rotate()
    .resize({ width: LONG_SIDE, height: LONG_SIDE, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: QUALITY, mozjpeg: true });
  return (position ? upright.keepExif() : upright).toBuffer().catch(() => {
    throw notOne();
  });
}
