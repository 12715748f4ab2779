import { randomBytes } from 'node:crypto';
import { createMiddleware } from 'hono/factory';
import { secureHeaders } from 'hono/secure-headers';
import type { Environment } from '../environment.js';

/** A fresh nonce, then the headers that keep foreign scripts, frames and guesses at types out. */
export function safeHeaders(https: boolean) {
  const nonceOf = (c: { get(name: 'nonce'): unknown }) => `'nonce-${String(c.get('nonce'))}'`;
  const headers = secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'", nonceOf],
      // Charts are SVG with style attributes; no style can run anything.
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      manifestSrc: ["'self'"],
      workerSrc: ["'self'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      objectSrc: ["'none'"],
      frameAncestors: ["'none'"],
    },
    strictTransportSecurity: https ? 'max-age=31536000' : false,
    xFrameOptions: 'DENY',
    referrerPolicy: 'same-origin',
    crossOriginResourcePolicy: 'same-origin',
    crossOriginOpenerPolicy: 'same-origin',
    permissionsPolicy: { camera: ['self'], geolocation: ['self'], microphone: false },
  });
  return createMiddleware<Environment>(async (c, next) => {
    c.set('nonce', randomBytes(16).toString('base64url'));
    await headers(c, next);
    // What one person may see is kept by that person's own browser only, and asked for anew each time.
    if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'private, no-cache');
  });
}
