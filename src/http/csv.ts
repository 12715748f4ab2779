import { streamOf } from './stream.js';

/**
 * A cell of text from outside: quoted where it must be, and with an apostrophe before = + - @ tab and CR, so that a
 * spreadsheet shows it and does not run it. Numbers are not text: a negative temperature stays a number.
 */
export function csvText(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/**
 * Things as lines of CSV, the first their names: what lies in a thing is `outer.inner`, several words stand in one cell,
 * what is not there is empty. Rows may lack what others have.
 */
export function csvOf(rows: readonly object[]): string[] {
  const flat = rows.map((row) => new Map(cells(row, '')));
  const names = [...new Set(flat.flatMap((row) => [...row.keys()]))];
  return [names.map(csvText), ...flat.map((row) => names.map((name) => row.get(name) ?? ''))].map((line) =>
    line.join(','),
  );
}

function cells(thing: object, before: string): [string, string][] {
  return Object.entries(thing).flatMap(([name, value]: [string, unknown]): [string, string][] => {
    const called = `${before}${name}`;
    if (value === null || value === undefined) return [[called, '']];
    if (Array.isArray(value))
      return [[called, csvText(value.map((one) => (isThing(one) ? JSON.stringify(one) : one)).join('; '))]];
    if (isThing(value)) return cells(value, `${called}.`);
    return [[called, typeof value === 'number' ? String(value) : csvText(String(value))]];
  });
}

const isThing = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Lines as they come, as a body. */
export function csvBody(
  lines: AsyncIterable<string> | Iterable<string>,
): ReadableStream<Uint8Array<ArrayBuffer>> {
  return streamOf(encoded(lines));
}

const CHUNK = 64 * 1024;

async function* encoded(
  lines: AsyncIterable<string> | Iterable<string>,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const encoder = new TextEncoder();
  let text = '';
  for await (const line of lines) {
    text += `${line}\r\n`;
    if (text.length < CHUNK) continue;
    yield encoder.encode(text);
    text = '';
    // A record of years must not keep everybody else waiting.
    await new Promise((resolve) => setImmediate(resolve));
  }
  if (text !== '') yield encoder.encode(text);
}

/** A name as a file to save: ASCII for old programs, the whole name for others (RFC 6266). */
export function asFile(name: string): string {
  return `attachment; filename="${name.replace(/[^\w.-]/g, '_')}"; filename*=UTF-8''${encodeURIComponent(name)}`;
}
