/** Share of control bytes above which bytes are not text (ours: a power cut can leave a few in a download). */
const MOST_CONTROL = 0.02;
/** Share of bytes above 0x7F, in what is not UTF-8, above which bytes are not text in a Latin script (ours). */
const MOST_HIGH = 0.4;

const startsWith = (head: Uint8Array, ...bytes: number[]): boolean => bytes.every((b, i) => head[i] === b);

/** Which UTF-16 a file is in, by its mark or, without one, by every second byte being zero. */
function utf16Of(head: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (startsWith(head, 0xff, 0xfe)) return 'utf-16le';
  if (startsWith(head, 0xfe, 0xff)) return 'utf-16be';
  const pairs = Math.min(head.length >> 1, 512);
  if (pairs < 2) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let i = 0; i < pairs; i++) {
    if (head[2 * i] === 0) evenZeros++;
    if (head[2 * i + 1] === 0) oddZeros++;
  }
  if (oddZeros > pairs * 0.9 && evenZeros === 0) return 'utf-16le';
  return evenZeros > pairs * 0.9 && oddZeros === 0 ? 'utf-16be' : null;
}

/** The head as text, good enough to recognise a format by; a character cut at the end is dropped. */
export function plainText(head: Uint8Array): string {
  const whole = utf16Of(head) ?? 'utf-8';
  return new TextDecoder(whole).decode(head, { stream: true });
}

const isControl = (code: number): boolean =>
  code === 0x7f ||
  code === 0xfffe ||
  code === 0xffff ||
  (code < 0x20 && !(code >= 0x09 && code <= 0x0d) && code !== 0x1a);

/** A run of zeros at the end is what a logger that lost power leaves: it says nothing of what stands before. */
const withoutPadding = (text: string): string => text.replace(/\0+$/, '');

/** Whether the head is no text at all, in any encoding a download comes in. */
export function looksBinary(head: Uint8Array, decoded: string): boolean {
  const text = withoutPadding(decoded);
  let control = 0;
  let wrong = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (isControl(code)) control++;
    else if (code === 0xfffd) wrong++;
  }
  if (text.length === 0 || control > text.length * MOST_CONTROL) return true;
  if (wrong === 0) return false;
  let high = 0;
  for (const byte of head) if (byte > 0x7f) high++;
  return high > head.length * MOST_HIGH;
}
