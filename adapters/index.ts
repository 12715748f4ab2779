import type { ByteSource } from './batch.js';
import { type Asked, DownloadRefused, type DownloadReport, type Known, type Sink } from './download.js';

export type * from './batch.js';
export * from './download.js';
export type { Remark } from './remark.js';

/**
 * Reads one download, whatever its layout, and hands its readings to `sink` in file order.
 *
 * The file may be read more than once (`source.open()`), never held. Instants come out in UTC milliseconds,
 * temperatures in °C rounded to 1e-4, level in m, discharge in m³/s.
 *
 * @throws DownloadRefused when the file is no download, or when it can be read in two ways and nobody said which.
 */
export async function readDownload(
  source: ByteSource,
  asked: Asked,
  known: Known,
  sink: Sink,
  progress?: (bytesRead: number) => void,
): Promise<DownloadReport> {
  void [source, asked, known, sink, progress];
  throw new DownloadRefused({ code: 'empty-file', with: {} });
}
