import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Group, openOwnGroup } from '../../src/group/index.js';
import { ThreadThinker } from '../../src/group/thinker.js';
import { acceptCorrection } from '../../src/quality/index.js';
import { restoreFolder } from '../../src/store/index.js';
import { copySampleSeason } from '../http/sample-copy.js';
import { scratchFolder } from '../http/service.js';

/*
 * A running service holds days, readings, waters and boxes until a write touches them, and its forecasting thread is sent
 * only what it does not hold. The oracle: a group opened anew on a copy of the folder, which holds nothing.
 */
const NOW = Date.UTC(2026, 5, 20);
const HOUR = 3_600_000;

async function said(group: Group) {
  const days: Record<string, unknown> = {};
  for (const { station } of await group.stations()) {
    if ((await group.season()).stations.some(({ id }) => id === station))
      days[station] = await group.days({ station, from: null, to: null });
  }
  // Spells first: their judging lets the checks catch up, on which days and forecast rest.
  const spells = await group.spells({ box: null, since: null });
  return {
    spells: spells.map(({ found: _, changed: __, ...spell }) => spell),
    forecast: await group.forecast({ box: null, asOf: null }),
    days,
  };
}

test('after loads, withdrawals, corrections and season edits a group says what one opened anew says', async () => {
  const place = scratchFolder();
  const folder = join(place, 'season');
  await copySampleSeason(folder);
  const group = await openOwnGroup(folder, { now: () => NOW, thinker: new ThreadThinker() });
  let copies = 0;
  const asAnew = async () => {
    // Copied before the spells are asked for: both judge them then.
    const backup = join(place, `backup-${copies}`);
    await group.backup(backup);
    const copy = join(place, `copy-${copies++}`);
    await restoreFolder(backup, copy);
    const anew = await openOwnGroup(copy, { now: () => NOW });
    try {
      expect(await said(group)).toEqual(await said(anew));
    } finally {
      await anew.close();
    }
  };
  const load = async (station: string, from: number, hours: number, celsius: (hour: number) => number) => {
    const path = join(place, `${station}-${from}.csv`);
    const lines = ['Date Time UTC,Temperature (°C)'];
    for (let h = 0; h < hours; h++) {
      const at = new Date(from + h * HOUR).toISOString().slice(0, 19).replace('T', ' ');
      lines.push(`${at},${celsius(h).toFixed(2)}`);
    }
    writeFileSync(path, `${lines.join('\n')}\n`);
    const [outcome] = await group.load({
      files: [{ path, station }],
      asked: { zone: 'UTC' },
      createStations: false,
      dryRun: false,
      who: 'Rose',
      progress: null,
    });
    if (outcome?.load == null) throw new Error(JSON.stringify(outcome));
    return String(outcome.load);
  };
  try {
    await asAnew();
    const first = await load('weir', Date.UTC(2026, 1, 10), 72, (h) => 1.4 + 0.2 * Math.sin(h / 4));
    await asAnew();
    await load('upper', Date.UTC(2026, 4, 20), 96, (h) => 17 + 6 * Math.sin((h / 12) * Math.PI));
    await asAnew();
    await group.withdraw(first, 'Rose');
    await asAnew();
    const bias = (await group.findings('braid')).find(({ offer }) => offer !== null);
    if (bias === undefined) throw new Error('the sample season offers a correction at The Braid');
    await acceptCorrection(group, 'braid', bias.id, 'Rose', NOW);
    await asAnew();
  } finally {
    await group.close();
  }
});
