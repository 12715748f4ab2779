import type { LineRemark, LineWords } from '../words.js';

/** Lines shown to the person; the rest are only counted. */
const EXAMPLES = 10;

export interface UnusableLine {
  readonly line: number;
  readonly reason: LineRemark;
}

/** Counts the lines that could not be used, by reason, and keeps the first ones. */
export class Unusable {
  count = 0;
  readonly examples: UnusableLine[] = [];
  private readonly byReason = new Map<keyof LineWords, { count: number; first: UnusableLine }>();

  add(line: number, reason: LineRemark): void {
    this.count++;
    const found = { line, reason };
    if (this.examples.length < EXAMPLES) this.examples.push(found);
    const kept = this.byReason.get(reason.code);
    if (kept === undefined) this.byReason.set(reason.code, { count: 1, first: found });
    else kept.count++;
  }

  of(code: keyof LineWords): { readonly count: number; readonly first: UnusableLine } | null {
    return this.byReason.get(code) ?? null;
  }

  /** The commonest reason and the first line it befell; null where every line was of use. */
  commonest(): UnusableLine | null {
    let most = 0;
    let line: UnusableLine | null = null;
    for (const { count, first } of this.byReason.values()) {
      if (count > most) {
        most = count;
        line = first;
      }
    }
    return line;
  }
}
