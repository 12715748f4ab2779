import { createMiddleware } from 'hono/factory';
import { frenchSpacing } from '../../words/index.js';
import type { Environment } from '../environment.js';

/** Text between tags; whole elements whose text goes back to the service, is read by a script, or is code. */
const TEXT = /<(textarea|script|style|pre)\b[\s\S]*?<\/\1>|>[^<]+/g;

/** Sets signs off from their words as French does, in every French page: typed by us, a table or a person. */
export function spaceFrench() {
  return createMiddleware<Environment>(async (c, next) => {
    await next();
    if (c.var.language !== 'fr' || c.res.headers.get('Content-Type')?.startsWith('text/html') !== true)
      return;
    c.res = new Response(spacedPage(await c.res.text()), c.res);
  });
}

/** What spacing makes of a sign written as HTML escapes it (`&amp;`): its semicolon is no punctuation. */
const ESCAPED = /(&(?:[a-z]+|#\w+))\u00a0;/gi;

/** @example spacedPage('<p>Oui : « ici »</p>') // '<p>Oui\u00a0: «\u00a0ici\u00a0»</p>' */
export function spacedPage(html: string): string {
  return html.replace(TEXT, (found) =>
    found.startsWith('<') ? found : `>${frenchSpacing(found.slice(1)).replace(ESCAPED, '$1;')}`,
  );
}
