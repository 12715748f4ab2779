import type { Context } from 'hono';
import { createMiddleware } from 'hono/factory';
import type { Settings } from '../../settings/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])$/i;

export function isLoopback(host: string): boolean {
  return LOOPBACK.test(host) || host === '::1';
}

/**
 * A page elsewhere can make its own name point at this machine; requests that came by such a name are refused. On
 * loopback the service answers to loopback names and its own stated address only.
 */
export function ownName({ host, address }: Settings) {
  const stated = address === null ? null : new URL(address).hostname;
  return createMiddleware<Environment>(async (c, next) => {
    const given = hostOf(c.req.header('Host') ?? '');
    if (isLoopback(host) && !LOOPBACK.test(given) && given !== stated && given !== host)
      throw new HttpRefused(421, { code: 'http-foreign-host', with: { host: given.slice(0, 80) } });
    await next();
  });
}

export function hostOf(header: string): string {
  return header.replace(/:\d+$/, '').toLowerCase();
}

/** Where the request came from; behind a proxy, what the proxy says (the last entry: the rest anybody can write). */
export function remoteAddress(c: Context<Environment>, { behindProxy }: Settings): string {
  const forwarded = behindProxy ? c.req.header('X-Forwarded-For')?.split(',').at(-1)?.trim() : undefined;
  return forwarded || c.env?.incoming?.socket.remoteAddress || '';
}

/** Whether cookies must only travel by HTTPS. */
export function isHttps({ address }: Settings): boolean {
  return address?.startsWith('https:') === true;
}
