import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import type { LocalGroup } from '../../src/group/local.js';
import { spellsAnswer } from '../../src/spells/answers.js';
import { scratchFolder } from '../cli/terminal.js';

/*
 * One invented box whose own logger is read late and whose neighbour reports: what filled water held possible is
 * confirmed by one download and withdrawn by another. Spells are judged by the program itself after each write.
 */
const DAY = 86_400_000;
const begin = Date.UTC(2025, 10, 1);
let now = Date.UTC(2026, 4, 20, 12);

const SEASON = `
group: { name: Invented river, zone: UTC }
stations:
  - { id: own, latitude: 47, longitude: -66 }
  - { id: near, latitude: 47.01, longitude: -66, reports: true }
loggers: [{ id: L, accuracy: 0.2 }]
deployments: [{ logger: L, station: own, lay: in-box, box: B1, from: 2024-10-01 12:00 }]
sites: [{ id: bend, station: own }]
lots: [{ id: A, fertilised: 2025-11-01 10:00, eggs: 1000, table: atlantic-salmon }]
boxes: [{ id: B1, site: bend, planted: 2025-11-01 14:00, fills: [{ lot: A, eggs: 1000 }] }]
`;

/** A plain year: 0 °C under ice, warm at the end of May; in 2026 four days of 19 °C in mid-May, where asked. */
function water(at: number, heat: boolean): number {
  const day = Math.round((at - Date.UTC(new Date(at).getUTCFullYear(), 0, 1)) / DAY);
  const year = new Date(at).getUTCFullYear();
  if (heat && year === 2026 && day >= 125 && day < 130) return 19;
  if (day < 100 || day > 330) return 0.1;
  if (day < 160) return 0.1 + (day - 100) * 0.12;
  return day < 250 ? 12 : Math.max(0.1, 12 - (day - 250) * 0.15);
}

function file(folder: string, name: string, from: number, to: number, heat: boolean): string {
  const lines = ['Date Time (UTC),Water temperature (°C)'];
  for (let at = from; at < to; at += 3_600_000) {
    const swing = 0.4 * Math.sin((at / DAY) * 2 * Math.PI) * Math.min(1, water(at, heat) / 4);
    lines.push(
      `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')},${(water(at, heat) + swing).toFixed(2)}`,
    );
  }
  const path = join(folder, name);
  writeFileSync(path, `${lines.join('\n')}\n`);
  return path;
}

let group: LocalGroup;
let folder = '';
const load = (path: string, station: string) =>
  group.load({
    files: [{ path }],
    asked: { station },
    createStations: false,
    dryRun: false,
    who: 'Rose',
    progress: null,
  });
const told = async (after: number) =>
  (await group.spellEvents(after)).map(({ change, spell, number, judging }) => ({
    change,
    kind: spell.kind,
    number,
    judging,
    certainty: spell.certainty,
  }));
const lethal = async () =>
  (await group.spells({ box: null, since: null })).filter(({ severity }) => severity === 'lethal');

beforeAll(async () => {
  folder = scratchFolder();
  group = await openOwnGroup(join(folder, 'river'), { now: () => now });
  await group.applySeason(SEASON, 'season.yaml', 'Rose');
  await load(file(folder, 'near.csv', Date.UTC(2024, 9, 1), now, true), 'near');
  await load(file(folder, 'own-2025.csv', Date.UTC(2024, 9, 1), Date.UTC(2025, 11, 1), false), 'own');
}, 60_000);
afterAll(() => group.close());

