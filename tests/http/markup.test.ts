import { describe, expect, it } from 'vitest';
import { ask, json, sampleFolder, service } from './service.js';

const MARKUP = '<script>boom()</script><img src=x onerror=boom()>"\'&';
/** Fields of the season that hold whatever somebody writes. */
const FREE = new Set(
  'name place note access consent who reason find bed risk part bankMark tiedTo authority counter'.split(' '),
);

let written = 0;
function withMarkup(value: unknown, key: string): unknown {
  if (typeof value === 'string' && FREE.has(key)) {
    written++;
    return `${MARKUP}${written}`;
  }
  if (Array.isArray(value)) return value.map((one: unknown) => withMarkup(one, key));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, withMarkup(one, name)]));
}

describe('markup in every free field of the season', () => {
  it('is text on every page, and opens nothing', async () => {
    const at = (await service(await sampleFolder())).address;
    const season = await ask(at, '/api/v1/season');
    const tag = season.headers.get('ETag') ?? '';
    const applied = await ask(
      at,
      '/api/v1/season',
      json('PUT', withMarkup(season.body, ''), { 'If-Match': tag }),
    );
    expect(applied.text).toContain('"applied":true');
    expect(written).toBeGreaterThan(20);
    let shown = 0;
    for (const path of [
      '/',
      '/boxes/U1',
      '/boxes/U1/filled',
      '/stations',
      '/stations/upper',
      '/downloads',
      '/tables',
      '/editing',
      '/editing/sites/0',
      '/editing/stations/0',
      '/editing/lots/0',
      '/editing/boxes/0',
      '/editing/file',
      '/editing/history',
      '/calendars',
      '/keeping?check=now',
      '/autumn',
      '/autumn/earlier',
      '/autumn/sheet',
      '/autumn/grid',
      '/lifting',
      '/tally',
      '/spells',
      '/survival',
      '/report',
      '/report/funder',
      '/messages',
      '/first-visit',
      '/account',
    ]) {
      const { status, text } = await ask(at, path, { headers: { Accept: 'text/html' } });
      expect(status, path).toBe(200);
      expect(text, path).not.toMatch(/<script>boom|<img src=x/);
      if (text.includes('&lt;script&gt;boom')) shown++;
    }
    expect(shown).toBeGreaterThan(5);
  }, 60_000);
});
