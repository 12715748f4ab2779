import type { Delimiter } from '../download.js';
import { DownloadRefused } from '../download.js';
import type { TextOf } from '../fields/bytes.js';
import { textDecoder } from '../fields/bytes.js';
import { fieldsOf } from '../fields/quoted.js';
import { cellKind } from '../sniff/cells.js';
import { readHeader } from '../sniff/header.js';
import { loggerNamed } from '../sniff/preamble.js';
import type { LineRemark } from '../words.js';
import type { Plan } from './plan.js';
import { shown } from './row-values.js';

const delimiters: readonly Delimiter[] = [',', ';', '\t', '|'];

/** What a line without a readable time is. Such lines are few, so text and patterns may be used. */
export class OddLines {
  private readonly textOf: TextOf;
  private readonly headers: readonly string[];

  constructor(private readonly plan: Plan) {
    this.textOf = textDecoder(plan.encoding);
    this.headers = (plan.headers ?? []).map(folded);
  }

  /** null for a line that is no loss: nothing in it, a comment, the header again. */
  judge(line: number, text: string): LineRemark | null {
    const trimmed = text.trim();
    if (/^(?:#|\/\/)/.test(trimmed)) return null;
    const fields = fieldsOf(text, this.plan.delimiter).map((field) => field.trim());
    if (fields.every((field) => field === '') || this.isHeader(fields)) return null;
    this.refuseOtherHeader(line, fields, trimmed);
    this.refuseOtherLogger(line, text);
    return this.reason(fields, trimmed);
  }

  cutShort(text: string): LineRemark {
    return { code: 'line-cut-short', with: { text: shown(text) } };
  }

  unknownZone(b: Uint8Array, starts: Int32Array, ends: Int32Array): LineRemark {
    const { zone } = this.plan.time;
    return { code: 'line-unknown-zone', with: { text: shown(this.textOf(b, starts[zone], ends[zone])) } };
  }

  private isHeader(fields: readonly string[]): boolean {
    const { headers } = this;
    return (
      headers.length > 1 && fields.slice(0, headers.length).every((field, i) => folded(field) === headers[i])
    );
  }

  /** A second header with other columns, or the same in another order: from there on the rows mean something else. */
  private refuseOtherHeader(line: number, fields: readonly string[], text: string): void {
    const { headers, plan } = this;
    if (headers.length < 2 || fields.length < 2) return;
    const roles = fields.map((field) => readHeader(field));
    const isHeader =
      roles.some(({ role }) => role === 'time') &&
      roles.some(({ role, strength }) => role === 'value' && strength > 5);
    const sameNames = [...headers].sort().join('\n') === fields.map(folded).sort().join('\n');
    if (!sameNames && !(isHeader && fields.length >= Math.min(plan.columns, 3))) return;
    const reason: LineRemark = { code: 'line-columns-moved', with: { text: shown(text) } };
    throw new DownloadRefused({ code: 'layout-changes', with: { line, reason } });
  }

  /** A second preamble that names another logger or station: two downloads pasted together. */
  private refuseOtherLogger(line: number, text: string): void {
    const named = loggerNamed(text, this.plan.delimiter);
    const { serial, stationInFile } = this.plan;
    const first = named?.kind === 'serial' ? serial : named?.kind === 'station' ? stationInFile : null;
    if (named === null || first === null || folded(first) === folded(named.name)) return;
    throw new DownloadRefused({ code: 'several-loggers', with: { line, first, second: named.name } });
  }

  private reason(fields: readonly string[], text: string): LineRemark {
    const { time, values, delimiter } = this.plan;
    const cell = fields[time.date] ?? '';
    const value = fields[values[0]?.index ?? -1] ?? '';
    if (isTime(cellKind(value)) && !isTime(cellKind(cell)))
      return { code: 'line-columns-moved', with: { text: shown(text) } };
    for (const other of delimiters) {
      if (other === delimiter) continue;
      const parts = text.split(other);
      if (parts.length > 1 && parts.some((part) => isTime(cellKind(part.trim()))))
        return { code: 'line-other-delimiter', with: { text: shown(text) } };
    }
    if (fields.slice(0, 4).some((field) => isTime(cellKind(field))) && !/\d/.test(cell))
      return { code: 'line-columns-moved', with: { text: shown(text) } };
    if (/\d/.test(cell)) return { code: 'line-bad-time', with: { text: shown(cell) } };
    return { code: 'line-no-time', with: { text: shown(text) } };
  }
}

function isTime(kind: string): boolean {
  return kind === 'datetime' || kind === 'date';
}

function folded(text: string): string {
  return text.trim().toLowerCase();
}
