import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { siteCards } from '../../src/autumn/index.js';
import { openOwnGroup } from '../../src/group/index.js';
import { renderSeason, seasonFrom } from '../../src/season/index.js';
import { underice } from '../cli/terminal.js';
import { ask, scratchFolder, service } from '../http/service.js';

/** A site whose past stands in a table by name and by short name, and another without any. */
const written = {
  group: { name: 'Brumelore', zone: 'UTC-04:00' },
  sites: [
    {
      id: 'gue',
      name: 'Le Gué',
      access: 'Logging road',
      consent: 'By letter',
      velocityMs: 0.4,
      iceRisk: 'high',
    },
    { id: 'pool' },
  ],
  lots: [{ id: 'A', fertilised: '2025-11-04 10:00', eggs: 1200, table: 'atlantic-salmon' }],
  boxes: [{ id: 'G1', site: 'gue', tiedTo: 'the cedar', bankMark: 'red paint' }],
  earlier: [
    {
      id: 'abc',
      file: 'before.csv',
      boxes: [
        { season: '2022', site: 'le gué', eggs: 1000, empty: 700 },
        { season: '2022', site: 'GUE', eggs: 1000, empty: 800 },
        { season: '2023', site: 'gue', eggs: 500, empty: 400 },
        { season: '2024', site: 'gue', eggs: 500 },
        { season: '2023', site: 'elsewhere', eggs: 500, empty: 1 },
      ],
    },
  ],
};
const season = seasonFrom(written, 'test');

describe('the card of a site', () => {
  test('stands beside what past seasons showed there, newest first; a closed season is told once', () => {
    const closed = { season: '2023', site: 'gue', boxes: 4, out: 0.75, thermalUnits: 410, atFreezing: 96 };
    const [gue, pool] = siteCards(season, [closed, { ...closed, site: 'pool', season: '2021' }]);
    expect(gue?.past.map(({ season: name, source, boxes }) => [name, source, boxes])).toEqual([
      ['2024', 'table', 1],
      ['2023', 'closed', 4],
      ['2022', 'table', 2],
    ]);
    // 1500 of 2000 in two boxes: 75 %, and an interval far wider than the counts alone would give.
    const shared = gue?.past[2];
    expect(shared?.out).toBeCloseTo(0.75, 10);
    expect((shared?.to ?? 0) - (shared?.from ?? 0)).toBeGreaterThan(0.4);
    expect(gue?.past[0]?.out).toBeNull();
    expect(gue?.boxes.map(({ id }) => id)).toEqual(['G1']);
    expect(pool?.past).toMatchObject([{ season: '2021', source: 'closed' }]);
  });

  describe('is the same on the page, by the API and on the command line', () => {
    let at = '';
    const folder = join(scratchFolder(), 'season');
    beforeAll(async () => {
      const group = await openOwnGroup(folder);
      await group.applySeason(renderSeason(season), 'test', 'tests');
      await group.close();
      at = (await service(folder)).address;
    }, 60_000);
    const visiting = { headers: { Cookie: 'underice_visit=0123456789abcdef' } };

    test('page', async () => {
      expect((await ask(at, '/autumn', visiting)).text).toContain('href="/autumn/sites/gue"');
      const { text } = await ask(at, '/autumn/sites/gue', visiting);
      for (const part of [
        'Logging road',
        'By letter',
        '0.40\u00a0m/s',
        'high',
        'the cedar',
        'red paint',
        '75%',
      ])
        expect(text).toContain(part);
      expect(text).toContain('In 2 past seasons 75% to 80% of the eggs left their boxes');
      expect((await ask(at, '/autumn/sites/gue?lang=fr', visiting)).text).toContain('Fiche du site');
      expect((await ask(at, '/autumn/sites/nowhere', visiting)).status).toBe(404);
    });

    test('API and CSV', async () => {
      const { body } = await ask(at, '/api/v1/sites');
      expect(body.sites).toMatchObject([
        { site: { id: 'gue' }, past: [{}, { out: 0.8 }, { out: 0.75 }] },
        {},
      ]);
      expect((await ask(at, '/api/v1/sites.csv')).text.split('\n')).toHaveLength(5);
    });

    test('command line, in both languages', async () => {
      const said = await underice(['sites', 'gue', '--data', folder, '--lang', 'fr']);
      expect(said.out).toContain('Dans 2 saisons passées');
      const none = await underice(['sites', 'gu', '--data', folder]);
      expect(none).toMatchObject({ status: 2 });
      expect(none.err).toContain('gue');
    });
  });
});
