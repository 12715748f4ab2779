import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { createMiddleware } from 'hono/factory';
import type { Environment } from '../environment.js';

/** Answers that are whole before they are sent; what streams is packed as it goes. */
const WHOLE = /^(application\/json|text\/html)\b/;
/** What a packet of the network holds anyway. */
const SMALL_BYTES = 1024;
/** A little larger than at the usual 6, in half the time. */
const LEVEL = 4;

const gzipping = promisify(gzip);

export async function gzipped(bytes: string | Uint8Array): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await gzipping(bytes, { level: LEVEL }));
}

export function unpacksGzip(accepts: string | undefined): boolean {
  return /\bgzip\b(?!\s*;\s*q=0(\.0+)?\s*(,|$))/.test(accepts ?? '');
}

/** Packs answers in one piece: much less work than a stream a packet at a time. */
export function packWhole() {
  return createMiddleware<Environment>(async (c, next) => {
    await next();
    const { headers } = c.res;
    if (c.req.method === 'HEAD' || c.res.body === null || headers.has('Content-Encoding')) return;
    if (!WHOLE.test(headers.get('Content-Type') ?? '')) return;
    if (/\bno-transform\b/.test(headers.get('Cache-Control') ?? '')) return;
    if (!unpacksGzip(c.req.header('Accept-Encoding'))) return;
    const bytes = new Uint8Array(await c.res.arrayBuffer());
    if (bytes.length < SMALL_BYTES) {
      c.res = new Response(bytes, c.res);
      return;
    }
    c.res = new Response(await gzipped(bytes), c.res);
    c.res.headers.delete('Content-Length');
    c.res.headers.set('Content-Encoding', 'gzip');
    c.res.headers.append('Vary', 'Accept-Encoding');
  });
}
