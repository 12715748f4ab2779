import { describe, expect, it } from 'vitest';
import { atlanticSalmon, type BoxForecast, type ForecastInput, forecast } from '../../forecasting/index.js';
import { box, dayOf, isoOf, lot, river, season, steady } from './invented-river.js';
import { codes, stage } from './reading-answers.js';

const only = (input: ForecastInput): BoxForecast => forecast(input).boxes[0];

describe('boxes and lots', () => {
  const two = season({
    lots: [lot(), lot({ lot: 'L2', fertilised: dayOf('2025-11-15') })],
    boxes: [
      box({
        fills: [
          { lot: 'L1', eggs: 900, planted: dayOf('2025-11-01') + 0.5 },
          { lot: 'L2', eggs: 100, planted: dayOf('2025-11-15') + 0.5 },
        ],
      }),
    ],
  });

  it('a box of two lots has windows for each and for both, weighted by eggs', () => {
    const answer = only(two);
    const [one, other] = answer.lots;
    const hatch = stage(answer, 'hatch');
    expect(answer.eggs).toBe(1000);
    expect(hatch.first.p50).toBeGreaterThanOrEqual(stage(one, 'hatch').first.p50 ?? 0);
    expect(hatch.last.p50).toBeLessThanOrEqual((stage(other, 'hatch').last.p50 ?? 0) + 0.1);
    expect(hatch.median.p50).toBeGreaterThan(stage(one, 'hatch').median.p50 ?? 0);
    expect((hatch.median.p50 ?? 0) - (stage(one, 'hatch').median.p50 ?? 0)).toBeLessThan(
      (stage(other, 'hatch').median.p50 ?? 0) - (hatch.median.p50 ?? 0),
    );
  });

  it('fills of one lot put in on two days are one lot with its eggs added', () => {
    const answer = only(
      season({
        boxes: [
          box({
            fills: [
              { lot: 'L1', eggs: 400, planted: dayOf('2025-11-01') + 0.5 },
              { lot: 'L1', eggs: 300, planted: dayOf('2025-11-02') + 0.5 },
            ],
          }),
        ],
      }),
    );
    expect(answer.lots).toHaveLength(1);
    expect(answer.lots[0].eggs).toBe(700);
  });

  it('boxes of one station and lot share one answer', () => {
    const { boxes } = forecast(season({ boxes: [box(), box({ box: 'B2', site: 'S2' })] }));
    expect(boxes[1].windows).toEqual(boxes[0].windows);
    expect(boxes[1].water).toBe(boxes[0].water);
  });

  it('lots whose tables name other stages are mixed over those that have them, and it says so', () => {
    const short = { ...atlanticSalmon, id: 'short', stages: atlanticSalmon.stages.slice(0, 2) };
    const answer = only({ ...two, lots: [lot(), lot({ lot: 'L2', table: short })] });
    expect(answer.windows.map((window) => window.stage)).toContain('emergence');
    expect(answer.assumptions).toContainEqual({
      code: 'stage-not-in-every-table',
      with: { stage: 'emergence', lots: 'L2' },
    });
  });

  it('a box without eggs, and a fill of a lot that is not there, are said', () => {
    const empty = only(season({ boxes: [box({ fills: [] })] }));
    expect(empty.windows).toEqual([]);
    expect(codes(empty.assumptions)).toContain('no-fills');
    const unknown = only(
      season({ boxes: [box({ fills: [{ lot: 'L9', eggs: 5, planted: dayOf('2025-11-01') }] })] }),
    );
    expect(unknown.assumptions).toContainEqual({ code: 'unknown-lot', with: { lot: 'L9' } });
  });
});

