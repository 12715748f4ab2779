import { beforeAll, describe, expect, it } from 'vitest';
import { ask, json, send, threeSignedIn, visitor } from './service.js';

/* Layouts of downloads through the API and the pages' forms, by role. */
let at = '';
let folder = '';
let sessions: Readonly<Record<string, string>> = {};
beforeAll(async () => {
  ({ at, folder, sessions } = await threeSignedIn());
}, 120_000);

/** Two readings whose day and month can be either way round, with neither unit nor zone. */
const year = (date: string) => `Date;Heure;Valeur\n${date};00:00;4,1\n${date};12:00;4,2\n`;
const answered = { station: 'ford', zone: 'UTC-04:00', unit: 'C', dateOrder: 'dmy' } as const;

const as = (name: string) => ({
  Cookie: `underice_session=${sessions[name]}`,
  'Sec-Fetch-Site': 'same-origin',
  'X-Underice': '1',
});

async function waiting(name: string, file: string, text: string): Promise<string> {
  const said = await ask(
    at,
    `/api/v1/files/${file}`,
    send('PUT', 'application/octet-stream', text, as(name)),
  );
  const { files } = said.body;
  const [first] = Array.isArray(files) ? files : [];
  expect(first, said.text).toBeDefined();
  return first.file;
}

const load = async (name: string, file: string, more: object) =>
  ask(at, '/api/v1/loads', json('POST', { files: [{ file }], ...more }, as(name)));
const kept = async () => (await ask(at, '/api/v1/layouts', { headers: as('Coral') })).body.layouts;

describe('keepLayout of POST /api/v1/loads', () => {
  it('is a coordinator’s: a crew member is refused, and nothing is loaded', async () => {
    const file = await waiting('Crewe', 'crew.csv', year('03/04/24'));
    const said = await load('Crewe', file, { ...answered, keepLayout: 'Ford' });
    expect(said.status, said.text).toBe(403);
    expect(await kept()).toEqual([]);
    expect((await load('Crewe', file, answered)).status).toBe(200);
  });

  it('goes with one file at a time', async () => {
    const files = [
      { file: await waiting('Coral', 'one.csv', year('03/04/23')) },
      { file: await waiting('Coral', 'two.csv', year('03/05/23')) },
    ];
    const said = await ask(
      at,
      '/api/v1/loads',
      json('POST', { files, ...answered, keepLayout: 'Ford' }, as('Coral')),
    );
    expect(said.status).toBe(422);
    expect(said.body.detail).toContain('2 were sent');
    expect(await kept()).toEqual([]);
  });

  it('keeps nothing on a dry run, then keeps it with the load, and next year asks nothing', async () => {
    const file = await waiting('Coral', 'spring.csv', year('03/04/25'));
    const asked = { ...answered, keepLayout: '  Ford ' };
    expect((await load('Coral', file, { ...asked, dryRun: true })).status).toBe(200);
    expect(await kept()).toEqual([]);
    expect((await load('Coral', file, asked)).status).toBe(200);
    expect(await kept()).toEqual([
      {
        name: 'Ford',
        match: { header: ['Date', 'Heure', 'Valeur'] },
        settled: {
          delimiter: ';',
          decimal: ',',
          dateOrder: 'dmy',
          time: ['Date', 'Heure'],
          unit: 'C',
          zone: 'UTC-04:00',
        },
      },
    ]);
    const next = await waiting('Coral', 'next.csv', year('05/06/25'));
    const { body } = await load('Coral', next, { station: 'ford', dryRun: true });
    expect(body.files).toMatchObject([{ refused: null, stations: [{ first: '2025-06-05T04:00:00Z' }] }]);
  });
});

describe('the page of layouts', () => {
  it('says in words what each settles, in both languages', async () => {
    const page = async (language: string) =>
      (
        await ask(at, '/downloads/layouts', {
          headers: { ...as('Reade'), Accept: 'text/html', 'Accept-Language': language },
        })
      ).text;
    const english = await page('en');
    expect(english).toContain('One layout is kept: files it matches ask nothing.');
    expect(english).toContain('Reads files with the columns “Date”, “Heure”, “Valeur”.');
    expect(english).toContain('<dt>dates</dt><dd>day, month, year</dd>');
    expect(english).toContain('<dt>clock</dt><dd>UTC-04:00</dd>');
    const french = await page('fr');
    expect(french).toContain('<dt>dates</dt><dd>jour, mois, année</dd>');
    expect(french).toContain('«\u00a0Date\u00a0», «\u00a0Heure\u00a0»');
    expect(french).not.toMatch(/[^\u00a0]»|«[^\u00a0]/);
  });

  it('lets only a coordinator remove one', async () => {
    const remove = (name: string, layout: string) =>
      visitor(at, folder, sessions[name] ?? '').post('/downloads/layouts/remove', { name: layout });
    expect((await remove('Crewe', 'Ford')).status).toBe(403);
    expect((await remove('Reade', 'Ford')).status).toBe(403);
    const unknown = await remove('Coral', 'Nowhere');
    expect(unknown.status).toBe(409);
    expect(unknown.text).toContain('role="alert"');
    expect(await kept()).toHaveLength(1);
    expect((await remove('Coral', 'ford')).status).toBe(303);
    expect(await kept()).toEqual([]);
  });

  it('is not filled by a crew member who accepts a download with a name for one', async () => {
    const file = await waiting('Crewe', 'late.csv', year('07/08/24'));
    const said = await visitor(at, folder, sessions.Crewe ?? '').post(`/downloads/${file}/accept`, {
      ...answered,
      layout: 'Crew’s own',
    });
    expect(said.status).toBe(200);
    expect(said.text).not.toContain('Crew’s own');
    expect(await kept()).toEqual([]);
  });
});
