import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { renderSeason, seasonFrom } from '../../src/season/index.js';
import { ask, scratchFolder, service } from './service.js';

const HOUR = 3_600_000;
const BEGIN = Date.UTC(2025, 10, 4);

/** Forty days of hours; in the last six the voltage falls and every fifth reading is missing. */
function download(): string {
  const rows = Array.from({ length: 24 * 40 }, (_, i) => ({ i, late: i - 24 * 34 }))
    .filter(({ i, late }) => late < 0 || i % 5 !== 0)
    .map(
      ({ i, late }) =>
        `${new Date(BEGIN + i * HOUR).toISOString()},${(3 + Math.sin(i / 3.8)).toFixed(2)},${(late < 0 ? 3.6 : 3.6 - late / 200).toFixed(2)}`,
    );
  return `Time,Temp (°C),Batt (V)\n${rows.join('\n')}\n`;
}

test('what a file says of the battery stands with the load, in the answers, and in the check of its station', async () => {
  const place = scratchFolder();
  const folder = join(place, 'season');
  const group = await openOwnGroup(folder);
  const season = { group: { name: 'Brumelore', zone: 'America/Halifax' }, stations: [{ id: 'pool' }] };
  await group.applySeason(renderSeason(seasonFrom(season, 'test')), 'test', 'tests');
  const path = join(place, 'pool.csv');
  writeFileSync(path, download());
  const [loaded] = await group.load({
    files: [{ path }],
    asked: { station: 'pool' },
    createStations: false,
    dryRun: false,
    who: 'tests',
    progress: null,
  });
  expect(loaded).toMatchObject({ load: 1, battery: [{ station: 'pool', unit: 'V', last: { value: 2.89 } }] });
  const [found] = (await group.findings('pool')).filter(({ kind }) => kind === 'battery');
  expect(found).toMatchObject({ flag: 3, figures: { last: 2.89, highest: 3.6, percent: 0 } });
  await group.close();

  const { address } = await service(folder, {}, null);
  const shown = async (language: string) =>
    (await ask(address, '/stations/pool', { headers: { 'Accept-Language': language } })).text;
  const page = await shown('en');
  // The last reading was at 23:00 UTC, 19:00 in Halifax.
  expect(page).toContain('Battery at pool: last 2.89 V (13 Dec 2025, 19:00), lowest 2.89 V');
  expect(page).toMatch(/The battery was last at 2\.89 V, its highest 3\.60 V; below 85% of that is low\./);
  const french = (await shown('fr')).replaceAll('\u00a0', ' ');
  expect(french).toContain('Pile à pool : 2,89 V à la fin (13 déc. 2025, 19 h)');
  expect(french).toContain('la pile s’épuise peut-être');
  const { body } = await ask(address, '/api/v1/loads');
  expect(body).toMatchObject({
    loads: [{ battery: [{ station: 'pool', column: 'Batt (V)', last: { at: '2025-12-13T23:00:00Z' } }] }],
  });
  expect((await ask(address, '/api/v1/loads.csv')).text).toContain('pool 2.89 V');
}, 60_000);
