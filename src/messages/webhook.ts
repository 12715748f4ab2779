import { createHmac } from 'node:crypto';
import { ask, type NamedAddresses, NetworkFailed } from '../network/index.js';
import { isoInstant } from '../words/index.js';
import type { Letter } from './letter.js';
import type { Outcome } from './outcome.js';

/** Longest a webhook may take, and most that is read of its answer. */
const SECONDS = 20;
const BYTES = 16_384;

export interface Hook {
  readonly url: string;
  readonly secret: string;
  readonly named: NamedAddresses;
  readonly seconds?: number;
  readonly signal?: AbortSignal | undefined;
}

/**
 * What stands in `Underice-Signature`: HMAC-SHA256 of the timestamp, a full stop and the body, hexadecimal. Whoever
 * receives works it out with the same secret, and refuses an old timestamp.
 */
export function signatureOf(secret: string, timestamp: string, body: string): string {
  return `sha256=${createHmac('sha256', secret).update(`${timestamp}.${body}`).digest('hex')}`;
}

/** Posts one message as JSON, signed. */
export async function sendWebhook(hook: Hook, group: string, letter: Letter, now: number): Promise<Outcome> {
  const { messageId, language, subject, text, news, link } = letter;
  const body = JSON.stringify({ message: messageId, group, language, subject, text, news, link });
  const timestamp = isoInstant(now);
  try {
    const { status } = await ask({
      url: hook.url,
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        'User-Agent': 'underice',
        'Underice-Message': messageId,
        'Underice-Timestamp': timestamp,
        'Underice-Signature': signatureOf(hook.secret, timestamp, body),
      },
      body,
      named: hook.named,
      seconds: hook.seconds ?? SECONDS,
      bytes: BYTES,
      longer: 'cut',
      redirects: 0,
      signal: hook.signal,
    });
    if (status >= 200 && status < 300)
      return { came: 'delivered', remark: { code: 'delivery-accepted', with: { answer: String(status) } } };
    const host = new URL(hook.url).host;
    // 410 says that nobody will ever listen there again (RFC 9110, section 15.5.11).
    return {
      came: status === 410 ? 'refused' : 'later',
      remark: { code: 'network-status', with: { host, status } },
    };
  } catch (error) {
    if (!(error instanceof NetworkFailed)) throw error;
    return { came: 'later', remark: error.remark };
  }
}
