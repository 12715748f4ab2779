import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { ask, json, sampleFolder, service, signIn, threeAccounts, visitor } from './service.js';

let folder: string;
let at: string;

const finding = z.object({
  id: z.string(),
  check: z.string(),
  flag: z.number(),
  explained: z.string(),
  source: z.string(),
  offer: z.object({ quantity: z.string(), add: z.number() }).nullable(),
  ruling: z.object({ verdict: z.string(), by: z.string(), reason: z.string() }).nullable(),
});
const all = z.object({ findings: z.array(finding) });

beforeAll(async () => {
  folder = await sampleFolder();
  await threeAccounts(folder);
  at = (await service(folder)).address;
});

const as = async (name: string) => {
  const session = await signIn(at, folder, name);
  return {
    ...visitor(at, folder, session),
    headers: { Cookie: `underice_session=${session}`, 'Sec-Fetch-Site': 'same-origin' },
  };
};

describe('findings through the service', () => {
  test('the page explains the slush with its limit and source, and only a coordinator gets the forms', async () => {
    const coral = await as('Coral');
    const page = await coral.get('/stations/braid');
    expect(page.status).toBe(200);
    expect(page.text).toContain('It probably lay in ice or slush');
    expect(page.text).toContain('Osterkamp et al. 1983');
    expect(page.text).toMatch(/action="\/stations\/braid\/findings\/frozen-in\.[a-z0-9]+\/ruling"/);
    const reade = await as('Reade');
    const read = await reade.get('/stations/braid');
    expect(read.text).toContain('It probably lay in ice or slush');
    expect(read.text).not.toContain('/ruling"');
  });

  test('a form overrules with a reason, the API tells it, and withdraws it', async () => {
    const coral = await as('Coral');
    const list = async () =>
      all.parse((await ask(at, '/api/v1/stations/braid/findings', { headers: coral.headers })).body).findings;
    const slush = (await list()).find(({ check }) => check === 'frozen-in');
    const path = `/stations/braid/findings/${slush?.id}`;
    const crewe = await as('Crewe');
    expect((await crewe.post(`${path}/ruling`, { verdict: 'good', reason: 'no' })).status).toBe(403);
    const kept = await coral.post(`${path}/ruling`, { verdict: 'good', reason: 'It lay <i>deep</i>' });
    expect(kept.status).toBe(303);
    expect((await list()).find(({ check }) => check === 'frozen-in')?.ruling).toMatchObject({
      verdict: 'good',
      by: 'Coral',
      reason: 'It lay <i>deep</i>',
    });
    expect((await coral.get('/stations/braid')).text).toContain('It lay &lt;i&gt;deep&lt;/i&gt;');
    expect((await coral.post(`${path}/ruling`, { verdict: 'perhaps', reason: 'x' })).status).toBe(422);
    const gone = await ask(at, `/api/v1${path}/ruling`, { method: 'DELETE', headers: coral.headers });
    expect(gone.status).toBe(200);
    expect(all.parse(gone.body).findings.every(({ ruling }) => ruling === null)).toBe(true);
  });

  test('a correction is accepted by the API; what is not there is 404', async () => {
    const coral = await as('Coral');
    const found = all.parse(
      (await ask(at, '/api/v1/stations/braid/findings', { headers: coral.headers })).body,
    ).findings;
    const bias = found.find(({ check }) => check === 'plateau-bias');
    expect(bias?.offer?.add).toBeCloseTo(-0.06, 1);
    const accept = (id: string) =>
      ask(at, `/api/v1/stations/braid/findings/${id}/accept`, json('POST', {}, coral.headers));
    const done = await accept(bias?.id ?? '');
    expect(done.status).toBe(200);
    expect(all.parse(done.body).findings.some(({ check }) => check === 'plateau-bias')).toBe(false);
    expect((await coral.get('/stations/braid')).text).toContain('accepted by Coral');
    expect(await accept('spike.abc')).toMatchObject({ status: 404, body: { code: 'quality-no-finding' } });
    expect((await ask(at, '/api/v1/stations/nowhere/findings', { headers: coral.headers })).status).toBe(404);
  });
});
