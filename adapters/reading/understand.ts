import type { ByteSource } from '../batch.js';
import { type Asked, type DateOrder, DownloadRefused, type Known } from '../download.js';
import { textDecoder } from '../fields/bytes.js';
import { fieldsOf } from '../fields/quoted.js';
import { timeReadings } from '../sniff/cells.js';
import { chooseOrder } from '../sniff/choose-order.js';
import { type Head, linesOf } from '../sniff/head.js';
import { readHeader } from '../sniff/header.js';
import { sniff } from '../sniff/index.js';
import { encodingOf } from '../source/encoding.js';
import { headOf } from '../source/open.js';
import { orderInWholeFile } from './order-pass.js';
import type { Plan } from './plan.js';
import { shown } from './row-values.js';

/** How much of a file is looked at, more only where a preamble fills it. */
export const HEADS = [256 * 1024, 2 * 1024 * 1024, 16 * 1024 * 1024];

/** Bytes of an endless line that a refusal may show. */
const FIRST_SHOWN = 200;

export interface Understanding {
  readonly plan: Plan;
  /** Bytes of the byte order mark. */
  readonly mark: 0 | 2 | 3;
}

/** Works out a file's plan from its head, asking the whole file for the order of its dates where that is needed. */
export async function understand(
  source: ByteSource,
  first: Head,
  asked: Asked,
  known: Known,
): Promise<Understanding> {
  let head = first;
  let sniffed = sniff(head, asked, known);
  for (const size of HEADS.slice(1)) {
    if (sniffed !== null || head.whole) break;
    head = headFrom(await headOf(source, size), asked);
    sniffed = sniff(head, asked, known);
  }
  if (sniffed === null) throw nothingFound(head);
  const { mark } = head.found;
  if (!sniffed.orderOpen) return { plan: sniffed.plan, mark };
  const { plan } = sniffed;
  const evidence = await orderInWholeFile(source, plan, mark);
  const choice = chooseOrder(evidence, null, asked);
  if (choice.open) throw ambiguous(head, plan);
  const assumed = [...plan.assumed, ...choice.assumed];
  return { plan: { ...plan, order: choice.order, orderCertain: choice.certain, assumed }, mark };
}

export function headFrom(head: { bytes: Uint8Array; whole: boolean }, asked: Asked): Head {
  const found = encodingOf(head.bytes);
  const { encoding } = { ...asked.layout };
  return { ...head, found: encoding === undefined ? found : { ...found, encoding } };
}

function ambiguous(head: Head, plan: Plan): DownloadRefused {
  const line = linesOf(head).lines[plan.firstLine - 1] ?? '';
  const cells = line.split(plan.delimiter).map((cell) => cell.trim().replace(/^"|"$/g, ''));
  const text =
    plan.time.clock < 0 ? cells[plan.time.date] : `${cells[plan.time.date]} ${cells[plan.time.clock]}`;
  const clock = plan.time.clock < 0 ? '' : ` ${cells[plan.time.clock]}`;
  const readings = timeReadings(cells[plan.time.date] ?? '').map(({ order, at, hasClock }) => ({
    order: order satisfies DateOrder,
    iso:
      new Date(at)
        .toISOString()
        .slice(0, hasClock ? 16 : 10)
        .replace('T', ' ') + clock,
  }));
  return new DownloadRefused(
    { code: 'ambiguous-dates', with: { text } },
    { code: 'which-date-order', with: { text, readings } },
  );
}

const delimiters = [',', ';', '\t', '|'] as const;

/** The headers of a table that has no readings below, or null. */
function headersIn(lines: readonly string[]): readonly string[] | null {
  for (const line of lines) {
    for (const delimiter of delimiters) {
      const fields = fieldsOf(line.replace(/^\s*#\s*/, ''), delimiter).map((field) => field.trim());
      const roles = fields.map((field) => readHeader(field).role);
      if (roles.includes('time') && roles.includes('value')) return fields.filter((field) => field !== '');
    }
  }
  return null;
}

/** Nothing looked like readings: headers alone, or no table at all. */
function nothingFound(head: Head): DownloadRefused {
  const lines = linesOf(head).lines.filter((line) => line.trim() !== '');
  if (lines.length === 0) {
    const text = textDecoder(head.found.encoding)(head.bytes, head.found.mark, FIRST_SHOWN).trim();
    // Lines too long to be read are left out of the head's; then something is there all the same.
    if (text === '') return new DownloadRefused({ code: 'empty-file', with: {} });
    return new DownloadRefused({ code: 'no-readings-found', with: { firstLine: shown(text) } });
  }
  const headers = headersIn(lines.slice(0, 500));
  if (headers !== null) return new DownloadRefused({ code: 'headers-without-readings', with: { headers } });
  return new DownloadRefused({ code: 'no-readings-found', with: { firstLine: shown(lines[0]) } });
}
