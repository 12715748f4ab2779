import { gzipSync } from 'node:zlib';
import {
  type Asked,
  type ByteSource,
  DownloadRefused,
  type DownloadReport,
  type Known,
  readDownload,
  type SeriesKey,
} from '../../adapters/index.js';

/** A reading as a test states it: instant in ISO 8601 UTC, value, station. */
export interface Expected {
  readonly at: string;
  readonly value: number;
  readonly station?: string | null;
}

export interface Taken {
  readonly key: SeriesKey;
  readonly at: number;
  readonly value: number;
  readonly line: number;
}

export interface Outcome {
  readonly report: DownloadReport;
  readonly taken: readonly Taken[];
  /** How often the engine began anew. */
  readonly restarts: number;
}

export function bytesSource(bytes: Uint8Array, piece = 1 << 16, name = 'download.csv'): ByteSource {
  return {
    name,
    size: bytes.length,
    async *open() {
      for (let i = 0; i < bytes.length; i += piece)
        yield bytes.subarray(i, Math.min(bytes.length, i + piece));
    },
  };
}

export function utf8(text: string): Uint8Array {
  return Buffer.from(text, 'utf8');
}

export function gzipped(text: string): Uint8Array {
  return gzipSync(Buffer.from(text, 'utf8'));
}

/** A season that knows nothing, or one zone for every station. */
export function knowing(zone: string | null, from: 'station' | 'deployment' = 'station'): Known {
  return { zoneOf: () => (zone === null ? null : { zone, from }) };
}

export const utcAsked: Asked = { zone: 'UTC' };

/** Reads bytes or text through the door and keeps every reading. */
export async function take(
  file: Uint8Array | string,
  asked: Asked = {},
  known: Known = knowing(null),
  piece?: number,
): Promise<Outcome> {
  let taken: Taken[] = [];
  let restarts = 0;
  const source = bytesSource(typeof file === 'string' ? utf8(file) : file, piece);
  const report = await readDownload(source, asked, known, {
    take(batch) {
      for (let i = 0; i < batch.length; i++) {
        const key = batch.keys[batch.series[i]];
        taken.push({ key, at: batch.at[i], value: batch.value[i], line: batch.line[i] });
      }
    },
    startAgain() {
      taken = [];
      restarts++;
    },
  });
  return { report, taken, restarts };
}

/** The refusal of a file that must not be taken. */
export async function refusal(
  file: Uint8Array | string,
  asked: Asked = {},
  known: Known = knowing(null),
): Promise<DownloadRefused> {
  try {
    await take(file, asked, known);
  } catch (error) {
    if (error instanceof DownloadRefused) return error;
    throw error;
  }
  throw new Error('the file was taken');
}

/** Readings as `[ISO instant, value]`, to compare with. */
export function pairs(taken: readonly Taken[]): [string, number][] {
  return taken.map(({ at, value }) => [new Date(at).toISOString().replace('.000Z', 'Z'), value]);
}

export function codes(report: DownloadReport): string[] {
  return report.assumed.map(({ code }) => code);
}