describe('a spell nobody measured yet', () => {
  it('is raised as possible from filled water, and told once', async () => {
    const [spell, ...others] = await lethal();
    expect(others).toEqual([]);
    expect(spell).toMatchObject({
      kind: 'too-warm',
      certainty: 'possible',
      origin: 'filled',
      boxes: ['B1'],
      eggs: 1000,
      station: 'own',
    });
    expect(spell?.chance).toBeGreaterThan(0.5);
    expect(spell?.from).toBeGreaterThan(begin);
    const events = await told(0);
    expect(events.filter(({ certainty }) => certainty === 'possible').length).toBeGreaterThan(0);
    expect(await told(events.at(-1)?.number ?? 0)).toEqual([]);
  });

  it('is confirmed by a late download that has it: the same spell, measured now', async () => {
    const before = (await lethal())[0]?.id;
    const after = (await told(0)).at(-1)?.number ?? 0;
    now += 3 * DAY;
    await load(file(folder, 'own-hot.csv', Date.UTC(2025, 11, 1), now - 5 * DAY, true), 'own');
    const [spell] = await lethal();
    expect(spell).toMatchObject({ id: before, certainty: 'measured', state: 'confirmed', chance: null });
    expect(spell?.peak).toBeCloseTo(19.4, 1);
    const events = (await told(after)).filter(({ kind }) => kind === 'too-warm');
    expect(events.map(({ change }) => change)).toContain('confirmed');
    expect(new Set(events.map(({ judging }) => judging)).size).toBe(1);
  });

  it('is withdrawn with the load, raised again, and withdrawn by a download that has not got it', async () => {
    const loads = await group.loads();
    await group.withdraw(loads.at(-1)?.load ?? '', 'Rose');
    expect((await lethal()).map(({ certainty, state }) => `${certainty} ${state}`).sort()).toEqual([
      'measured withdrawn',
      'possible past',
    ]);
    const after = (await told(0)).at(-1)?.number ?? 0;
    await load(file(folder, 'own-cool.csv', Date.UTC(2025, 11, 1), now - 5 * DAY, false), 'own');
    expect((await lethal()).map(({ state }) => state)).toEqual(['withdrawn', 'withdrawn']);
    expect((await told(after)).map(({ change }) => change)).toEqual(['withdrawn']);
  });
});

describe('what is kept', () => {
  it('events are numbered on without a gap, whatever happens', async () => {
    const numbers = (await told(0)).map(({ number }) => number);
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
  });

  it('a person acknowledges with a note; a measured spell is not settled, an unknown one not found', async () => {
    const id = (await lethal())[0]?.id ?? '';
    const row = await group.acknowledgeSpell(id, ' told the biologist ', 'Rose');
    expect(row.acknowledged).toMatchObject({ by: 'Rose', note: 'told the biologist' });
    expect((await group.spells({ box: 'B1', since: null })).find((one) => one.id === id)).toMatchObject({
      acknowledged: { by: 'Rose' },
    });
    await expect(group.settleExposure(id, 'happened', '', 'Rose')).rejects.toMatchObject({
      remark: { code: 'spell-not-an-exposure' },
    });
    await expect(group.acknowledgeSpell('none', '', 'Rose')).rejects.toMatchObject({
      remark: { code: 'unknown-spell' },
    });
    await expect(group.acknowledgeSpell(id, 'x'.repeat(3000), 'Rose')).rejects.toMatchObject({
      remark: { code: 'spell-note-too-long' },
    });
  });

  it('--box and --since: only its own, only those that lasted until then', async () => {
    await expect(group.spells({ box: 'B9', since: null })).rejects.toMatchObject({
      remark: { code: 'unknown-box' },
    });
    expect(await group.spells({ box: null, since: now + 400 * DAY })).toEqual([]);
  });

  it('prints the contract, and nothing else', async () => {
    const { spells } = spellsAnswer(await group.spells({ box: null, since: null }));
    expect(spells.length).toBeGreaterThan(0);
    for (const spell of spells) {
      expect(Object.keys(spell)).toEqual([
        'id',
        'boxes',
        'kind',
        'severity',
        'stages',
        'from',
        'to',
        'peak_c',
        'hours',
        'certainty',
        'state',
      ]);
      expect(spell.from).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    }
  });

  it('is there after a restart, judged no second time', async () => {
    const before = await group.spells({ box: null, since: null });
    const events = await told(0);
    await group.close();
    group = await openOwnGroup(join(folder, 'river'), { now: () => now });
    expect(await group.spells({ box: null, since: null })).toEqual(before);
    expect(await told(0)).toEqual(events);
  });
});
