import { getCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { parseAccept } from 'hono/utils/accept';
import { type Language, languages } from '../../words/index.js';
import type { Environment } from '../environment.js';

export const LANGUAGE_COOKIE = 'underice_language';

/** What the address asks for, else the person's own choice, else what the browser prefers, else the usual language. */
export function chooseLanguage(usual: Language) {
  return createMiddleware<Environment>(async (c, next) => {
    const chosen = known(c.req.query('lang')) ?? known(getCookie(c, LANGUAGE_COOKIE));
    c.set('language', chosen ?? preferred(c.req.header('Accept-Language') ?? '') ?? usual);
    await next();
    c.header('Vary', 'Accept-Language, Cookie', { append: true });
    if (!c.res.headers.has('Content-Language')) c.header('Content-Language', c.var.language);
  });
}

function preferred(accept: string): Language | null {
  const asked = parseAccept(accept.slice(0, 500)).sort((one, other) => other.q - one.q);
  for (const { type, q } of asked) {
    const language = known(type.split('-')[0]?.toLowerCase());
    if (language !== null && q > 0) return language;
  }
  return null;
}

export function known(language: string | undefined): Language | null {
  return languages.find((one) => one === language) ?? null;
}
