import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ForecastInput, forecast } from '../../forecasting/index.js';
import { box, dayOf, isoOf, river, season } from './invented-river.js';

/** Warm enough to be free of ice all winter. */
const mild = (asOf: number) => [
  river({ station: 'box-logger', from: '2022-11-01', to: '2025-11-10', reports: false, warmer: 4 }),
  river({ station: 'mill', from: '2013-09-01', to: isoOf(asOf), warmer: 3.6 }),
];
const at = (day: string, changes: Partial<ForecastInput> = {}, withEggs = ['box-logger']) => {
  const asOf = dayOf(day);
  const boxes = [box({ stations: ['box-logger', 'mill'], withEggs })];
  return forecast(season({ asOf, stations: mild(asOf), boxes, ...changes })).boxes[0];
};
const said = (of: ReturnType<typeof at>) => of.sharpenBy.map(({ code }) => code);
const opens = ['read-logger', 'observe-stage'];

describe('what would sharpen a box', () => {
  // the first day on which a look is worth it: around the middle of a stage, past the span of handling
  const days = Array.from({ length: 40 }, (_, i) => isoOf(dayOf('2025-12-20') + 2 * i));
  const telling = days.find((day) => said(at(day)).includes('observe-stage')) ?? 'never';

  it('a look at eggs is proposed where it tells, with the days it takes off', () => {
    expect(telling).not.toBe('never');
    const look = at(telling).sharpenBy.find(({ code }) => code === 'observe-stage');
    expect(look).toMatchObject({
      with: { eggs: 20, stage: expect.any(String), narrower: expect.any(Number) },
    });
  });

  it('never opens a box while handling kills, on any day of the winter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), (days) => {
        const answer = at(isoOf(dayOf('2025-11-03') + days));
        const { from, to } = { from: 0.05, to: 0.5 };
        const hatch = answer.lots[0].progress.hatch;
        if (hatch >= from && hatch < to) for (const code of opens) expect(said(answer)).not.toContain(code);
      }),
      { seed: 9, numRuns: 12 },
    );
  });

  it('on a blocked day it names downloads of loggers apart from the eggs and stations, and says why', () => {
    const day = dayOf(telling);
    const blocked = [{ from: day - 1, to: day + 1, site: null }];
    const answer = at(telling, { blocked });
    for (const code of opens) expect(said(answer)).not.toContain(code);
    expect(answer.sharpenBy).toContainEqual(
      expect.objectContaining({ code: 'observe-not-now', with: expect.objectContaining({ why: 'blocked' }) }),
    );
    expect(said(answer)).toContain('read-logger-other-day');
    expect(said(at(telling, { blocked }, []))).toContain('read-logger');
    expect(said(at(telling, { blocked: [{ ...blocked[0], site: 'elsewhere' }] }))).toEqual(said(at(telling)));
  });

  it('one more station is worth less than the logger itself, and nothing where the water is read every day', () => {
    const worth = (code: string, of = at('2026-02-10')) => {
      const remark = of.sharpenBy.find((one) => one.code === code);
      return remark !== undefined && 'narrower' in remark.with ? remark.with.narrower : 0;
    };
    expect(worth('one-more-station')).toBeLessThanOrEqual(worth('read-logger'));
    const read = forecast(season({ asOf: dayOf('2026-02-15') })).boxes[0];
    expect(worth('one-more-station', read)).toBe(0);
  });
});
