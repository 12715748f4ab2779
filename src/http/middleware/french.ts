import { createMiddleware } from 'hono/factory';
import { spacedPage, unitsTogether } from '../../words/index.js';
import type { Environment } from '../environment.js';

/** Sets signs off from their words as French does, in every French page: typed by us, a table or a person. In English only a figure and its °C are kept together. */
export function spaceFrench() {
  return createMiddleware<Environment>(async (c, next) => {
    await next();
    if (c.res.headers.get('Content-Type')?.startsWith('text/html') !== true) return;
    const together = c.var.language === 'fr' ? spacedPage : unitsTogether;
    c.res = new Response(together(await c.res.text()), c.res);
  });
}
