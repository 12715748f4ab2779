import type { FileRemark } from './remark.js';
import { type PlainCode, signatureOf } from './signatures.js';
import { looksBinary, plainText } from './text.js';

export type Recognised =
  | { readonly kind: 'text' }
  | { readonly kind: 'waterml' }
  | { readonly kind: 'refuse'; readonly remark: FileRemark };

/** How much of a file's beginning is worth showing to `recognise`: office files name themselves late. */
export const HEAD_BYTES = 64 * 1024;

const WATERML_2 = 'http://www.opengis.net/waterml/2.0';
const WATERML_1 = /waterml\/1\.[01]|<(?:\w+:)?timeSeriesResponse[\s>]/i;
const ERROR_ROOTS = /^(?:ExceptionReport|ServiceExceptionReport|ServiceException|Fault|Error)$/;
const LOGIN = /type\s*=\s*["']?password|log[ -]?in\b|sign[ -]?in\b|connexion|authentif|mot de passe/i;

const refuse = (code: PlainCode): Recognised => ({ kind: 'refuse', remark: { code, with: {} } });

/** The name of the first element, without its prefix; null when the text is not XML-like. */
function rootElement(text: string): string | null {
  const prologue = /^(?:\s+|<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<!DOCTYPE[^>[]*(?:\[[\s\S]*?\])?[^>]*>)*/i;
  const rest = text.slice(prologue.exec(text)?.[0].length ?? 0);
  return /^<(?:[\w.-]+:)?([A-Za-z_][\w.-]*)/.exec(rest)?.[1] ?? null;
}

function recogniseMarkup(text: string, root: string): Recognised {
  if (/^(?:html|head|body|script|style|meta|title|form|table|div)$/i.test(root))
    return refuse(LOGIN.test(text) ? 'formats.login-page' : 'formats.web-page');
  if (ERROR_ROOTS.test(root)) return refuse('formats.service-error');
  if (text.includes(WATERML_2)) return { kind: 'waterml' };
  if (WATERML_1.test(text)) return refuse('formats.old-waterml');
  return { kind: 'refuse', remark: { code: 'formats.other-xml', with: { root: root.slice(0, 60) } } };
}

/** Braces and brackets that only JSON opens with; a preamble line such as `[Settings]` is not taken for it. */
const JSON_OPENING = /^\s*(?:\{\s*(?:"[^"\n]*"\s*:|\})|\[\s*(?:\{\s*"|\[\s*["\d-]|\]))/;

/**
 * Tells from a file's first bytes whether it is delimited text, WaterML 2.0, or no download at all.
 *
 * @param head the first bytes after any gzip was undone, up to `HEAD_BYTES`; all of them when the file is shorter
 * @returns the kind, or the remark with which the file is refused whole
 */
export function recognise(head: Uint8Array): Recognised {
  const announced = signatureOf(
    Buffer.from(head.buffer, head.byteOffset, head.byteLength).toString('latin1'),
  );
  if (announced !== null) return refuse(announced);
  const text = plainText(head);
  if (text.trim() === '') return refuse('formats.empty');
  if (looksBinary(head, text)) return refuse('formats.binary');
  const root = /^\s*</.test(text) ? rootElement(text) : null;
  if (root !== null) return recogniseMarkup(text, root);
  return JSON_OPENING.test(text) ? refuse('formats.json') : { kind: 'text' };
}
