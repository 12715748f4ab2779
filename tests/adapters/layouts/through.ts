import {
  type Asked,
  type ByteSource,
  type DownloadReport,
  type Known,
  readDownload,
  type SeriesKey,
  type Sink,
} from '../../../adapters/index.js';

/** One series as it came out of a download, in file order. */
export interface Got {
  readonly key: SeriesKey;
  readonly at: number[];
  readonly value: number[];
  readonly line: number[];
}

/** Bytes as a source, in chunks of a size that is sure to cut lines and characters. */
export const sourceOf = (bytes: Uint8Array, name = 'download.csv', chunk = 4093): ByteSource => ({
  name,
  size: bytes.length,
  async *open() {
    for (let start = 0; start < bytes.length; start += chunk) yield bytes.subarray(start, start + chunk);
  },
});

/** Keeps what a download gives, as a store would: copied, forgotten when the reading starts again. */
export class Collected implements Sink {
  private series: Got[] = [];

  startAgain(): void {
    this.series = [];
  }

  take(batch: Parameters<Sink['take']>[0]): void {
    for (let row = 0; row < batch.length; row++) {
      const index = batch.series[row]!;
      while (this.series.length <= index) {
        this.series.push({ key: batch.keys[this.series.length]!, at: [], value: [], line: [] });
      }
      const one = this.series[index]!;
      one.at.push(batch.at[row]!);
      one.value.push(batch.value[row]!);
      one.line.push(batch.line[row]!);
    }
  }

  all(): readonly Got[] {
    return this.series;
  }
}

export interface Read {
  readonly report: DownloadReport;
  readonly got: readonly Got[];
}

/** Reads bytes through the door and gives back everything that came out. */
export async function readThrough(
  bytes: Uint8Array,
  asked: Asked = {},
  known: Known = { zoneOf: () => null },
  name?: string,
): Promise<Read> {
  const sink = new Collected();
  const report = await readDownload(sourceOf(bytes, name), asked, known, sink);
  return { report, got: sink.all() };
}
