import { randomBytes } from 'node:crypto';
import { createMiddleware } from 'hono/factory';
import type { Logger } from 'pino';
import type { Environment } from '../environment.js';

/** One line a request: who, what, how it ended, how long it took. Secrets in addresses are left out. */
export function logRequests(log: Logger) {
  return createMiddleware<Environment>(async (c, next) => {
    const began = performance.now();
    await next();
    const milliseconds = Math.round((performance.now() - began) * 10) / 10;
    const line = {
      method: c.req.method,
      path: withoutSecrets(c.req.path),
      status: c.res.status,
      milliseconds,
      person: c.get('person')?.name,
    };
    if (c.res.status >= 500) log.error(line, 'request');
    else log.info(line, 'request');
  });
}

function withoutSecrets(path: string): string {
  return path.replace(/^\/(calendar|invitation)\/.*/, '/$1/…').slice(0, 300);
}

export function newReference(): string {
  return randomBytes(4).toString('hex');
}
