import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Group, openOwnGroup } from '../../src/group/index.js';
import { loadSampleSeason } from '../../src/group/sample-season.js';
import { acceptCorrection, explained, overrule, withdrawRuling } from '../../src/quality/index.js';
import { scratchFolder } from '../http/service.js';

const NOW = Date.UTC(2026, 5, 20);
const hour = (text: string) => Date.parse(text);
let group: Group;
const folder = join(scratchFolder(), 'season');

beforeAll(async () => {
  group = await openOwnGroup(folder, { now: () => NOW });
  await loadSampleSeason(group, 'tests');
  return () => group.close();
});

const flagsBetween = async (station: string, from: string, to: string): Promise<Set<string>> => {
  const flags = new Set<string>();
  for await (const line of group.record({ station, from: null, to: null, daily: false })) {
    const [time, , flag] = line.split(',');
    if (time !== undefined && flag !== undefined && time >= from && time < to) flags.add(flag);
  }
  return flags;
};

describe('the invented winter', () => {
  /** sample-logs/loggers.ts: frazil carried the logger at The Braid up into slush, 5 December 20:00 to 9 December 14:00. */
  test('the logger in slush is found to the hour, and explained in both languages', async () => {
    const found = (await group.findings('braid')).filter(({ kind }) => kind === 'frozen-in');
    expect(found).toHaveLength(1);
    const [slush] = found;
    expect(Math.abs(slush.from - hour('2025-12-06T00:00Z'))).toBeLessThanOrEqual(3_600_000);
    expect(Math.abs(slush.to - hour('2025-12-09T18:00Z'))).toBeLessThanOrEqual(3_600_000);
    expect(slush).toMatchObject({ flag: 3, logger: 'B-02', ruling: null });
    expect(explained(slush, 'en')).toMatch(/For 90 hours it stayed below −0\.2 °C.*ice or slush/);
    expect(explained(slush, 'fr')).toMatch(/glace ou la sloche/);
    expect(await flagsBetween('braid', '2025-12-07', '2025-12-09')).toEqual(new Set(['3']));
  });

  test('nothing else of the season’s water is doubted', async () => {
    for (const station of ['upper', 'ford', 'weir', 'bridge'])
      expect((await group.findings(station)).filter(({ flag }) => flag >= 3)).toEqual([]);
    expect(await flagsBetween('upper', '2026-01-01', '2026-02-01')).toEqual(new Set(['1']));
  });

  test('a person’s ruling goes before the check, is kept with who, when and why, and can be taken back', async () => {
    const [slush] = (await group.findings('braid')).filter(({ kind }) => kind === 'frozen-in');
    const days = async () => (await group.days({ station: 'braid', from: 20428, to: 20429 })).origin;
    const before = await days();
    await overrule(group, 'braid', slush.id, { verdict: 'fail', reason: 'Slush on the float' }, 'Coral', NOW);
    const [ruled] = (await group.findings('braid')).filter(({ kind }) => kind === 'frozen-in');
    expect(ruled.ruling).toMatchObject({ verdict: 'fail', reason: 'Slush on the float', by: 'Coral' });
    // Not used any more: its days are filled from the neighbours instead.
    expect(await flagsBetween('braid', '2025-12-07', '2025-12-09')).toEqual(new Set(['4']));
    expect([...(await days())]).not.toEqual([...before]);

    await overrule(group, 'braid', slush.id, { verdict: 'good', reason: 'Looked again' }, 'Rose', NOW);
    expect((await group.season()).rulings).toHaveLength(1);
    expect(await flagsBetween('braid', '2025-12-07', '2025-12-09')).toEqual(new Set(['1']));

    await withdrawRuling(group, 'braid', slush.id, 'Rose');
    expect((await group.season()).rulings).toEqual([]);
    expect(await flagsBetween('braid', '2025-12-07', '2025-12-09')).toEqual(new Set(['3']));
    expect([...(await days())]).toEqual([...before]);
  });

  test('a ruling needs a reason and a finding that is there', async () => {
    const [slush] = (await group.findings('braid')).filter(({ kind }) => kind === 'frozen-in');
    await expect(
      overrule(group, 'braid', slush.id, { verdict: 'good', reason: ' ' }, 'Coral', NOW),
    ).rejects.toMatchObject({ remark: { code: 'quality-no-reason' } });
    await expect(
      overrule(group, 'braid', 'spike.1', { verdict: 'good', reason: 'x' }, 'Coral', NOW),
    ).rejects.toMatchObject({ remark: { code: 'quality-no-finding' } });
    await expect(withdrawRuling(group, 'braid', slush.id, 'Coral')).rejects.toMatchObject({
      remark: { code: 'quality-no-ruling' },
    });
    await expect(acceptCorrection(group, 'braid', slush.id, 'Coral', NOW)).rejects.toMatchObject({
      remark: { code: 'quality-nothing-offered' },
    });
    await expect(group.findings('nowhere')).rejects.toMatchObject({
      remark: { code: 'unknown-station-name' },
    });
  });

  /** sample-logs/loggers.ts: the logger at The Braid reads 0.06 °C too warm. */
  test('the correction at the freezing plateau is applied when accepted, offered no more, and undone like any edit', async () => {
    const bias = async () => (await group.findings('braid')).find(({ kind }) => kind === 'plateau-bias');
    const offered = await bias();
    expect(offered?.offer?.add).toBeCloseTo(-0.06, 1);
    const mean = async () => (await group.days({ station: 'braid', from: 20470, to: 20470 })).mean[0];
    const before = await mean();
    const { version } = (await group.seasonVersions())[0];
    await acceptCorrection(group, 'braid', offered?.id ?? '', 'Coral', NOW);
    const [{ corrections }] = (await group.season()).deployments.filter(({ station }) => station === 'braid');
    expect(corrections).toMatchObject([{ quantity: 'temperature', by: 'Coral', check: 'plateau-bias' }]);
    expect(await mean()).toBeCloseTo(before + (offered?.offer?.add ?? 0), 3);
    expect(await bias()).toBeUndefined();

    await group.applySeason(await group.seasonAt(version), 'season', 'Coral');
    expect(await mean()).toBeCloseTo(before, 6);
    expect((await bias())?.id).toBe(offered?.id);
  });

  test('a load withdrawn takes its findings with it; loaded again they are back; no reading is lost', async () => {
    const [load] = (await group.loads()).filter(({ file }) => file === 'braid 2026-01-20.txt');
    const before = await group.findings('braid');
    await group.withdraw(load.load, 'tests');
    expect((await group.findings('braid')).filter(({ kind }) => kind === 'frozen-in')).toEqual([]);
    const { samplePath } = await import('../../sample-logs/plan.js');
    await group.load({
      files: [{ path: samplePath('downloads/braid 2026-01-20.txt'), station: 'braid' }],
      asked: {},
      createStations: false,
      dryRun: false,
      who: 'tests',
      progress: null,
    });
    expect(await group.findings('braid')).toEqual(before);
    expect((await group.verify()).findings).toEqual([]);
  });
});
