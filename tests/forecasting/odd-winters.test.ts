import { describe, expect, it } from 'vitest';
import { atlanticSalmon, type DevelopmentTable, forecast } from '../../forecasting/index.js';
import { box, dayOf, isoOf, lot, river, season } from './invented-river.js';
import { codes, numbers, stage } from './reading-answers.js';

const inWater = (warmer: number, asOf: string, missing?: (day: number) => boolean) =>
  forecast(
    season({
      asOf: dayOf(asOf),
      stations: [
        river({ station: 'bridge', from: '2013-09-01', to: asOf, warmer, ...(missing ? { missing } : {}) }),
      ],
    }),
  ).boxes[0];

describe('an odd winter', () => {
  it('so warm that hatch comes in January has its date, and what leans on such water says so', () => {
    const answer = inWater(6, '2026-02-15');
    const hatch = stage(answer, 'hatch');
    expect(hatch.passed).toBe(true);
    expect(isoOf(hatch.median.p50 ?? 0).slice(0, 7)).toBe('2026-01');
    for (const figure of numbers(answer)) expect(figure).not.toBeNaN();
  });

  it('so cold that emergence does not come by August has no date, and says what share never comes', () => {
    const answer = inWater(-14, '2026-02-15');
    const emergence = stage(answer, 'emergence');
    expect(emergence.last.p50).toBeNull();
    expect(emergence.unreached).toMatchObject({ code: 'not-reached', with: { stage: 'emergence' } });
    for (const figure of numbers(answer)) expect(figure).not.toBeNaN();
  });

  it('after past ones whose loggers lay dry from December to May says where the water ends, and what would do', () => {
    const dry = (day: number) => day % 365.25 > 340 || day % 365.25 < 135;
    const answer = inWater(0, '2025-11-20', dry);
    const { unreached } = stage(answer, 'hatch');
    if (unreached?.code !== 'water-ends') throw new Error(`said ${unreached?.code}`);
    // dry from 6 December on; a normal reaches a few weeks past its last day
    expect(isoOf(unreached.with.from) > '2025-12-06').toBe(true);
    expect(isoOf(unreached.with.from) < '2026-02-01').toBe(true);
    for (const figure of numbers(answer)) expect(figure).not.toBeNaN();
  });

  it('with one past winter, or two, is an answer that says so', () => {
    for (const winters of [1, 2]) {
      const from = dayOf(`${2025 - winters}-09-01`);
      const answer = inWater(0, '2026-02-15', (day) => day < from);
      expect(answer.assumptions).toContainEqual({ code: 'few-winters', with: { winters } });
      expect(stage(answer, 'hatch').median.p50).not.toBeNull();
    }
  });

  it('of two stations that share no day: neither speaks for the other, and no figure is lost', () => {
    const stations = [
      river({ station: 'bridge', from: '2024-11-01', to: '2025-11-20' }),
      river({ station: 'mill', from: '2013-09-01', to: '2020-06-30' }),
    ];
    const answer = forecast(season({ stations })).boxes[0];
    expect(codes(answer.method)).not.toContain('filled-from');
    for (const figure of numbers(answer)) expect(figure).not.toBeNaN();
  });
});

describe('a table with a further stage', () => {
  it('has its window among the others, in its place', () => {
    const [eyeUp, ...rest] = atlanticSalmon.stages;
    const extra = { ...eyeUp, stage: 'first-pigment', needs: { multipleOf: 'hatch', factor: 0.45 } } as const;
    const table: DevelopmentTable = { ...atlanticSalmon, id: 'further', stages: [extra, eyeUp, ...rest] };
    const answer = forecast(season({ lots: [lot({ table })], boxes: [box()] })).boxes[0];
    expect(answer.windows.map((window) => window.stage)).toEqual(table.stages.map((row) => row.stage));
    const first = stage(answer, 'first-pigment').median.p50 ?? Number.NaN;
    expect(first).toBeLessThan(stage(answer, 'eye-up').median.p50 ?? Number.NaN);
    expect(answer.lots[0].progress['first-pigment']).toBeGreaterThan(answer.lots[0].progress['eye-up']);
  });
});
