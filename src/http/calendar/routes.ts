import { Hono } from 'hono';
import type { Environment } from '../environment.js';
import { known } from '../middleware/language.js';
import { HttpRefused } from '../refused.js';
import type { Accounts } from '../sign-in/accounts.js';
import { same } from '../sign-in/secrets.js';
import { calendarFeed } from './feed.js';

/** Whose calendar in which language: the part of an address that anybody may know. */
export interface CalendarOf {
  readonly language: 'en' | 'fr';
  /** null: every box of the group. */
  readonly box: string | null;
}

/** A calendar's own address; its last piece is not to be guessed, and changes when somebody changes it. */
export function calendarPath(accounts: Accounts, calendar: CalendarOf): string {
  const box = calendar.box === null ? '' : `${encodeURIComponent(calendar.box)}/`;
  return `/calendar/${calendar.language}/${box}${accounts.calendarKey(nameOf(calendar))}.ics`;
}

export function nameOf({ language, box }: CalendarOf): string {
  return box === null ? language : `${language} ${box}`;
}

/** The feeds: no sign-in, a phone's calendar cannot; the address is the key. */
export function calendarRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/calendar/:language/:key{[\\w-]+\\.ics}', (c) => answer(c, null))
    .get('/calendar/:language/:box/:key{[\\w-]+\\.ics}', (c) => answer(c, c.req.param('box')));

  async function answer(
    c: {
      var: Environment['Variables'];
      req: { param(): Record<string, string> };
      body(text: string, status: 200, headers: Record<string, string>): Response;
    },
    box: string | null,
  ): Promise<Response> {
    const { language: given, key } = c.req.param();
    const language = known(given);
    const asked = key?.replace(/\.ics$/, '') ?? '';
    if (language === null || !same(asked, c.var.accounts.calendarKey(nameOf({ language, box }))))
      throw new HttpRefused(404, { code: 'http-unknown-calendar', with: {} });
    const place = c.var.accounts.sign('calendar entries');
    const feed = await calendarFeed(c.var.group, { box, language, place });
    return c.body(feed, 200, {
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Language': language,
    });
  }
}
