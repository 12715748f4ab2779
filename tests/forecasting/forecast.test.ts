import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atlanticSalmon,
  type BoxForecast,
  brookTrout,
  type Forecast,
  type ForecastInput,
  forecast,
  type Interval,
  rainbowTrout,
  type StageWindow,
} from '../../forecasting/index.js';
import { box, dayOf, isoOf, lot, river, season, steady } from './invented-river.js';

const only = (input: ForecastInput): BoxForecast => forecast(input).boxes[0];
const codes = (remarks: readonly { code: string }[]) => remarks.map(({ code }) => code);
function stage(of: { windows: readonly StageWindow[] }, name: string): StageWindow {
  const found = of.windows.find((window) => window.stage === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}
const width = ({ p10, p90 }: Interval) => (p90 ?? Number.NaN) - (p10 ?? Number.NaN);
const withoutWater = (answer: Forecast) =>
  JSON.stringify(answer.boxes.map((each) => ({ ...each, water: null })));

/** Every number in the answer. */
function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (ArrayBuffer.isView(value) || value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'water' ? [] : numbers(inner)));
}

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
    expect(withoutWater(forecast(season()))).toBe(withoutWater(forecast(season())));
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
    expect(withoutWater({ ...backwards, boxes: [...backwards.boxes].reverse() })).toBe(
      withoutWater(forwards),
    );
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

describe('without enough to go on', () => {
  it('no readings anywhere: it cannot say, and says what it needs', () => {
    const answer = only(season({ stations: [] }));
    expect(stage(answer, 'hatch').median.p50).toBeNull();
    expect(stage(answer, 'hatch').unreached).toEqual({
      code: 'cannot-say',
      with: { needs: 'readings', station: 'bridge' },
    });
    expect(answer.lots[0]).toMatchObject({ stage: 'unknown', progress: {}, thermalUnits: null });
    expect(codes(answer.sharpenBy)).toEqual(['history-or-curve']);
    expect(codes(answer.assumptions)).toContain('unknown-station');
  });

  it('a box that names no station: it needs one', () => {
    const answer = only(season({ boxes: [box({ stations: [] })] }));
    expect(stage(answer, 'hatch').unreached).toMatchObject({ with: { needs: 'station' } });
    expect(codes(answer.sharpenBy)).toEqual(['name-a-station']);
  });

  it('few winters widen the window and are named', () => {
    const widths = ['2023-09-01', '2013-09-01'].map((from) => {
      const answer = only(season({ stations: [river({ station: 'bridge', from, to: '2026-02-15' })] }));
      return { wide: width(stage(answer, 'hatch').median), codes: codes(answer.assumptions) };
    });
    expect(widths[0].wide).toBeGreaterThan(widths[1].wide);
    expect(widths[0].codes).toContain('few-winters');
    expect(widths[1].codes).not.toContain('few-winters');
  });

  it('a worse logger, and gravel above the eggs, widen it', () => {
    const at = (accuracy: number, withEggs: string[]) =>
      width(
        stage(
          only(
            season({
              stations: [river({ station: 'bridge', from: '2013-09-01', to: '2026-02-15', accuracy })],
              boxes: [box({ withEggs })],
            }),
          ),
          'hatch',
        ).median,
      );
    expect(at(0.5, ['bridge'])).toBeGreaterThan(at(0.1, ['bridge']));
    expect(at(0.1, [])).toBeGreaterThan(at(0.1, ['bridge']));
  });
});

describe('stations in order of trust', () => {
  const stations = [
    river({ station: 'box-logger', from: '2024-11-01', to: '2025-11-10', reports: false }),
    river({ station: 'mill', from: '2013-09-01', to: '2026-02-15', warmer: 0.7 }),
  ];

  it('the first with enough readings leads, though its download is outstanding', () => {
    const answer = only(season({ stations, boxes: [box({ stations: ['box-logger', 'mill'] })] }));
    expect(answer.water?.station).toBe('box-logger');
    expect(answer.dataThrough).toBe(dayOf('2025-11-10'));
    expect(answer.sharpenBy).toMatchObject([
      { code: 'read-logger-after-ice', with: { station: 'box-logger', days: 97, stage: 'hatch' } },
    ]);
  });

  it('one that has next to nothing lets the next one lead, and its download is asked for', () => {
    const fresh = river({ station: 'box-logger', from: '2025-11-01', to: '2025-11-03', reports: false });
    const answer = only(
      season({ stations: [fresh, stations[1]], boxes: [box({ stations: ['box-logger', 'mill'] })] }),
    );
    expect(answer.water?.station).toBe('mill');
    expect(codes(answer.assumptions)).toContain('leads-instead');
    expect(codes(answer.sharpenBy)).toContain('read-logger-to-lead');
  });

  it('a logger that lies with eggs is left alone while handling kills them, and a date is named', () => {
    const question = (asOf: string, withEggs: string[]) =>
      only(
        season({
          asOf: dayOf(asOf),
          stations: [
            river({ station: 'box-logger', from: '2022-11-01', to: '2025-11-10', reports: false, warmer: 2 }),
            river({ station: 'mill', from: '2013-09-01', to: asOf, warmer: 2 }),
          ],
          boxes: [box({ stations: ['box-logger', 'mill'], withEggs })],
        }),
      ).sharpenBy;
    const [inside] = question('2025-12-01', ['box-logger']);
    expect(inside.code).toBe('read-logger-after-eggs');
    expect(inside).toMatchObject({ with: { until: expect.any(Number) } });
    const [outside] = question('2025-12-01', []);
    expect(outside.code).toBe('read-logger');
  });

  it('ice seen at the station keeps people off it until it is seen gone', () => {
    const asOf = dayOf('2026-04-10');
    const with_ = (kind: 'ice-on' | 'ice-out') =>
      only(
        season({
          asOf,
          stations: [
            stations[0],
            river({ station: 'mill', from: '2013-09-01', to: isoOf(asOf), warmer: 0.7 }),
          ],
          sightings: [{ kind, station: 'box-logger', day: asOf - 3 }],
          boxes: [box({ stations: ['box-logger', 'mill'] })],
        }),
      ).sharpenBy[0].code;
    expect(with_('ice-on')).toBe('read-logger-after-ice');
    expect(with_('ice-out')).toBe('read-logger');
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
