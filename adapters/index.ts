import type { ByteSource } from './batch.js';
import { type Asked, DownloadRefused, type DownloadReport, type Known, type Sink } from './download.js';
import { HEAD_BYTES, recognise } from './formats/recognise.js';
import { waterMl } from './formats/waterml.js';
import { type Hypothesis, readPass } from './reading/pass.js';
import { refuseWhole, reportOf } from './reading/report.js';
import { HEADS, headFrom, understand } from './reading/understand.js';
import { decompressed, headOf } from './source/open.js';
import { zoneOrRefuse } from './zones/given-zone.js';

export type * from './batch.js';
export * from './download.js';
export type { BatteryFigure, BatteryReport } from './reading/battery.js';
export type { Remark } from './remark.js';
export type { EngineWords, LineRemark } from './words.js';

/** Passes over the rows: the likeliest reading, then where rows object one each for order, clock and its offset. */
const MOST_PASSES = 4;

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
  if (asked.zone !== undefined) zoneOrRefuse(asked.zone);
  const head = headFrom(await headOf(source, HEADS[0]), asked);
  if (head.bytes.length === 0) throw new DownloadRefused({ code: 'empty-file', with: {} });
  const recognised = recognise(head.bytes.subarray(0, HEAD_BYTES));
  if (recognised.kind === 'refuse') throw new DownloadRefused(recognised.remark);
  if (recognised.kind === 'waterml')
    return waterMl.read(() => decompressed(source, progress), asked, known, sink);
  const { plan, mark } = await understand(source, head, asked, known);
  let hypothesis: Hypothesis = { plan, habit: 'fixed', began: null };
  for (let pass = 1; ; pass++) {
    const input = { source, asked, known, sink, mark, progress, mayDoubt: pass < MOST_PASSES };
    const end = await readPass(input, hypothesis);
    if (end.kind === 'read') {
      refuseWhole(end.reader);
      return reportOf(end.reader);
    }
    await sink.startAgain();
    hypothesis = end.next;
  }
}
