import { randomBytes } from 'node:crypto';
import { createMiddleware } from 'hono/factory';
import type { Environment } from '../environment.js';

/** Pages that say the same until something is written: not those on waiting files, accounts or sign-in. */
const LASTING = /^\/($|boxes(\/|$)|stations(\/|$)|tables(\/|$)|help(\/|$))/;
const MOST_CHARACTERS = 20_000_000;

/** What is drawn in place of the two things that differ each time: nobody can write them into a name. */
const CSRF = randomBytes(16).toString('hex');
const NONCE = randomBytes(16).toString('hex');

/**
 * Draws a page once for everybody whom it says the same, until the next write (`revision`) or the next day. What it says
 * depends on the person's name and role, the language and the address; its nonce and csrf field are put in anew.
 */
export function keepPages(revision: () => number) {
  const pages = new KeptPages();
  return createMiddleware<Environment>(async (c, next) => {
    if (c.req.method !== 'GET' || !LASTING.test(c.req.path)) return next();
    const { csrf, nonce, person, language, today } = c.var;
    const drawnAt = revision();
    const { pathname, search } = new URL(c.req.url);
    const asked = JSON.stringify([today, language, person.name, person.role, person.by, pathname, search]);
    const mine = (text: string) => text.replaceAll(CSRF, csrf).replaceAll(NONCE, nonce);
    const kept = pages.get(drawnAt, asked);
    if (kept !== null) return c.html(mine(kept));
    c.set('csrf', CSRF);
    c.set('nonce', NONCE);
    await next();
    c.set('csrf', csrf);
    c.set('nonce', nonce);
    if (c.res.headers.get('Content-Type')?.startsWith('text/html') !== true) return undefined;
    const text = await c.res.text();
    if (c.res.status === 200) pages.keep(drawnAt, asked, text);
    c.res = new Response(mine(text), c.res);
    return undefined;
  });
}

class KeptPages {
  private revision = -1;
  private characters = 0;
  private readonly pages = new Map<string, string>();

  get(revision: number, asked: string): string | null {
    this.follow(revision);
    return this.pages.get(asked) ?? null;
  }

  /** A page begun before a write that has ended since is not kept. */
  keep(revision: number, asked: string, text: string): void {
    if (revision !== this.revision || text.length > MOST_CHARACTERS) return;
    this.pages.set(asked, text);
    this.characters += text.length;
    for (const [oldest, old] of this.pages) {
      if (this.characters <= MOST_CHARACTERS) return;
      this.pages.delete(oldest);
      this.characters -= old.length;
    }
  }

  private follow(revision: number): void {
    if (revision === this.revision) return;
    this.revision = revision;
    this.characters = 0;
    this.pages.clear();
  }
}
