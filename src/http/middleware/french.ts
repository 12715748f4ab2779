import { createMiddleware } from 'hono/factory';
import { spacedPage } from '../../words/index.js';
import type { Environment } from '../environment.js';

/** Sets signs off from their words as French does, in every French page: typed by us, a table or a person. */
export function spaceFrench() {
  return createMiddleware<Environment>(async (c, next) => {
    await next();
    if (c.var.language !== 'fr' || c.res.headers.get('Content-Type')?.startsWith('text/html') !== true)
      return;
    c.res = new Response(spacedPage(await c.res.text()), c.res);
  });
}
