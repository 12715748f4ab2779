import { HttpRefused } from '../refused.js';

export interface ReceivingLimits {
  /** Most bytes, and the refusal where there are more. */
  readonly bytes: number;
  readonly tooLarge: () => HttpRefused;
  /** A body that has brought fewer than `SLOWEST` bytes a second over this long is given up. */
  readonly patienceSeconds: number;
}

/** Bytes a second under which a client is not on a poor connection but never ends (ours). */
const SLOWEST = 1024;

/**
 * A body's bytes as they come, never gathered: refused while streaming where they are more than allowed (413), come
 * too slowly to end (408) or break off (400).
 */
export async function* received(
  body: ReadableStream<Uint8Array>,
  limits: ReceivingLimits,
): AsyncGenerator<Uint8Array> {
  const reader = body.getReader();
  const tooSlow = () =>
    new HttpRefused(408, { code: 'http-too-slow', with: { seconds: limits.patienceSeconds } });
  let bytes = 0;
  let [since, sinceBytes] = [Date.now(), 0];
  let done = false;
  try {
    for (;;) {
      const next = await within(limits.patienceSeconds * 1000, readNext(reader), tooSlow);
      if (next === null) {
        done = true;
        return;
      }
      bytes += next.byteLength;
      if (bytes > limits.bytes) throw limits.tooLarge();
      const seconds = (Date.now() - since) / 1000;
      if (seconds >= limits.patienceSeconds) {
        if ((bytes - sinceBytes) / seconds < SLOWEST) throw tooSlow();
        [since, sinceBytes] = [Date.now(), bytes];
      }
      yield next;
    }
  } finally {
    if (!done) await reader.cancel().catch(() => undefined);
  }
}

async function readNext(reader: ReadableStreamDefaultReader<Uint8Array>): Promise<Uint8Array | null> {
  try {
    const { done, value } = await reader.read();
    return done ? null : value;
  } catch {
    throw new HttpRefused(400, { code: 'http-broken-off', with: {} });
  }
}

async function within<T>(milliseconds: number, work: Promise<T>, late: () => Error): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  try {
    return await Promise.race([
      work,
      new Promise<never>((_, reject) => {
        timer = setTimeout(() => reject(late()), milliseconds);
      }),
    ]);
  } finally {
    clearTimeout(timer);
    // A read that fails after it was given up on has nobody left to tell.
    work.catch(() => undefined);
  }
}

/** A small body whole, as text. */
export async function receivedText(
  body: ReadableStream<Uint8Array> | null,
  limits: ReceivingLimits,
): Promise<string> {
  if (body === null) return '';
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of received(body, limits)) text += decoder.decode(chunk, { stream: true });
  return text + decoder.decode();
}
