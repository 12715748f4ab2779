import { createMiddleware } from 'hono/factory';
import { spacedPage } from '../../words/index.js';
import type { Environment } from '../environment.js';

/** Sets signs and units off from their words as the page's language does: typed by us, a table or a person. */
export function spacePages() {
  return createMiddleware<Environment>(async (c, next) => {
    await next();
    if (c.res.headers.get('Content-Type')?.startsWith('text/html') !== true) return;
    c.res = new Response(spacedPage(await c.res.text(), c.var.language), c.res);
  });
}
