import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BoxForecast,
  brookTrout,
  type ForecastInput,
  forecast,
  rainbowTrout,
} from '../../forecasting/index.js';
import { box, dayOf, isoOf, lot, river, season, steady } from './invented-river.js';
import { asText, codes, numbers, stage, width } from './reading-answers.js';

const only = (input: ForecastInput): BoxForecast => forecast(input).boxes[0];

describe('a winter half over', () => {
  const answer = only(season());

  it('says where the eggs are and when they come to each stage', () => {
    const [first] = answer.lots;
    expect(first.stage).toBe('eye-up');
    expect(first.progress['eye-up']).toBeGreaterThan(1);
    expect(first.progress.hatch).toBeCloseTo(first.progress['eye-up'] / 2, 2);
    expect(first.progress['button-up']).toBeCloseTo(first.progress.hatch / 1.7, 2);
    expect(answer.windows.map((window) => window.stage)).toEqual([
      'eye-up',
      'hatch',
      'button-up',
      'emergence',
    ]);
    expect(isoOf(stage(answer, 'hatch').median.p50 ?? 0).slice(0, 7)).toBe('2026-04');
  });

  it('counts its days by where they come from', () => {
    expect(answer.days).toMatchObject({ measured: 107, filled: 0 });
    expect(answer.days.projected).toBeGreaterThan(80);
    expect(answer.dataThrough).toBe(dayOf('2026-02-15'));
  });

  it('orders first, median and last, and each interval', () => {
    for (const { first, median, last } of answer.windows) {
      for (const q of ['p10', 'p50', 'p90'] as const) {
        expect(first[q]).toBeLessThan(median[q] ?? 0);
        expect(median[q]).toBeLessThan(last[q] ?? 0);
      }
      for (const { p10, p50, p90 } of [first, median, last]) {
        expect(p10).toBeLessThan(p50 ?? 0);
        expect(p50).toBeLessThan(p90 ?? 0);
      }
    }
  });

  it('gives emergence the median of button-up and a wider spread', () => {
    const [buttonUp, emergence] = [stage(answer, 'button-up'), stage(answer, 'emergence')];
    expect(emergence.median).toEqual(buttonUp.median);
    expect(emergence.first.p50).toBeLessThan(buttonUp.first.p50 ?? 0);
    expect(emergence.last.p50).toBeGreaterThan(buttonUp.last.p50 ?? 0);
  });

  it('shows the old rule beside it, late, and why: the eggs went on in the cold', () => {
    const { hatch, thermalUnits, why } = answer.oldRule;
    expect(thermalUnits).toBe(500);
    expect((hatch ?? 0) - (stage(answer, 'hatch').median.p50 ?? 0)).toBeGreaterThan(10);
    expect(why).toMatchObject({ code: 'old-rule-late-cold' });
  });

  it('says what it takes for granted', () => {
    expect(codes(answer.assumptions)).toEqual(
      expect.arrayContaining([
        'logger-accuracy',
        'gravel-offset',
        'table-from-memory',
        'table-spread-ours',
        'stage-equated',
      ]),
    );
  });

  it('marks swim-up where the water then is warmer than 9.5 °C', () => {
    const warm = only(
      season({ stations: [river({ station: 'bridge', from: '2013-09-01', to: '2026-02-15', warmer: 4 })] }),
    );
    expect(stage(warm, 'button-up').outsideValidity).toBe(true);
    expect(stage(warm, 'eye-up').outsideValidity).toBe(false);
    expect(codes(warm.assumptions)).toContain('outside-validity');
  });

  it('marks brook trout in water colder than any of its rows', () => {
    const icy = only(season({ lots: [lot({ table: brookTrout })] }));
    expect(stage(icy, 'hatch').outsideValidity).toBe(true);
  });
});

