import { beforeAll, describe, expect, it } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { renderSeason, seasonDocument, seasonFrom } from '../../src/season/index.js';
import { groupStock } from '../../src/stock/index.js';
import { ask, sampleFolder, service } from '../http/service.js';

/* Eggs of two lots were looked at after every logger had been read: what they say of the published table. */
const JUNE = Date.parse('2026-06-20T00:00Z') / 86_400_000;
const SEEN = '2026-06-18';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
}, 60_000);

describe('what a group’s own lots show', () => {
  it('is nothing before eggs were counted; then the lots beside the table, shrunk, on every face', async () => {
    const group = await openOwnGroup(folder, { standingAt: JUNE });
    expect(await groupStock(group)).toEqual([]);
    const day = Date.parse(`${SEEN}T00:00Z`) / 86_400_000;
    const { boxes } = await group.forecast({ box: 'U1', asOf: day });
    const [lot] = boxes[0]?.lots ?? [];
    const progress = lot?.progress.hatch ?? Number.NaN;
    const document = seasonDocument(await group.season());
    // Half of the eggs counted had come to it: the median egg stands at exactly 1, whatever the spread between eggs.
    const observed = [
      { date: SEEN, box: 'U1', stage: 'hatch', seen: 20, of: 40 },
      { date: SEEN, box: 'U2', stage: 'hatch' },
    ];
    await group.applySeason(renderSeason(seasonFrom({ ...document, observed }, 'x')), 'x', 'tests');
    const [stock, ...others] = await groupStock(group);
    expect(others).toEqual([]);
    expect(stock?.stock.lots).toBe(1);
    expect(stock?.observed).toMatchObject([{ lot: 'A', stage: 'hatch', seen: 20, of: 40 }]);
    expect(stock?.stock.shown).toBeCloseTo(progress - 1, 2);
    expect(Math.abs(stock?.stock.adjustment ?? 9)).toBeLessThan(Math.abs(stock?.stock.shown ?? 0));
    await group.close();

    const at = (await service(folder, {}, JUNE)).address;
    const tables = await ask(at, '/tables');
    const said =
      /Atlantic salmon \(Crisp\): one lot of yours needed [\d.]+% more than it says\. Pulled to the published table/;
    expect(tables.text).toMatch(said);
    expect(tables.text).toMatch(/Days to half hatched at a constant temperature/);
    expect((await ask(at, '/boxes/U1')).text).toMatch(said);
    const french = await ask(at, '/tables', { headers: { 'Accept-Language': 'fr' } });
    expect(french.text).toMatch(/il a fallu à un de vos lots [\d,]+\u00a0% de plus que ce que dit la table/);
  }, 60_000);
});
