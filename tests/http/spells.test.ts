import { beforeAll, describe, expect, it } from 'vitest';
import { underice } from '../cli/terminal.js';
import {
  ask,
  cookiesOf,
  json,
  sampleFolder,
  send,
  service,
  signIn,
  threeAccounts,
  visitor,
} from './service.js';

/*
 * The spells of the invented winter as its people see them on 20 June: the night the hatchery pump failed, the heat at
 * the end of May, and the logger that frazil carried into slush, tied to box B1.
 */
const JUNE = Date.parse('2026-06-20T00:00Z') / 86_400_000;
const HEAT = 'too-warm-braid-2026-05-31';
const PUMP = 'too-warm-tank-2025-11-07';
const SLUSH = 'exposure-B1-2025-12-05';

let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder, {}, JUNE)).address;
}, 120_000);

const page = async (path: string) => (await ask(at, path, { headers: { 'Accept-Language': 'en' } })).text;

/** Posts a form of the page of spells as a browser that has just opened it. */
async function post(path: string, fields: Record<string, string>) {
  const opened = await ask(at, '/spells');
  const csrf = /name="csrf" value="([^"]+)"/.exec(opened.text)?.[1] ?? '';
  const body = new URLSearchParams({ csrf, ...fields }).toString();
  const headers = { Cookie: cookiesOf(opened), 'Sec-Fetch-Site': 'same-origin' };
  return ask(at, path, send('POST', 'application/x-www-form-urlencoded', body, headers));
}

const spells = async (query = '') => {
  const { text } = await ask(at, `/api/v1/spells${query}`);
  const { spells: all }: { spells: { id: string; kind: string; state: string }[] } = JSON.parse(text);
  return all;
};

describe('the sample season', () => {
  it('has the failed pump and the heat as lethal, and the logger in slush as one possible exposure, no temperature spell', async () => {
    expect((await spells()).map(({ id, state }) => [id, state])).toEqual([
      [SLUSH, 'open'],
      [HEAT, 'past'],
      [PUMP, 'past'],
    ]);
    const slush = Date.parse('2025-12-05T20:00-04:00');
    const those = (await spells()).filter(({ kind }) => kind !== 'exposure');
    for (const { id } of those)
      expect(Math.abs(Date.parse(id.slice(-10)) - slush)).toBeGreaterThan(20 * 86_400_000);
  });

  it('shows them on the season page and on the box’s, with the way to the explanation', async () => {
    for (const path of ['/', '/boxes/B1']) {
      const text = await page(path);
      for (const id of [SLUSH, HEAT, PUMP]) expect(text).toContain(`href="/spells#${id}"`);
    }
    expect(await page('/boxes/U1')).not.toContain(`href="/spells#${PUMP}"`);
  });

  it('explains each with its limit, its source and the cautions, in both languages', async () => {
    const text = await page('/spells');
    expect(text).toContain('above 22\u00a0°C for 6\u00a0h or more');
    expect(text).toContain('Elliott &amp; Elliott 2010');
    expect(text).toContain('cannot exclude a frozen box');
    expect(text).toContain('Never cross ice');
    const french = await ask(at, '/spells', { headers: { 'Accept-Language': 'fr' } });
    expect(french.text).toContain('au-dessus de 22');
    expect(french.text).toContain('alevins vésiculés');
  });
});

describe('the command line through the service', () => {
  it('prints the contract', async () => {
    const said = await underice(['spells', '--box', 'A1', '--json', '--data', folder]);
    expect(JSON.parse(said.out)).toEqual({
      spells: [
        {
          id: PUMP,
          boxes: ['F2', 'B1', 'A1'],
          kind: 'too-warm',
          severity: 'lethal',
          stages: ['fertilised'],
          from: '2025-11-08T02:12:45Z',
          to: '2025-11-08T11:41:10Z',
          peak_c: 20.06,
          hours: 9.5,
          certainty: 'measured',
          state: 'past',
        },
      ],
    });
    const later = await underice(['spells', '--since', '2026-05-01', '--json', '--data', folder]);
    expect(JSON.parse(later.out).spells).toMatchObject([{ id: HEAT }]);
    expect((await underice(['spells', '--box', 'Z9', '--data', folder])).status).toBe(2);
  });
});

describe('CSV and the description', () => {
  it('one row a spell and lot of a box', async () => {
    const { text, headers } = await ask(at, '/api/v1/spells.csv');
    expect(headers.get('Content-Type')).toContain('text/csv');
    const rows = text.trim().split('\r\n');
    expect(rows[0]).toMatch(/^id,box,lot,eggs,kind,severity,stage,from,to,peak_c,hours/);
    expect(rows.filter((row) => row.startsWith(PUMP))).toHaveLength(3);
  });
  it('is described', async () => {
    const { text } = await ask(at, '/api/v1/openapi.json');
    const { paths }: { paths: Record<string, unknown> } = JSON.parse(text);
    expect(Object.keys(paths)).toEqual(
      expect.arrayContaining([
        '/spells',
        '/spells.csv',
        '/spells/{spell}/acknowledge',
        '/spells/{spell}/settle',
      ]),
    );
  });
});

describe('what a person says', () => {
  it('a form acknowledges with a note, once for all', async () => {
    const said = await post(`/spells/${PUMP}/acknowledge`, {
      note: 'Told the biologist <b>at once</b>',
    });
    expect([said.status, said.headers.get('Location')]).toEqual([303, `/spells#${PUMP}`]);
    const text = await page('/spells');
    expect(text).toContain('Told the biologist &lt;b&gt;at once');
    expect(text).not.toContain(`action="/spells/${PUMP}/acknowledge"`);
  });
  it('settles the exposure through the API; what was measured cannot be settled, nobody’s spell is not found', async () => {
    const settled = await ask(
      at,
      `/api/v1/spells/${SLUSH}/settle`,
      json('POST', { how: 'did-not-happen', note: 'Float only' }),
    );
    expect(settled.body).toMatchObject({ state: 'withdrawn', settled: { how: 'did-not-happen' } });
    expect((await spells()).find(({ id }) => id === SLUSH)?.state).toBe('withdrawn');
    const heat = await ask(at, `/api/v1/spells/${HEAT}/settle`, json('POST', { how: 'happened' }));
    expect([heat.status, heat.body.code]).toEqual([422, 'spell-not-an-exposure']);
    const none = await ask(at, '/api/v1/spells/none/acknowledge', json('POST', {}));
    expect([none.status, none.body.code]).toEqual([404, 'unknown-spell']);
  });
});

describe('roles', () => {
  it('a reader looks and has no forms; the crew may acknowledge', async () => {
    const own = await sampleFolder();
    await threeAccounts(own);
    const place = (await service(own, {}, JUNE)).address;
    const session = async (name: string) => visitor(place, own, await signIn(place, own, name));
    const reader = await session('Reade');
    expect((await reader.get('/spells')).text).not.toContain('/acknowledge"');
    expect((await reader.post(`/spells/${HEAT}/acknowledge`, { note: '' })).status).toBe(403);
    const crew = await session('Crewe');
    expect((await crew.post(`/spells/${HEAT}/acknowledge`, { note: 'seen' })).status).toBe(303);
    expect((await reader.get('/spells')).text).toContain('Seen by Crewe');
  }, 60_000);
});
