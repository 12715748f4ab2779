import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { keepEarlier, readEarlier, withdrawEarlier } from '../../src/earlier/index.js';
import { openOwnGroup } from '../../src/group/index.js';
import { isRefusal, sayRefusal } from '../../src/words/refusals.js';
import { scratchFolder } from '../http/service.js';

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
