import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Group, openOwnGroup } from '../../src/group/index.js';
import { loadSampleSeason, sampleWinterDay } from '../../src/group/sample-season.js';
import { liftingState } from '../../src/lifting/index.js';
import {
  liftingNews,
  type NewsSource,
  noonOf,
  silenceNews,
  stageNews,
  windowNews,
} from '../../src/messages/index.js';
import { scratchFolder } from '../http/service.js';
import { temporaryFolder } from '../store/temporary.js';
import { MORNING, river } from './river.js';

let group: Group;
beforeAll(async () => {
  group = await openOwnGroup(join(scratchFolder(), 'season'));
  await loadSampleSeason(group, 'tests');
});
afterAll(() => group.close());

const ask = (source: NewsSource, asOf: number, mark: string | null) =>
  source.news({ group, mark, asOf, at: noonOf(asOf) });

describe('on the invented season', () => {
  const before = sampleWinterDay - 14;

  test('the first time nothing old is told', async () => {
    for (const source of [windowNews(0), stageNews, silenceNews(72)])
      expect((await ask(source, sampleWinterDay, null)).news).toEqual([]);
  });

  test('a stage that is probably reached is told once, all its boxes together', async () => {
    const { mark } = await ask(stageNews, before, null);
    const told = await ask(stageNews, sampleWinterDay, mark);
    const { boxes } = await group.forecast({ box: null, asOf: sampleWinterDay });
    const passed = boxes.filter(({ lots }) =>
      lots.some(({ windows }) => windows.some(({ stage, passed }) => stage === 'eye-up' && passed)),
    );
    expect(passed.length).toBeGreaterThan(1);
    expect(told.news.map(({ news }) => news)).toEqual([
      expect.objectContaining({
        kind: 'stage-reached',
        stage: 'eye-up',
        boxes: passed.map(({ box }) => box),
      }),
    ]);
    expect((await ask(stageNews, sampleWinterDay, told.mark)).news).toEqual([]);
  });

  test('a window that moved by more than so many days since it was told, and not by fewer', async () => {
    const days = async (asOf: number) => {
      const { boxes } = await group.forecast({ box: null, asOf });
      const lot = boxes.find(({ box }) => box === 'B1')?.lots[0];
      return Math.floor(lot?.windows.find(({ stage }) => stage === 'hatch')?.median.p50 ?? Number.NaN);
    };
    const [was, is] = [await days(sampleWinterDay - 75), await days(sampleWinterDay)];
    const moved = Math.abs(is - was);
    expect(moved).toBeGreaterThan(0);
    const { mark } = await ask(windowNews(0), sampleWinterDay - 75, null);
    const hatch = async (days: number) => {
      const { news } = await ask(windowNews(days), sampleWinterDay, mark);
      const moves = news.flatMap((one) =>
        one.news.kind === 'window-moved' && one.news.stage === 'hatch' ? one.news.moves : [],
      );
      return moves.find(({ boxes }) => boxes.includes('B1')) ?? null;
    };
    expect(await hatch(moved)).toBeNull();
    expect(await hatch(moved - 1)).toMatchObject({ before: was, after: is });
  });

  test('the lifting window nears: told once, and again only where it moves', async () => {
    const far = await ask(liftingNews(10, 3), sampleWinterDay, null);
    expect(far.news).toEqual([]);
    const june = Date.parse('2026-06-01') / 86_400_000;
    const { plan } = await liftingState(group, june);
    const first = plan.recommended[0]?.day ?? Number.NaN;
    const near = await ask(liftingNews(Math.max(1, first - june), 3), june, far.mark);
    expect(near.news).toMatchObject([
      { news: { kind: 'lifting-near', day: first, inDays: Math.max(0, first - june), approved: false } },
    ]);
    expect((await ask(liftingNews(60, 3), june, near.mark)).news).toEqual([]);
    expect((await ask(liftingNews(60, 3), june, JSON.stringify({ day: first - 4 }))).news).toHaveLength(1);
  });
});

test('a station that reports has been silent for longer than usual: told once, and anew after it spoke', async () => {
  const { group: brook } = await river();
  const load = async (from: number) => {
    const file = join(temporaryFolder(), 'pool.csv');
    const rows = [0, 1, 2].map((i) => `${new Date(from + i * 3_600_000).toISOString()},0.1`);
    writeFileSync(file, `Time (UTC),Temperature (°C)\n${rows.join('\n')}\n`);
    await brook.load({
      files: [{ path: file, station: 'pool' }],
      asked: {},
      createStations: false,
      dryRun: false,
      who: 'x',
      progress: null,
    });
  };
  const hour = 3_600_000;
  const last = MORNING - 300 * hour;
  await load(last - 2 * hour);
  const source = silenceNews(72);
  const at = async (hours: number, mark: string | null) =>
    source.news({ group: brook, mark, asOf: 0, at: last + hours * hour });
  const quiet = await at(72, '{}');
  expect(quiet.news).toEqual([]);
  const told = await at(73, quiet.mark);
  expect(told.news).toMatchObject([
    { news: { kind: 'station-silent', station: 'pool', last, hours: 73, usualHours: 72 } },
  ]);
  expect((await at(200, told.mark)).news).toEqual([]);
  await load(MORNING - 100 * hour);
  const spoke = await source.news({ group: brook, mark: told.mark, asOf: 0, at: MORNING - 90 * hour });
  expect(spoke.news).toEqual([]);
  expect((await source.news({ group: brook, mark: spoke.mark, asOf: 0, at: MORNING })).news).toHaveLength(1);
});