describe('the same input', () => {
  it('gives the same answer, and another seed nearly the same', () => {
    expect(asText(forecast(season()).boxes)).toBe(asText(forecast(season()).boxes));
    const other = only(season({ seed: 8 }));
    const here = only(season());
    const apart = (stage(other, 'hatch').median.p50 ?? 0) - (stage(here, 'hatch').median.p50 ?? 0);
    expect(Math.abs(apart)).toBeLessThan(1);
  });

  it('in another order of stations, lots and boxes gives the same answer', () => {
    const stations = [
      river({ station: 'bridge', from: '2013-09-01', to: '2025-12-20', reports: false }),
      river({ station: 'mill', from: '2013-09-01', to: '2026-02-15', warmer: 1 }),
      river({ station: 'air', from: '2013-09-01', to: '2026-02-15', warmer: -3, kind: 'air' }),
    ];
    const lots = [lot(), lot({ lot: 'L2', fertilised: dayOf('2025-11-09'), table: rainbowTrout })];
    const boxes = [
      box({
        fills: [
          { lot: 'L1', eggs: 600, planted: dayOf('2025-11-10') },
          { lot: 'L2', eggs: 400, planted: dayOf('2025-11-10') },
        ],
      }),
      box({ box: 'B2' }),
    ];
    const forwards = forecast(season({ stations, lots, boxes }));
    const backwards = forecast(
      season({
        stations: [...stations].reverse(),
        lots: [...lots].reverse(),
        boxes: [...boxes].reverse(),
      }),
    );
    expect(asText([...backwards.boxes].reverse())).toBe(asText(forwards.boxes));
  });
});

describe('in any winter', () => {
  it('nothing is later in warmer water, no progress falls as days go by, and no figure is NaN', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: dayOf('2025-10-15'), max: dayOf('2026-08-15') }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (asOf, warmer) => {
          const to = isoOf(asOf);
          const at = (more: number) =>
            only(
              season({
                asOf,
                stations: [river({ station: 'bridge', from: '2019-09-01', to, warmer: more })],
              }),
            );
          const [cold, warm] = [at(0), at(warmer)];
          for (const window of cold.windows) {
            const p50 = stage(warm, window.stage).median.p50;
            if (window.median.p50 !== null) expect(p50).toBeLessThanOrEqual(window.median.p50 + 1e-6);
          }
          for (const figure of [...numbers(cold), ...numbers(warm)]) expect(figure).not.toBeNaN();
        },
      ),
      { numRuns: 12 },
    );
  });

  it('progress rises from day to day and a stage is passed exactly when it is 1', () => {
    let before = 0;
    for (let asOf = dayOf('2025-11-01'); asOf < dayOf('2026-06-30'); asOf += 9) {
      const stations = [river({ station: 'bridge', from: '2020-09-01', to: isoOf(asOf) })];
      const [{ progress, windows }] = only(season({ asOf, stations })).lots;
      expect(progress.hatch).toBeGreaterThanOrEqual(before);
      before = progress.hatch;
      for (const { stage: name, passed } of windows) expect(passed).toBe(progress[name] >= 1);
    }
    expect(before).toBeGreaterThan(1);
  });

  it('the window of a stage narrows as the winter goes by', () => {
    const widths = ['2025-11-05', '2026-01-15', '2026-03-25'].map((to) =>
      width(
        stage(
          only(season({ asOf: dayOf(to), stations: [river({ station: 'bridge', from: '2013-09-01', to })] })),
          'hatch',
        ).median,
      ),
    );
    expect(widths[1]).toBeLessThan(widths[0]);
    expect(widths[2]).toBeLessThan(widths[1]);
  });
});

describe('the fixed rule', () => {
  const why = (thermalUnits: number, warmer: number) =>
    only(
      season({
        stations: [river({ station: 'bridge', from: '2013-09-01', to: '2026-02-15', warmer })],
        oldRule: { thermalUnits, base: 0 },
      }),
    ).oldRule;

  it('that is too low for the water comes early, and says what this water needs', () => {
    expect(why(300, 5).why).toMatchObject({ code: 'old-rule-early', with: { rule: 300 } });
  });

  it('that is too high for it comes late', () => {
    expect(why(600, 5).why).toMatchObject({ code: 'old-rule-late', with: { rule: 600 } });
  });

  it('of 500 in water at 6-8 °C agrees', () => {
    const mild = steady('bridge', 7, '2013-09-01', '2026-02-15');
    const { oldRule } = only(season({ stations: [mild] }));
    expect(oldRule.why.code).toBe('old-rule-agrees');
  });
});
