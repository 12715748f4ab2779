import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import type { Environment } from '../../src/http/environment.js';
import { keepPages } from '../../src/http/middleware/kept-pages.js';
import type { Role } from '../../src/http/roles.js';

/* One page that counts how often it was drawn, and shows what must never be somebody else's. */
function service() {
  const coordinator: Role = 'coordinator';
  const stands: { revision: number; drawn: number; name: string; role: Role; today: number } = {
    revision: 0,
    drawn: 0,
    name: 'Coral',
    role: coordinator,
    today: 1,
  };
  const app = new Hono<Environment>();
  let asked = 0;
  app.use(async (c, next) => {
    asked++;
    c.set('csrf', `csrf-${asked}`);
    c.set('nonce', `nonce-${asked}`);
    c.set('language', 'en');
    c.set('today', stands.today);
    c.set('person', { name: stands.name, role: stands.role, by: 'session' });
    await next();
  });
  app.use(keepPages(() => stands.revision));
  const draw = (path: string) =>
    app.get(path, (c) => c.html(`${++stands.drawn} ${c.var.csrf} ${c.var.nonce} ${c.var.person.name}`));
  for (const path of ['/', '/boxes/:box', '/downloads']) draw(path);
  app.get('/boxes', (c) => c.html('refused', 404));
  return { stands, read: async (path: string) => (await app.request(path)).text() };
}

describe('a page', () => {
  it('is drawn once, with the nonce and csrf field of each who reads it', async () => {
    const { read } = service();
    expect(await read('/')).toBe('1 csrf-1 nonce-1 Coral');
    expect(await read('/')).toBe('1 csrf-2 nonce-2 Coral');
  });

  it('is drawn again for another person, role, address or day', async () => {
    const { stands, read } = service();
    await read('/');
    stands.name = 'Reade';
    expect(await read('/')).toBe('2 csrf-2 nonce-2 Reade');
    stands.role = 'reader';
    expect(await read('/')).toMatch(/^3 /);
    expect(await read('/?as-of=2026-02-15')).toMatch(/^4 /);
    expect(await read('/boxes/U1')).toMatch(/^5 /);
    stands.today = 2;
    expect(await read('/boxes/U1')).toMatch(/^6 /);
  });

  it('is drawn again once something was written', async () => {
    const { stands, read } = service();
    await read('/');
    stands.revision++;
    expect(await read('/')).toMatch(/^2 /);
  });

  it('asked for by many at once is drawn once', async () => {
    const { read, stands } = service();
    const pages = await Promise.all(Array.from({ length: 8 }, () => read('/')));
    expect(stands.drawn).toBe(1);
    expect(new Set(pages).size).toBe(8);
  });

  it('of waiting files, or of a refusal, is drawn each time', async () => {
    const { read } = service();
    await read('/downloads');
    expect(await read('/downloads')).toBe('2 csrf-2 nonce-2 Coral');
    expect(await read('/boxes')).toBe('refused');
  });
});
