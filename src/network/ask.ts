import { lookup } from 'node:dns';
import { type IncomingMessage, request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import type { LookupFunction } from 'node:net';
import { addressOf, hostOf, mayAsk, type NamedAddresses, refusePrivate } from './addresses.js';
import { NetworkFailed } from './refused.js';

export interface Question {
  readonly url: string;
  readonly method: 'GET' | 'POST';
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
  readonly named: NamedAddresses;
  /** Longest the whole of it may take, from the first look-up to the last byte. */
  readonly seconds: number;
  /** Most bytes of an answer. */
  readonly bytes: number;
  /** What to do with an answer that is longer: `cut` keeps its beginning, `refuse` fails. */
  readonly longer: 'cut' | 'refuse';
  /** How many redirects are followed, each checked like the first address. */
  readonly redirects: number;
  readonly signal?: AbortSignal | undefined;
}

export interface Answered {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

/**
 * Asks another machine, within bounds: never an address in the surroundings that the settings do not name (the address
 * is checked when it is connected to, so a name that changes its address in between helps nobody), never longer or larger
 * than stated.
 * @throws NetworkFailed
 */
export async function ask(question: Question): Promise<Answered> {
  let url = addressOf(question.url);
  for (let left = question.redirects; ; left--) {
    const answered = await askOnce(url, question);
    if (answered.status < 300 || answered.status >= 400 || answered.status === 304) return answered;
    const host = hostOf(url);
    const to = nextAddress(url, answered.headers.location);
    if (to === null || leadsInside(to, question.named))
      throw new NetworkFailed({ code: 'network-redirects-private', with: { host, to: shown(to) } });
    if (left <= 0 || question.method !== 'GET')
      throw new NetworkFailed({ code: 'network-redirects', with: { host, to: shown(to) } });
    url = to;
  }
}

function nextAddress(from: URL, location: string | undefined): URL | null {
  if (location === undefined || !URL.canParse(location, from.href)) return null;
  const to = new URL(location, from.href);
  return /^https?:$/.test(to.protocol) ? to : null;
}

function leadsInside(to: URL, named: NamedAddresses): boolean {
  const host = hostOf(to);
  if (/^localhost$/i.test(host) && !named.includes(host)) return true;
  try {
    refusePrivate(to, named);
    return false;
  } catch {
    return true;
  }
}

function shown(url: URL | null): string {
  return url === null ? '-' : `${url.protocol}//${url.host}`.slice(0, 120);
}

function askOnce(url: URL, question: Question): Promise<Answered> {
  const { method, headers, body, named, seconds, bytes, longer } = question;
  const host = hostOf(url);
  refusePrivate(url, named);
  return new Promise((resolve, reject) => {
    const fail = (error: unknown) => {
      clearTimeout(late);
      reject(failure(error, host));
      asked.destroy();
    };
    const asked = (url.protocol === 'https:' ? secureRequest : plainRequest)(url, {
      method,
      headers: { ...headers, ...(body === undefined ? {} : { 'Content-Length': Buffer.byteLength(body) }) },
      agent: false,
      lookup: guardedLookup(host, named),
      ...(question.signal === undefined ? {} : { signal: question.signal }),
    });
    const late = setTimeout(
      () => fail(new NetworkFailed({ code: 'network-too-slow', with: { host, seconds } })),
      seconds * 1000,
    );
    asked.on('error', fail);
    asked.on('response', (response) => {
      const chunks: Buffer[] = [];
      let length = 0;
      const done = () => {
        clearTimeout(late);
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(chunks) });
      };
      response.on('data', (chunk: Buffer) => {
        length += chunk.length;
        if (length <= bytes) {
          chunks.push(chunk);
          return;
        }
        if (longer === 'refuse') {
          fail(new NetworkFailed({ code: 'network-too-large', with: { host, bytes } }));
          return;
        }
        done();
        asked.destroy();
      });
      response.on('end', () => {
        if (response.complete) done();
        else fail(new NetworkFailed({ code: 'network-broken-off', with: { host } }));
      });
      response.on('error', fail);
      response.on('aborted', () => fail(new NetworkFailed({ code: 'network-broken-off', with: { host } })));
    });
    asked.end(body);
  });
}

/** Looks a name up and lets only such addresses through as may be asked. */
function guardedLookup(host: string, named: NamedAddresses): LookupFunction {
  return (name, options, callback) => {
    lookup(name, { ...options, all: true }, (error, found) => {
      if (error !== null) {
        callback(error, '', 0);
        return;
      }
      const inside = found.find(({ address }) => !mayAsk(address, host, named));
      const [first] = found;
      if (inside !== undefined || first === undefined) {
        const address = inside?.address ?? '-';
        callback(new NetworkFailed({ code: 'network-private', with: { host, address } }), '', 0);
        return;
      }
      if (options.all === true) callback(null, found);
      else callback(null, first.address, first.family);
    });
  };
}

/** What failed, as this program says it. */
export function failure(error: unknown, host: string): NetworkFailed {
  if (error instanceof NetworkFailed) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const why = (error instanceof Error ? error.message : String(error)).slice(0, 200);
  if (code === 'ENOTFOUND' || code === 'EAI_AGAIN')
    return new NetworkFailed({ code: 'network-unknown-host', with: { host } });
  if (/CERT|SELF_SIGNED|ALTNAME|UNABLE_TO_VERIFY/.test(code))
    return new NetworkFailed({ code: 'network-certificate', with: { host, why } });
  if (code === 'ECONNRESET' || code === 'EPIPE' || /aborted/.test(why))
    return new NetworkFailed({ code: 'network-broken-off', with: { host } });
  return new NetworkFailed({
    code: 'network-refused',
    with: { host, why: /\bE[A-Z]{4,}\b/.exec(why)?.[0] ?? (code || why) },
  });
}
