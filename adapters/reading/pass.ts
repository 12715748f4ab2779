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
  /** Wall-clock time of the earliest row, known after a pass over a file whose time falls. */
  readonly began: number | null;
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

/** What the rows read so far say against the hypothesis, as the hypothesis to go on with. */
function contradiction(reader: RowReader, hypothesis: Hypothesis): Hypothesis | null {
  const { plan, habit } = hypothesis;
  if (reader.orderFails && !plan.orderCertain) {
    const order = plan.order === 'dmy' ? 'mdy' : 'dmy';
    return { ...hypothesis, plan: { ...plan, order, orderCertain: true } };
  }
  return habit === 'fixed' && reader.stations.evidence.surelyWall ? { ...hypothesis, habit: 'wall' } : null;
}

/** What all rows together say against it. */
function afterthought(reader: RowReader, hypothesis: Hypothesis): Hypothesis | null {
  const { plan, habit, began } = hypothesis;
  const { evidence, all } = reader.stations;
  const verdict = evidence.verdict() ?? habit;
  if (verdict !== habit) return { ...hypothesis, habit: verdict };
  if (habit === 'wall' || plan.direction === 1 || began !== null) return null;
  const clocks = all.flatMap(({ clock }) => (clock === null ? [] : [clock]));
  const changed = clocks.some((clock) => clock.offsetAtLast !== clock.keptOffset);
  return changed ? { ...hypothesis, began: Math.min(...clocks.map(({ lastLocal }) => lastLocal)) } : null;
}

/** Reads the file once from end to end and hands its readings on, or stops where the rows contradict the hypothesis. */
export async function readPass(input: PassInput, hypothesis: Hypothesis): Promise<PassEnd> {
  const { source, asked, known, sink, mark, mayDoubt } = input;
  const { plan, habit, began } = hypothesis;
  const stations = new Stations(plan, asked, known, habit, began);
  const reader = new RowReader(plan, asked, stations);
  const scanner = new LineScanner(reader, plan.newline);
  const { columns, book } = reader.readings;
  const hand = async () => {
    const taken = sink.take(columns.batch(book.keys));
    if (taken !== undefined) await taken;
    columns.clear();
  };
  const bytes = singleBytes(decompressed(source, input.progress), { encoding: plan.encoding, mark });
  for await (const piece of bytes) {
    scanner.push(piece);
    const next = mayDoubt ? contradiction(reader, hypothesis) : null;
    if (next !== null) return { kind: 'contradicted', next };
    if (columns.length >= BATCH_ROWS) await hand();
  }
  scanner.end();
  const next = mayDoubt ? (contradiction(reader, hypothesis) ?? afterthought(reader, hypothesis)) : null;
  if (next !== null) return { kind: 'contradicted', next };
  if (columns.length > 0) await hand();
  return { kind: 'read', reader };
}
