import { beforeAll, describe, expect, it } from 'vitest';
import type { ForecastAnswer, LoadsAnswer } from '../../src/group/answers.js';
import { json, scratchFolder, underice } from './terminal.js';

const folder = `${scratchFolder()}/a folder with spaces é`;
let winter: ForecastAnswer;

/** A date by its day number, for comparing. */
const day = (date: string | null) => Date.parse(`${date}T00:00Z`) / 86_400_000;

beforeAll(async () => {
  winter = await json<ForecastAnswer>(['demo', '--exit', '--data', folder]);
});

describe('the sample season in February', () => {
  it('answers in the promised shape, with cautions', () => {
    expect(winter.asOf).toBe('2026-02-15');
    expect(winter.cautions.length).toBeGreaterThanOrEqual(3);
    expect(winter.boxes.map(({ box }) => box)).toEqual(['U1', 'U2', 'F1', 'F2', 'B1', 'A1']);
    for (const box of winter.boxes) {
      expect(Object.keys(box)).toEqual(
        expect.arrayContaining([
          'box',
          'site',
          'eggs',
          'lots',
          'dataThrough',
          'days',
          'windows',
          'oldRule',
          'method',
          'assumptions',
          'sharpenBy',
        ]),
      );
      expect(box.windows.map(({ stage }) => stage)).toEqual(['eye-up', 'hatch', 'button-up', 'emergence']);
      expect(typeof box.oldRule.thermalUnits).toBe('number');
    }
  });

  it('stands beside an earlier season closed in its own autumn', async () => {
    const { closed } = await json<{ closed: { season: string; at: string }[] }>([
      'season',
      'closed',
      '--data',
      folder,
    ]);
    expect(closed).toMatchObject([{ season: '2024-2025', at: '2025-10-15T12:00:00Z' }]);
  });

  it('has water that was measured, filled and projected', () => {
    const upper = winter.boxes.find(({ box }) => box === 'U1');
    expect(upper?.dataThrough).toBe('2025-12-03');
    expect(upper?.days.measured).toBeGreaterThan(20);
    expect(upper?.days.filled).toBeGreaterThan(60);
    expect(upper?.days.projected).toBeGreaterThan(60);
  });

  it('orders every window: first, median, last, and p10, p50, p90', () => {
    const windows = winter.boxes
      .flatMap((box) => [box.windows, ...box.lots.map((lot) => lot.windows)])
      .flat();
    expect(windows.length).toBeGreaterThan(30);
    for (const { first, median, last } of windows) {
      for (const { p10, p50, p90 } of [first, median, last]) {
        expect(day(p10)).toBeLessThanOrEqual(day(p50));
        expect(day(p50)).toBeLessThanOrEqual(day(p90));
      }
      expect(day(first.p50)).toBeLessThanOrEqual(day(median.p50));
      expect(day(median.p50)).toBeLessThanOrEqual(day(last.p50));
    }
  });

  it('tells the two lots of one box apart', () => {
    const both = winter.boxes.find(({ box }) => box === 'F2');
    expect(both?.lots.map(({ lot, eggs }) => [lot, eggs])).toEqual([
      ['A', 500],
      ['B', 500],
    ]);
  });

  it('stays in the folder for other commands', async () => {
    const { loads } = await json<LoadsAnswer>(['loads', '--data', folder]);
    expect(loads.length).toBe(21);
    const again = await json<ForecastAnswer>(['--data', folder, 'forecast', '--as-of', '2026-02-15']);
    expect(again).toEqual(winter);
  });

  it('is not loaded over a season that is there', async () => {
    const said = await underice(['demo', '--exit', '--data', folder]);
    expect(said.status).toBe(2);
    expect(said.err).toContain('already holds a season');
  });

  it('what had been read by June settles what February projected', async () => {
    const june = await json<ForecastAnswer>(['forecast', '--data', folder, '--as-of', '2026-06-20']);
    for (const box of june.boxes) {
      const then = winter.boxes.find((one) => one.box === box.box);
      const hatch = box.windows.find(({ stage }) => stage === 'hatch');
      const expected = then?.windows.find(({ stage }) => stage === 'hatch')?.median;
      expect(hatch?.passed).toBe(true);
      expect(day(hatch?.median.p50 ?? null)).toBeGreaterThanOrEqual(day(expected?.p10 ?? null));
      expect(day(hatch?.median.p50 ?? null)).toBeLessThanOrEqual(day(expected?.p90 ?? null));
    }
    expect(june.boxes.find(({ box }) => box === 'U1')?.days.projected).toBe(0);
  });
});

it('speaks French where it is asked to, and shows the season on a terminal', async () => {
  const said = await underice(['forecast', '--data', folder, '--as-of', '2026-02-15', '--lang', 'fr']);
  expect(said.status).toBe(0);
  expect(said.out).toContain('éclosion');
  expect(said.out).toContain('Ne traversez jamais la glace');
  expect(said.out).not.toMatch(/undefined|NaN/);
});
