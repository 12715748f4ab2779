import { createHash } from 'node:crypto';
import { ask, type NamedAddresses } from '../network/index.js';
import { isoDay } from '../words/index.js';

const DAY = 86_400_000;

export interface FetchQuestion {
  /** {from} and {to} in it are dates. */
  readonly url: string;
  readonly etag: string | null;
  readonly modified: string | null;
  /** A hash of what came last time. */
  readonly seen: string | null;
  /** The station's last reading, epoch milliseconds; null where it has none. */
  readonly last: number | null;
  readonly keepsDays: number;
  readonly now: number;
  readonly named: NamedAddresses;
  readonly bytes: number;
  readonly seconds: number;
  readonly signal?: AbortSignal | undefined;
}

export type Fetched =
  | { readonly kind: 'same' }
  | { readonly kind: 'status'; readonly status: number }
  | {
      readonly kind: 'new';
      readonly body: Buffer;
      readonly seen: string;
      readonly etag: string | null;
      readonly modified: string | null;
    };

/** Asks an address for what is new since last time: by its ETag, its date, and by what it says. @throws NetworkFailed */
export async function fetchFeed(question: FetchQuestion): Promise<Fetched> {
  const { etag, modified, seen, named, bytes, seconds, signal } = question;
  const url = addressFor(question);
  // An address that asks for other days is another document: what it was last time says nothing of it.
  const sameDocument = url === question.url;
  const answered = await ask({
    url,
    method: 'GET',
    headers: {
      'User-Agent': 'underice',
      Accept: 'text/csv, text/plain, application/xml, */*;q=0.5',
      ...(sameDocument && etag !== null ? { 'If-None-Match': etag } : {}),
      ...(sameDocument && etag === null && modified !== null ? { 'If-Modified-Since': modified } : {}),
    },
    named,
    bytes,
    seconds,
    longer: 'refuse',
    redirects: 3,
    signal,
  });
  if (answered.status === 304) return { kind: 'same' };
  if (answered.status !== 200) return { kind: 'status', status: answered.status };
  const hash = createHash('sha256').update(answered.body).digest('hex');
  if (hash === seen) return { kind: 'same' };
  const { headers } = answered;
  return {
    kind: 'new',
    body: answered.body,
    seen: hash,
    etag: headers.etag ?? null,
    modified: headers['last-modified'] ?? null,
  };
}

/** The address with its dates: from the last reading's day, no further back than the provider keeps. */
export function addressFor({
  url,
  last,
  keepsDays,
  now,
}: Pick<FetchQuestion, 'url' | 'last' | 'keepsDays' | 'now'>): string {
  const kept = now - keepsDays * DAY;
  const from = Math.max(kept, last ?? kept);
  return url.replaceAll('{from}', isoDay(from / DAY)).replaceAll('{to}', isoDay(now / DAY + 1));
}
