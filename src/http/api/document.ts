import { createMiddleware } from 'hono/factory';
import type { Settings } from '../../settings/index.js';
import type { Environment } from '../environment.js';
import { receivedText } from '../received/bytes.js';
import { formLimits } from '../received/posted.js';

/** Takes in a body that is a document, within its limits, before any route reads it; files stream past. */
export function takeDocument(settings: Settings) {
  return createMiddleware<Environment>(async (c, next) => {
    const changes = !['GET', 'HEAD', 'OPTIONS'].includes(c.req.method);
    if (changes && !/\/(files\/|photographs$)/.test(c.req.path)) {
      const text = await receivedText(c.req.raw.body, formLimits(settings));
      // The readers of the framework look here first.
      Object.assign(c.req.bodyCache, { text: Promise.resolve(text) });
    }
    await next();
  });
}
