import { streamOf } from './stream.js';

/**
 * A cell of text from outside: quoted where it must be, and with an apostrophe before = + - @ tab and CR, so that a
 * spreadsheet shows it and does not run it. Numbers are not text: a negative temperature stays a number.
 */
export function csvText(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

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