describe('before planting', () => {
  const planted = dayOf('2025-11-21') + 0.5;
  const later = (changes: Parameters<typeof lot>[0], stations: ForecastInput['stations'] = []) =>
    only(
      season({
        lots: [lot(changes)],
        boxes: [box({ fills: [{ lot: 'L1', eggs: 1000, planted }] })],
        stations: [...season().stations, ...stations],
      }),
    );

  it('eggs bring the progress of a stated temperature', () => {
    const warm = later({ before: { kind: 'stated', celsius: 8 } });
    const cold = later({ before: { kind: 'stated', celsius: 2 } });
    // 20 days at 8 °C, 62.6 days to hatch, against 20 days at 2 °C, 171 days (Crisp 1981, memory).
    const brought = warm.lots[0].progress.hatch - cold.lots[0].progress.hatch;
    expect(brought).toBeCloseTo(20 / 62.62 - 20 / 169.9, 2);
    expect(codes(warm.assumptions)).toContain('before-stated');
  });

  it('or of a hatchery station, its missing days bridged', () => {
    const tank = steady('tank', 8, '2025-10-20', '2025-11-25');
    const stated = later({ before: { kind: 'stated', celsius: 8 } });
    const full = later({ before: { kind: 'station', station: 'tank' } }, [tank]);
    tank.days.mean[20] = Number.NaN;
    const gap = later({ before: { kind: 'station', station: 'tank' } }, [tank]);
    expect(full.lots[0].progress.hatch).toBeCloseTo(stated.lots[0].progress.hatch, 9);
    expect(gap.lots[0].progress.hatch).toBeCloseTo(stated.lots[0].progress.hatch, 9);
    expect(gap.assumptions).toContainEqual({
      code: 'before-station',
      with: { lot: 'L1', station: 'tank', days: 20, missing: 1 },
    });
  });

  it('of a hatchery that never reported, and of nothing stated, the water of the box is taken, and said', () => {
    const silent = later({ before: { kind: 'station', station: 'tank' } });
    const nothing = later({ before: { kind: 'none' } });
    expect(codes(silent.assumptions)).toContain('before-station-silent');
    expect(codes(nothing.assumptions)).toContain('before-as-stream');
    expect(silent.lots[0].progress).toEqual(nothing.lots[0].progress);
  });

  it('planted before it was fertilised is counted from fertilisation, and said', () => {
    const answer = only(season({ lots: [lot({ fertilised: dayOf('2025-11-10') })] }));
    expect(codes(answer.assumptions)).toContain('planted-before-fertilised');
    expect(answer.lots[0].progress.hatch).toBeGreaterThan(0);
  });
});

describe('outside the season', () => {
  it('before fertilisation nothing has happened and everything has a date', () => {
    const asOf = dayOf('2025-10-20');
    const stations = [river({ station: 'bridge', from: '2013-09-01', to: isoOf(asOf) })];
    const answer = only(season({ asOf, stations }));
    expect(answer.lots[0]).toMatchObject({ stage: 'not-fertilised', thermalUnits: 0 });
    expect(answer.lots[0].progress.hatch).toBe(0);
    expect(stage(answer, 'hatch')).toMatchObject({ passed: false, unreached: null });
    expect(codes(answer.assumptions)).toEqual(expect.arrayContaining(['not-fertilised', 'not-planted']));
    expect(answer.days).toMatchObject({ measured: 0, filled: 0 });
  });

  it('long after everything all stages are passed and nothing is left to narrow', () => {
    const asOf = dayOf('2027-03-01');
    const stations = [river({ station: 'bridge', from: '2020-09-01', to: isoOf(asOf) })];
    const answer = only(season({ asOf, stations }));
    expect(answer.windows.every(({ passed }) => passed)).toBe(true);
    expect(answer.lots[0].stage).toBe('emergence');
    expect(answer.days).toMatchObject({ filled: 0, projected: 0 });
    expect(answer.sharpenBy).toEqual([]);
  });

  it('a lifted box stands where it stood on that day', () => {
    const lifted = only(season({ boxes: [box({ lifted: dayOf('2025-12-15') })] }));
    const asItStood = only(
      season({
        asOf: dayOf('2025-12-14'),
        stations: [river({ station: 'bridge', from: '2013-09-01', to: '2025-12-14' })],
      }),
    );
    expect(lifted.lots[0].progress.hatch).toBeCloseTo(asItStood.lots[0].progress.hatch, 3);
    expect(lifted.assumptions).toContainEqual({
      code: 'lifted-already',
      with: { day: dayOf('2025-12-15') },
    });
    expect(lifted.days.projected).toBe(0);
  });

  it('in water too cold for a stage to come by the end of the forecast says so instead of a date', () => {
    const icy = steady('bridge', 0.1, '2013-09-01', '2026-02-15');
    const answer = only(season({ stations: [icy] }));
    const buttonUp = stage(answer, 'button-up');
    expect(buttonUp.last.p50).toBeNull();
    expect(buttonUp.unreached?.code).toBe('not-reached');
    expect(buttonUp.passed).toBe(false);
    expect(answer.oldRule.hatch).toBeNull();
    expect(answer.oldRule.why.code).toBe('old-rule-never');
  });
});
