import type { ByteSource } from '../batch.js';
import type { Asked, Known, Sink } from '../download.js';
import { decompressed, singleBytes } from '../source/open.js';
import type { ClockHabit } from '../zones/clock-evidence.js';
import { BATCH_ROWS } from './batch-columns.js';
import { LineScanner } from './line-scanner.js';
import type { Plan } from './plan.js';
import { RowReader } from './row-reader.js';
import { Stations } from './stations.js';

/** What one reading of the file takes for granted. */
export interface Hypothesis {
  readonly plan: Plan;
  readonly habit: ClockHabit;
}

export type PassEnd =
  | { readonly kind: 'read'; readonly reader: RowReader }
  /** The rows contradict the hypothesis: read again under this one. */
  | { readonly kind: 'contradicted'; readonly next: Hypothesis };

export interface PassInput {
  readonly source: ByteSource;
  readonly asked: Asked;
  readonly known: Known;
  readonly sink: Sink;
  readonly mark: 0 | 2 | 3;
  readonly progress?: ((bytesRead: number) => void) | undefined;
  /** The last pass is taken as it comes. */
  readonly mayDoubt: boolean;
}

function contradiction(reader: RowReader, { plan, habit }: Hypothesis, ended: boolean): Hypothesis | null {
  if (reader.orderFails && !plan.orderCertain) {
    const order = plan.order === 'dmy' ? 'mdy' : 'dmy';
    return { plan: { ...plan, order, orderCertain: true }, habit };
  }
  const { evidence } = reader.stations;
  if (habit === 'fixed' && evidence.surelyWall) return { plan, habit: 'wall' };
  const verdict = ended ? evidence.verdict() : null;
  return verdict !== null && verdict !== habit ? { plan, habit: verdict } : null;
}

/** Reads the file once from end to end and hands its readings on, or stops where the rows contradict the hypothesis. */
export async function readPass(input: PassInput, hypothesis: Hypothesis): Promise<PassEnd> {
  const { source, asked, known, sink, mark, mayDoubt } = input;
  const { plan, habit } = hypothesis;
  const stations = new Stations(plan, asked, known, habit);
  const reader = new RowReader(plan, asked, stations);
  const scanner = new LineScanner(reader, plan.newline);
  const { columns, book } = reader;
  const hand = async () => {
    const taken = sink.take(columns.batch(book.keys));
    if (taken !== undefined) await taken;
    columns.clear();
  };
  const bytes = singleBytes(decompressed(source, input.progress), { encoding: plan.encoding, mark });
  for await (const piece of bytes) {
    scanner.push(piece);
    const next = mayDoubt ? contradiction(reader, hypothesis, false) : null;
    if (next !== null) return { kind: 'contradicted', next };
    if (columns.length >= BATCH_ROWS) await hand();
  }
  scanner.end();
  const next = mayDoubt ? contradiction(reader, hypothesis, true) : null;
  if (next !== null) return { kind: 'contradicted', next };
  if (columns.length > 0) await hand();
  return { kind: 'read', reader };
}
