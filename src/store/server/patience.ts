import { HttpError, RequestTimedOutError } from '@influxdata/influxdb-client';
import type { ServerAddress } from '../folder.js';
import { StoreRefused } from '../refused.js';
import { AnswerBroken, StatementFailed } from './answer.js';

/** How long a server that does not answer is tried, milliseconds. */
export const DEFAULT_PATIENCE = 120_000;
const FIRST_WAIT = 100;
const LONGEST_WAIT = 10_000;

/**
 * Does something with the server until it is done: tries again after a refused or broken connection, a broken answer, a
 * timeout, 429, 500, 502, 503 and 504, as soon as Retry-After allows, as long as the patience lasts.
 *
 * @throws StoreRefused when it is exhausted, or at once where trying again would not help.
 */
export async function patiently<T>(
  { url, patience = DEFAULT_PATIENCE }: ServerAddress,
  work: () => Promise<T>,
): Promise<T> {
  const end = Date.now() + patience;
  for (let wait = FIRST_WAIT; ; wait = Math.min(LONGEST_WAIT, 2 * wait)) {
    try {
      return await within(end - Date.now(), work);
    } catch (error) {
      const refusal = final(url, error);
      if (refusal !== null) throw refusal;
      const pause = Math.max(wait, retryAfter(error));
      if (Date.now() + pause >= end) throw exhausted(url, error);
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }
}

/** An answer that trickles in for ever is no answer. */
async function within<T>(milliseconds: number, work: () => Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new RequestTimedOutError()), Math.max(1, milliseconds));
  });
  try {
    return await Promise.race([work(), late]);
  } finally {
    clearTimeout(timer);
  }
}

/** The refusal where trying again would not help; null where it may. */
function final(url: string, error: unknown): StoreRefused | null {
  if (error instanceof StoreRefused) return error;
  const cause = { cause: error };
  const why = whyOf(error);
  if (/no space left on device|disk quota exceeded/i.test(why))
    return new StoreRefused({ code: 'server-full', with: { url } }, 1, cause);
  if (error instanceof StatementFailed)
    return new StoreRefused({ code: 'server-failed', with: { url, why } }, 1, cause);
  if (!(error instanceof HttpError)) return null;
  if (error.statusCode === 401 || error.statusCode === 403)
    return new StoreRefused({ code: 'server-denied', with: { url } }, 1, cause);
  const mayPass = error.statusCode >= 500 || error.statusCode === 429 || error.statusCode === 408;
  return mayPass ? null : new StoreRefused({ code: 'server-failed', with: { url, why } }, 1, cause);
}

function exhausted(url: string, error: unknown): StoreRefused {
  const answered = error instanceof HttpError || error instanceof AnswerBroken;
  const code = answered ? 'server-failed' : 'server-unreachable';
  return new StoreRefused({ code, with: { url, why: whyOf(error) } }, 1, { cause: error });
}

function whyOf(error: unknown): string {
  if (error instanceof HttpError) {
    const said: unknown = error.json?.error ?? error.json?.message ?? error.body ?? '';
    return `${error.statusCode} ${String(said).trim().slice(0, 200)}`.trim();
  }
  if (error instanceof AggregateError && error.errors[0] instanceof Error) return error.errors[0].message;
  return error instanceof Error ? error.message : String(error);
}

/** Milliseconds the server asked to be left alone (seconds or a date, RFC 9110 section 10.2.3). */
function retryAfter(error: unknown): number {
  if (!(error instanceof HttpError)) return 0;
  const asked = error.headers?.['retry-after'];
  if (typeof asked !== 'string') return 0;
  const seconds = Number(asked);
  const milliseconds = Number.isFinite(seconds) ? seconds * 1000 : Date.parse(asked) - Date.now();
  return Number.isFinite(milliseconds) ? Math.max(0, milliseconds) : 0;
}
