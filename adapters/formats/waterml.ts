import {
  type AdapterRemark,
  type Asked,
  DownloadRefused,
  type DownloadReport,
  type Encoding,
  type ExchangeFormat,
  type Known,
  type Sink,
  type Understood,
} from '../download.js';
import { BATCH_ROWS } from '../reading/batch-columns.js';
import { encodingOf } from '../source/encoding.js';
import { HEAD_BYTES, recognise } from './recognise.js';
import { type Choice, WaterMlChoice } from './waterml-choice.js';
import { WaterMlReading } from './waterml-reading.js';
import { type SeriesListener, WaterMlSeries } from './waterml-series.js';
import { WaterMlSurvey } from './waterml-survey.js';

type Open = () => AsyncIterable<Uint8Array>;

async function encodingOfAll(open: Open): Promise<Encoding> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const piece of open()) {
    parts.push(Uint8Array.from(piece));
    length += piece.length;
    if (length >= HEAD_BYTES) break;
  }
  return encodingOf(new Uint8Array(Buffer.concat(parts))).encoding;
}

/** Goes through the document once; `after` is awaited between pieces, so that a sink can take what there is. */
async function follow(
  open: Open,
  encoding: Encoding,
  listener: SeriesListener,
  after?: () => Promise<void>,
): Promise<void> {
  // Code page 850 is no encoding an XML document has; its bytes would be Latin letters.
  const decoder = new TextDecoder(encoding === 'cp850' ? 'windows-1252' : encoding);
  const series = new WaterMlSeries(listener);
  for await (const piece of open()) {
    series.write(decoder.decode(piece, { stream: true }));
    await after?.();
  }
  series.write(decoder.decode());
  series.end();
  await after?.();
}

async function survey(open: Open, encoding: Encoding): Promise<WaterMlSurvey> {
  const found = new WaterMlSurvey();
  await follow(open, encoding, found);
  if (found.series.length === 0) throw new DownloadRefused({ code: 'waterml.no-series', with: {} });
  return found;
}

/** More than half of the points of no use, or with values no river has: the document is not what it seems. */
function refuseWhole({ unusable, points, book }: WaterMlReading): void {
  if (book.outside * 2 > book.readings) {
    const all = book.keys.map((_, index) => book.summary(index));
    const smallest = Math.min(...all.map(({ min }) => min));
    const largest = Math.max(...all.map(({ max }) => max));
    const { outside, readings } = book;
    throw new DownloadRefused({ code: 'not-a-river', with: { outside, readings, smallest, largest } });
  }
  const commonest = unusable.commonest();
  if (commonest === null || unusable.count * 2 <= points) return;
  const { line, reason } = commonest;
  throw new DownloadRefused({
    code: 'mostly-unusable',
    with: { unusable: unusable.count, lines: points, line, reason },
  });
}

function understood(reading: WaterMlReading, choice: Choice, encoding: Encoding): Understood {
  const zones = new Set(reading.book.keys.map((_, index) => reading.book.summary(index).zone));
  const temperature = choice.taken.find((taken) => taken?.key.quantity === 'temperature');
  return {
    encoding,
    delimiter: null,
    decimal: '.',
    unit: temperature?.conversion.unit ?? null,
    zone: zones.size === 1 ? [...zones][0]! : null,
    dateOrder: null,
    timeColumns: ['time'],
    valueColumn: temperature?.property ?? null,
    daily: reading.book.keys.length > 0 && reading.book.keys.every(({ span }) => span === 'day'),
  };
}

function counted({ missing, book }: WaterMlReading): readonly AdapterRemark[] {
  const remarks: AdapterRemark[] = [];
  if (missing > 0) remarks.push({ code: 'missing-values', with: { count: missing } });
  if (book.repeated > 0) remarks.push({ code: 'repeated-readings', with: { count: book.repeated } });
  if (book.backSteps > 0)
    remarks.push({ code: 'time-goes-back', with: { line: book.firstBackStep, times: book.backSteps } });
  return remarks;
}

/**
 * WaterML 2.0 point series (OGC 10-126r4): collections, single observations and services' answers that hold them.
 * The document is gone through twice, never held: once to learn which series it has, once to hand them on. What is
 * not read: coverages that keep times and values apart, categories, and other documents an xlink points to.
 */
async function read(open: Open, asked: Asked, known: Known, sink: Sink): Promise<DownloadReport> {
  const encoding = await encodingOfAll(open);
  const { series } = await survey(open, encoding);
  const choice = new WaterMlChoice(asked).of(series);
  const reading = new WaterMlReading(series, choice, asked, known);
  const hand = async (least: number): Promise<void> => {
    if (reading.columns.length < least) return;
    await sink.take(reading.columns.batch(reading.book.keys));
    reading.columns.clear();
  };
  await follow(open, encoding, reading, () => hand(BATCH_ROWS));
  await hand(1);
  refuseWhole(reading);
  if (reading.book.readings === 0) throw new DownloadRefused({ code: 'waterml.no-series', with: {} });
  const { book, unusable } = reading;
  return {
    series: book.keys,
    summaries: book.keys.map((_, index) => book.summary(index)),
    understood: understood(reading, choice, encoding),
    assumed: [...choice.assumed, ...reading.assumed, ...counted(reading)],
    unusable: { count: unusable.count, examples: unusable.examples },
    ordered: book.ordered,
    serial: null,
    battery: [],
  };
}

export const waterMl: ExchangeFormat = {
  name: 'WaterML 2.0',
  recognises: (head) => recognise(head).kind === 'waterml',
  read,
};
