import { randomBytes } from 'node:crypto';
import { createMiddleware } from 'hono/factory';
import type { Environment } from '../environment.js';

/** Pages that say the same until something is written: not those on waiting files, accounts or sign-in. */
const LASTING = /^\/($|boxes(\/|$)|stations(\/|$)|tables(\/|$)|lifting(\/|$)|help(\/|$))/;
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
    const found = pages.get(drawnAt, asked);
    const kept = found === null ? null : await found;
    if (kept !== null) return c.html(mine(kept));
    const drawn = pages.begin(drawnAt, asked);
    try {
      c.set('csrf', CSRF);
      c.set('nonce', NONCE);
      await next();
      c.set('csrf', csrf);
      c.set('nonce', nonce);
      if (c.res.headers.get('Content-Type')?.startsWith('text/html') !== true) return undefined;
      const text = await c.res.text();
      if (c.res.status === 200) drawn(text);
      c.res = new Response(mine(text), c.res);
      return undefined;
    } finally {
      drawn(null);
    }
  });
}

interface Page {
  /** null where it could not be kept: whoever waited for it draws it for themselves. */
  readonly text: Promise<string | null>;
  characters: number;
}

class KeptPages {
  private revision = -1;
  private characters = 0;
  private readonly pages = new Map<string, Page>();

  /** The page as it was drawn, or is being drawn for somebody else at this moment. */
  get(revision: number, asked: string): Promise<string | null> | null {
    if (revision !== this.revision) {
      this.revision = revision;
      this.characters = 0;
      this.pages.clear();
    }
    return this.pages.get(asked)?.text ?? null;
  }

  /** Says that a page is being drawn; what is given back is to be told the page, the first time counts. */
  begin(revision: number, asked: string): (text: string | null) => void {
    let tell: (text: string | null) => void = () => undefined;
    const page: Page = { text: new Promise((resolve) => (tell = resolve)), characters: 0 };
    if (revision === this.revision) this.pages.set(asked, page);
    let told = false;
    return (text) => {
      if (told) return;
      told = true;
      tell(text);
      if (this.pages.get(asked) !== page) return;
      if (text === null) this.pages.delete(asked);
      else this.keep(page, text.length);
    };
  }

  private keep(page: Page, characters: number): void {
    page.characters = characters;
    this.characters += characters;
    for (const [oldest, old] of this.pages) {
      if (this.characters <= MOST_CHARACTERS) return;
      this.pages.delete(oldest);
      this.characters -= old.characters;
    }
  }
}
