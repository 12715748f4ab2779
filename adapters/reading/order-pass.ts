import type { ByteSource } from '../batch.js';
import { textDecoder } from '../fields/bytes.js';
import { fieldsOf } from '../fields/quoted.js';
import { clockReading } from '../sniff/cells.js';
import { type OrderEvidence, OrderTally } from '../sniff/date-order.js';
import { decompressed, singleBytes } from '../source/open.js';
import { LineScanner, type LineTaker } from './line-scanner.js';
import type { Plan } from './plan.js';

/** Asks the dates of the whole file for the order of their numbers, and stops at the first that settles it. */
export async function orderInWholeFile(
  source: ByteSource,
  plan: Plan,
  mark: 0 | 2 | 3,
): Promise<OrderEvidence> {
  const tally = new OrderTally();
  const dates = new Dates(plan, tally);
  const scanner = new LineScanner(dates, plan.newline);
  for await (const piece of singleBytes(decompressed(source), { encoding: plan.encoding, mark })) {
    scanner.push(piece);
    if (tally.decided) return tally.evidence();
  }
  scanner.end();
  return tally.evidence();
}

class Dates implements LineTaker {
  private line = 0;
  private readonly textOf;

  constructor(
    private readonly plan: Plan,
    private readonly tally: OrderTally,
  ) {
    this.textOf = textDecoder(plan.encoding);
  }

  lines(b: Uint8Array, start: number, end: number): void {
    for (let from = start; from < end; ) {
      const stop = b.indexOf(this.plan.newline, from);
      this.line++;
      if (this.line >= this.plan.firstLine) this.add(this.textOf(b, from, stop));
      from = stop + 1;
    }
  }

  lastLine(b: Uint8Array, start: number, end: number): void {
    this.add(this.textOf(b, start, end));
  }

  overlong(): void {
    this.line++;
  }

  private add(line: string): void {
    const { date, clock } = this.plan.time;
    const cells = fieldsOf(line.replace(/\r$/, ''), this.plan.delimiter);
    const extra = clock < 0 ? 0 : clockReading(cells[clock]?.trim() ?? '');
    if (!Number.isNaN(extra)) this.tally.add(cells[date]?.trim() ?? '', extra);
  }
}
