import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inventedFolder, LAST } from '../../bench/invented-folder.js';
import { serve } from '../../bench/service.js';
import { openOwnGroup } from '../../src/group/index.js';
import type { LocalGroup } from '../../src/group/local.js';
import { ThreadThinker } from '../../src/group/thinker.js';
import type { Folder } from '../../src/store/index.js';
import { scratchFolder } from '../http/service.js';

/*
 * After many years were loaded the season is answered with once the checks have looked at its own year; the others follow
 * behind. The oracle: a group that has everything looked at before it answers.
 */
const HOUR = 3_600_000;
const STATIONS = ['station-0', 'station-1', 'station-2', 'station-3'];

/** Twelve years at four stations, looked at by nobody: a warm spell of the season, faults of the season and of old. */
async function manyYears(): Promise<string> {
  const dir = join(scratchFolder(), 'season');
  const folder = await inventedFolder(dir, { stations: 4, boxes: 4, readings: 420_000, step: HOUR });
  await load(folder, 'station-1', Date.UTC(2025, 10, 20), 96, (h) => 19 + Math.sin(h / 4));
  await load(folder, 'station-2', Date.UTC(2018, 6, 2), 400, (h) => (h % 50 === 7 ? 60 : 12.5));
  await load(folder, 'station-3', Date.UTC(2025, 11, 3), 300, (h) =>
    h % 60 === 7 ? 60 : 4 + Math.sin(h / 4),
  );
  await folder.close();
  return dir;
}

async function load(
  folder: Folder,
  id: string,
  from: number,
  hours: number,
  celsius: (hour: number) => number,
) {
  await folder.write('tests', async (write) => {
    const station = await write.station(id);
    if (station === null) throw new Error(`no ${id}`);
    const series = await write.seriesOf(station, 'temperature', 'instant');
    const { load: number, writer } = await write.beginLoad();
    const at = Float64Array.from({ length: hours }, (_, h) => from + h * HOUR);
    const value = Float64Array.from(at, (_, h) => celsius(h));
    await writer.append({ series, length: hours, at, value, line: null });
    const { series: outcomes } = await writer.finish();
    const sha256 = String(number).padStart(64, 'a');
    await write.recordLoad({
      load: number,
      file: `${number}.csv`,
      sha256,
      bytes: 1,
      series: outcomes,
      understood: '{}',
    });
  });
}

function copied(from: string): string {
  const to = join(scratchFolder(), 'season');
  cpSync(from, to, { recursive: true });
  return to;
}

async function said(group: LocalGroup) {
  const events = await group.spellEvents(0);
  const findings = [];
  // Without figures: what a year is off its neighbours is told against the days of its other years as they stood by then.
  for (const station of STATIONS)
    findings.push((await group.findings(station)).map(({ figures: _, ...finding }) => finding));
  return {
    events: events.map(({ number, change, spell }) => ({ number, change, spell })),
    spells: (await group.spells({ box: null, since: null })).map(
      ({ found: _, changed: __, ...spell }) => spell,
    ),
    findings,
    days: await Promise.all(STATIONS.map((station) => group.days({ station, from: null, to: null }))),
    forecast: await group.forecast({ box: null, asOf: null }),
  };
}

/** Part by part: what differs is a page to read, not ten thousand. */
function same(found: Awaited<ReturnType<typeof said>>, expected: Awaited<ReturnType<typeof said>>) {
  expect(found.events).toEqual(expected.events);
  expect(found.spells).toEqual(expected.spells);
  expect(found.findings).toEqual(expected.findings);
  expect(found.days).toEqual(expected.days);
  expect(found.forecast).toEqual(expected.forecast);
}

const opened = (dir: string, thinker?: ThreadThinker) =>
  openOwnGroup(dir, { now: () => LAST, ...(thinker === undefined ? {} : { thinker }) });

async function closing<T>(group: LocalGroup, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } finally {
    await group.close();
  }
}

test('years judged behind the answers, stopped and killed in between, say what judging all at once says', async () => {
  const many = await manyYears();
  const once = await opened(copied(many));
  const expected = await closing(once, () => said(once));
  expect(expected.events.map(({ change, spell }) => `${change} ${spell.kind}`)).toContain('past too-warm');
  const old = expected.findings[2]?.filter(({ to }) => to < Date.UTC(2019, 0, 1)) ?? [];
  expect(old.length).toBeGreaterThan(0);

  const behind = copied(many);
  const group = await opened(behind, new ThreadThinker());
  await closing(group, async () => {
    const first = await group.spells({ box: null, since: null });
    expect(group.stillChecking).toBe(true);
    expect(first.map(({ found: _, changed: __, ...spell }) => spell)).toEqual(expected.spells);
    // A spell that is shown already can be acknowledged: it is kept by then.
    const [shown] = first;
    if (shown === undefined) throw new Error('no spell');
    same(await said(group), expected);
    expect(group.stillChecking).toBe(false);
    expect((await group.acknowledgeSpell(shown.id, 'seen', 'Rose')).acknowledged?.note).toBe('seen');
  });

  // Closed as soon as the season is answered with, then a service that is killed while it is at it.
  const ended = copied(many);
  const short = await opened(ended, new ThreadThinker());
  await closing(short, async () => {
    await short.spells({ box: null, since: null });
    expect(short.stillChecking).toBe(true);
  });
  const service = await serve(ended);
  const page = await (await fetch(`${service.address}/`)).text();
  expect(page).toContain('The checks are still looking at earlier years');
  await service.end('SIGKILL');
  const again = await opened(ended, new ThreadThinker());
  same(await closing(again, () => said(again)), expected);
}, 900_000);
