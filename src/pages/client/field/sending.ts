/// <reference lib="dom" />
import { entries, type Kept, keepEntry } from './store.js';
import { language } from './words.js';

/** Entries of one request: small enough to get through a poor connection. */
const AT_ONCE = 20;
const PATIENCE_MS = 25_000;

export type Sent = 'sent' | 'no-answer' | 'signed-out';

class SignedOut extends Error {}
class NoAnswer extends Error {}

let running = false;

/**
 * Sends what has not been sent, in the order it was entered. Safe to call at any time, from any tab.
 * @param putRight the entry a person is putting right just now: it stays
 */
export async function sendAll(
  phone: string,
  putRight: () => string | null,
  progress: () => Promise<void>,
): Promise<Sent> {
  if (running) return 'sent';
  running = true;
  try {
    for (;;) {
      const unsent = (await entries()).filter(({ state }) => state === 'unsent').reverse();
      const fresh = unsent.filter(({ id, why }) => why === null && id !== putRight());
      if (fresh.length === 0) return 'sent';
      const batch: Kept[] = [];
      for (const entry of fresh.slice(0, AT_ONCE)) batch.push(await photosSent(entry));
      await batchSent(batch, phone);
      await progress();
    }
  } catch (error) {
    if (error instanceof SignedOut) return 'signed-out';
    if (error instanceof NoAnswer) return 'no-answer';
    throw error;
  } finally {
    running = false;
  }
}

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

async function asked(method: string, address: string, type: string, body: BodyInit): Promise<Answer> {
  const response = await fetch(address, {
    method,
    body,
    headers: { 'Content-Type': type, Accept: 'application/json' },
    credentials: 'same-origin',
    signal: AbortSignal.timeout(PATIENCE_MS),
  }).catch(() => {
    throw new NoAnswer();
  });
  if (response.status === 401) throw new SignedOut();
  const read: unknown = await response.json().catch(() => {
    throw new NoAnswer();
  });
  if (response.status >= 500 || response.status === 429) throw new NoAnswer();
  return { status: response.status, body: read };
}

/** Photographs go first, one by one; each name is kept before the next, so that none is sent twice. */
async function photosSent(entry: Kept): Promise<Kept> {
  let now = entry;
  while (now.photos.length > 0) {
    const [photo, ...rest] = now.photos;
    if (photo === undefined) break;
    const address = `/api/v1/photographs?position=${now.position}&lang=${language()}`;
    const { status, body } = await asked('PUT', address, 'application/octet-stream', photo);
    const before = Array.isArray(now.fields.photographs) ? now.fields.photographs : [];
    const name = textAt(body, 'photograph');
    now =
      status === 201
        ? { ...now, photos: rest, fields: { ...now.fields, photographs: [...before, name] } }
        : { ...now, photos: rest, photoWhy: textAt(body, 'detail') };
    await keepEntry(now);
  }
  return now;
}

async function batchSent(batch: readonly Kept[], phone: string): Promise<void> {
  const sent = batch.map(({ id, kind, entered, who, fields }) => ({ id, kind, entered, who, fields }));
  const body = JSON.stringify({ now: new Date().toISOString(), phone, entries: sent });
  const answer = await asked('POST', `/api/v1/entries?lang=${language()}`, 'application/json', body);
  if (answer.status !== 200) {
    // One that cannot be read must not hold up the others: each is sent alone, and the one keeps the reason.
    const [only] = batch;
    if (batch.length > 1) for (const one of batch) await batchSent([one], phone);
    else if (only !== undefined) await keepEntry({ ...only, why: textAt(answer.body, 'detail') });
    return;
  }
  const receipts = listAt(answer.body, 'entries');
  for (const entry of batch) {
    const receipt = receipts.find((one) => textAt(one, 'id') === entry.id);
    const state = textAt(receipt, 'state');
    if (state !== 'taken' && state !== 'waiting' && state !== 'before') throw new NoAnswer();
    const heard = listAt(receipt, 'cautions').map(String);
    const sent = new Date().toISOString();
    await keepEntry({ ...entry, state, why: textAt(receipt, 'why') || null, heard, sent });
  }
}

function textAt(value: unknown, name: string): string {
  const found: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;
  return typeof found === 'string' ? found : '';
}

function listAt(value: unknown, name: string): readonly unknown[] {
  const found: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;
  return Array.isArray(found) ? found : [];
}
