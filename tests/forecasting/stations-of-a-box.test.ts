import { describe, expect, it } from 'vitest';
import { type BoxForecast, type ForecastInput, forecast } from '../../forecasting/index.js';
import { box, dayOf, isoOf, river, season } from './invented-river.js';
import { codes, stage, width } from './reading-answers.js';

const only = (input: ForecastInput): BoxForecast => forecast(input).boxes[0];

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
    const answer = only(season({ stations: [], boxes: [box({ stations: [] })] }));
    expect(stage(answer, 'hatch').unreached).toMatchObject({ with: { needs: 'station' } });
    expect(codes(answer.sharpenBy)).toEqual(['name-a-station']);
  });

  it('where others report, they stand for a box without one, which is said and asked for', () => {
    const answer = only(season({ boxes: [box({ stations: [] })] }));
    expect(codes(answer.sharpenBy)).toContain('name-a-station');
    expect(codes(answer.method)).toContain('as-it-stands');
    expect(width(stage(answer, 'hatch').median)).toBeGreaterThan(
      width(stage(only(season()), 'hatch').median),
    );
  });

  it('few winters are named', () => {
    const named = (from: string) =>
      codes(only(season({ stations: [river({ station: 'bridge', from, to: '2026-02-15' })] })).assumptions);
    expect(named('2023-09-01')).toContain('few-winters');
    expect(named('2013-09-01')).not.toContain('few-winters');
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
      { code: 'one-more-station', with: { stage: 'hatch' } },
      { code: 'observe-not-now', with: { stage: 'hatch', seen: 'eye-up', why: 'ice' } },
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
