import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepEarlier, readEarlier, withdrawEarlier } from '../../src/earlier/index.js';
import { openOwnGroup } from '../../src/group/index.js';
import { isRefusal, sayRefusal } from '../../src/words/refusals.js';
import { workbookOf } from '../http/archives.js';
import { ask, scratchFolder, service } from '../http/service.js';

const group = await openOwnGroup(join(scratchFolder(), 'season'));
afterAll(() => group.close());

const TABLE =
  'Saison;Rivière;Incubateur;Nb œufs;Vides;Morts;Mis à l’eau\n2023;Gué;1;1000;870;20;2023-11-04\n2024;Gué;2;500;;;\n';

test('a French table with semicolons is understood, previewed, kept once, and taken out again', async () => {
  const table = readEarlier(TABLE);
  expect(table.columns).toMatchObject({ season: 'Saison', site: 'Rivière', eggs: 'Nb œufs', lot: null });
  expect(table.boxes[0]).toEqual({
    season: '2023',
    site: 'Gué',
    box: '1',
    planted: '2023-11-04',
    eggs: '1000',
    empty: '870',
    dead: '20',
  });
  const id = await keepEarlier(group, 'passé.csv', table, 'tests');
  expect((await group.season()).earlier[0]).toMatchObject({
    file: 'passé.csv',
    boxes: [{ eggs: 1000 }, { eggs: 500 }],
  });
  await expect(keepEarlier(group, 'encore.csv', table, 'tests')).rejects.toMatchObject({
    remark: { code: 'earlier-twice' },
  });
  await withdrawEarlier(group, id, 'tests');
  expect((await group.season()).earlier).toEqual([]);
  await expect(withdrawEarlier(group, id, 'tests')).rejects.toMatchObject({
    remark: { code: 'earlier-unknown' },
  });
});

test('columns that do not match are matched by the user', () => {
  const text = 'When,Where,How many\n2023,Ford,1000\n';
  expect(() => readEarlier(text)).toThrow(
    expect.objectContaining({ remark: expect.objectContaining({ code: 'earlier-columns' }) }),
  );
  const { boxes } = readEarlier(text, { season: 'When', site: 'where', eggs: 'How many' });
  expect(boxes).toEqual([{ season: '2023', site: 'Ford', eggs: '1000' }]);
});

describe('a workbook on the page of past seasons', () => {
  const form = (book: Uint8Array<ArrayBuffer>) => {
    const body = new FormData();
    body.set('csrf', csrf);
    body.set('table', new File([book], 'passé.xlsx'));
    return body;
  };
  let csrf = '';
  let at = '';
  const headers = { Cookie: 'underice_visit=0123456789abcdef', 'Sec-Fetch-Site': 'same-origin' };
  const post = (body: FormData) => ask(at, '/autumn/earlier', { method: 'POST', body, headers });
  beforeAll(async () => {
    at = (await service(join(scratchFolder(), 'empty'))).address;
    const { text } = await ask(at, '/autumn/earlier', { headers });
    csrf = /name="csrf" value="([^"]+)"/.exec(text)?.[1] ?? '';
  });

  test('whose columns do not match is refused in a sentence that names them, and nothing is kept', async () => {
    const said = await post(
      form(
        workbookOf({
          Sheet1: [
            ['When', 'How many'],
            ['2023', 1000],
          ],
        }),
      ),
    );
    expect(said.status).toBe(422);
    expect(said.text).toContain('When');
    expect(said.text).toContain('class="refusal"');
    expect((await ask(at, '/api/v1/season')).body.earlier ?? []).toEqual([]);
  });

  test('whose columns match is previewed first, then kept', async () => {
    const said = await post(
      form(
        workbookOf({
          Sheet1: [
            ['Saison', 'Site', 'Œufs'],
            ['2023', 'Gué', 1000],
          ],
        }),
      ),
    );
    expect(said.status).toBe(200);
    const file = /name="file" value="([^"]+)"/.exec(said.text)?.[1] ?? '';
    const take = new FormData();
    for (const [name, value] of Object.entries({ csrf, file, do: 'take' })) take.set(name, value);
    expect((await post(take)).status).toBe(303);
    expect((await ask(at, '/api/v1/season')).text).toContain('"eggs":1000');
  });
});

test.each([
  ['season,box,eggs\n2023,1,13.000\n', /Line 2, eggs: “13.000”/],
  ['season,box,eggs\n2023,1,"13 000"\n', /13000/],
  ['season,box,eggs\n2023,1,-4\n', /whole number/],
  ['season,box,planted\n2023,1,04/11/2023\n', /not a date/],
  ['hello', /not a table/],
  ['\u0000\u0001', /not a table/],
])('%j is refused whole, with the place', (text, sentence) => {
  const refused = () => readEarlier(text);
  expect(refused).toThrow();
  try {
    refused();
  } catch (error) {
    expect(isRefusal(error) ? sayRefusal('en', error) : error).toMatch(sentence);
  }
});
