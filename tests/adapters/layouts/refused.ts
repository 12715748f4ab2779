import { type Asked, DownloadRefused, type Known } from '../../../adapters/index.js';
import { readThrough } from './through.js';

/** The refusal a download meets; fails when it is taken, or when something else goes wrong. */
export async function refusalOf(
  bytes: Uint8Array,
  asked: Asked = {},
  known?: Known,
  name?: string,
): Promise<DownloadRefused> {
  try {
    await readThrough(bytes, asked, known, name);
  } catch (error) {
    if (error instanceof DownloadRefused) return error;
    throw error;
  }
  throw new Error('the download was taken');
}

export const text = (content: string): Uint8Array => new Uint8Array(Buffer.from(content, 'utf8'));
