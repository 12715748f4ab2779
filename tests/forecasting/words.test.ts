import { describe, expect, it } from 'vitest';
import { forecast } from '../../forecasting/index.js';
import type { Remark } from '../../forecasting/remark.js';
import { forecasting as en, type ForecastingWords } from '../../src/words/en/forecasting.js';
import { forecasting as fr } from '../../src/words/fr/forecasting.js';
import { box, dayOf, season } from './invented-river.js';

const table = { en: 'Invented', fr: 'Inventée' };
const logger = { station: 'mill', days: 40, narrower: 3.2, stage: 'hatch' };

/** Every remark of the forecast and of the check of a table, with likely figures. */
const remarks: Remark<ForecastingWords>[] = [
  { code: 'cannot-say', with: { needs: 'readings', station: 'mill' } },
  { code: 'water-ends', with: { stage: 'hatch', station: 'mill', from: dayOf('2025-12-12') } },
  { code: 'not-reached', with: { stage: 'emergence', through: dayOf('2026-09-30'), share: 0.2 } },
  { code: 'rate-summation', with: { table } },
  { code: 'logger-accuracy', with: { station: 'mill', accuracy: 0.2 } },
  { code: 'accuracy-not-stated', with: { station: 'mill', assumed: 0.2 } },
  { code: 'gravel-offset', with: { station: 'mill', spread: 0.25 } },
  { code: 'leads-instead', with: { station: 'mill', first: 'weir', spread: 0.5 } },
  { code: 'unknown-station', with: { station: 'weir' } },
  { code: 'few-winters', with: { winters: 3 } },
  { code: 'before-stated', with: { lot: 'L1', celsius: 6, days: 12 } },
  { code: 'before-station', with: { lot: 'L1', station: 'tank', days: 12, missing: 2 } },
  { code: 'before-station-silent', with: { lot: 'L1', station: 'tank', days: 12 } },
  { code: 'before-as-stream', with: { lot: 'L1', days: 3 } },
  { code: 'planted-before-fertilised', with: { lot: 'L1' } },
  { code: 'not-fertilised', with: { lot: 'L1', day: dayOf('2026-11-02') } },
  { code: 'not-planted', with: { day: dayOf('2026-11-02') } },
  { code: 'lifted-already', with: { day: dayOf('2026-06-10') } },
  { code: 'no-fills', with: {} },
  { code: 'unknown-lot', with: { lot: 'L9' } },
  { code: 'table-from-memory', with: { table } },
  { code: 'table-spread-ours', with: { table } },
  { code: 'stage-equated', with: { stage: 'emergence', with: 'button-up' } },
  { code: 'outside-validity', with: { stage: 'hatch', min: 1.5, max: 12 } },
  { code: 'stage-not-in-every-table', with: { stage: 'emergence', lots: 'L2' } },
  { code: 'old-rule-agrees', with: { days: 2 } },
  { code: 'old-rule-late-cold', with: { days: 21, coldDays: 110, share: 0.41, units: 9 } },
  { code: 'old-rule-late', with: { days: 9, needed: 430, rule: 500 } },
  { code: 'old-rule-early', with: { days: 9, needed: 530, rule: 500 } },
  { code: 'old-rule-never', with: { gathered: 340, rule: 500, through: dayOf('2026-09-30') } },
  { code: 'old-rule-alone', with: { rule: 500 } },
  { code: 'old-rule-no-water', with: { rule: 500 } },
  { code: 'read-logger', with: logger },
  { code: 'read-logger-after-ice', with: logger },
  { code: 'read-logger-after-eggs', with: { ...logger, until: dayOf('2026-03-02') } },
  { code: 'read-logger-other-day', with: logger },
  { code: 'one-more-station', with: { narrower: 2.2, stage: 'hatch' } },
  { code: 'observe-stage', with: { eggs: 20, seen: 'eye-up', narrower: 3, stage: 'hatch' } },
  { code: 'observe-not-now', with: { seen: 'eye-up', narrower: 3, stage: 'hatch', why: 'handling' } },
  { code: 'observe-not-now', with: { seen: 'eye-up', narrower: 3, stage: 'hatch', why: 'ice' } },
  { code: 'observe-not-now', with: { seen: 'eye-up', narrower: 3, stage: 'hatch', why: 'blocked' } },
  {
    code: 'observation-used',
    with: { lot: 'L1', stage: 'eye-up', day: dayOf('2026-03-03'), seen: 12, of: 20, moved: 4 },
  },
  {
    code: 'observation-surprises',
    with: { lot: 'L1', stage: 'hatch', day: dayOf('2026-03-03'), seen: 1, of: 20, moved: -4 },
  },
  { code: 'read-logger-to-lead', with: { station: 'mill', days: 40 } },
  { code: 'name-a-station', with: {} },
  { code: 'history-or-curve', with: {} },
  { code: 'table-not-a-number', with: { row: 'hatch', field: 'b', value: 'x' } },
  { code: 'table-no-stages', with: { row: 'table' } },
  { code: 'table-stage-twice', with: { row: 'hatch' } },
  { code: 'table-days-rise', with: { row: 'hatch', celsius: 4, days: 90, before: 80 } },
  { code: 'table-temperatures-unsorted', with: { row: 'hatch', celsius: 4, before: 6 } },
  { code: 'table-too-few-rows', with: { row: 'hatch', rows: 1 } },
  { code: 'table-not-positive', with: { row: 'hatch', field: 'units', value: 0 } },
  { code: 'table-law-slows', with: { row: 'hatch', field: 'b', value: 2, celsius: 4 } },
  { code: 'table-power-undefined', with: { row: 'hatch', alpha: 3, min: 0 } },
  { code: 'table-units-never', with: { row: 'hatch', base: 14, max: 12 } },
  { code: 'table-rows-outside-validity', with: { row: 'hatch', min: 2, max: 10 } },
  { code: 'table-refers-to-itself', with: { row: 'hatch' } },
  { code: 'table-refers-to-unknown', with: { row: 'hatch', to: 'swim-up' } },
  { code: 'table-after-later', with: { row: 'eye-up', to: 'hatch' } },
  { code: 'table-loop', with: { row: 'hatch', loop: 'hatch → eye-up → hatch' } },
  { code: 'table-multiple-of-counted', with: { row: 'emergence', to: 'feeding' } },
  {
    code: 'table-out-of-order',
    with: { row: 'hatch', before: 'eye-up', celsius: 4, days: 90, daysBefore: 95 },
  },
  { code: 'table-negative-spread', with: { row: 'hatch', field: 'eggSpread', value: -0.03 } },
  { code: 'table-wide-spread', with: { row: 'table', field: 'lotSpread', value: 3 } },
  { code: 'table-span-empty', with: { row: 'table', field: 'doNotHandle', from: 0.5, to: 0.1 } },
  { code: 'table-leaves-box', with: { row: 'table', days: 3, min: 5, max: 20 } },
  { code: 'table-hours-negative', with: { row: 'harm 1', value: -1 } },
];

function say<Code extends keyof ForecastingWords>(
  words: { [Each in keyof ForecastingWords]: (figures: ForecastingWords[Each]) => string },
  remark: { code: Code; with: ForecastingWords[Code] },
): string {
  return words[remark.code](remark.with);
}

/** A whole sentence that lost none of its figures. */
function checkSentence(text: string) {
  expect(text).toMatch(/^[\p{Lu}\d]/u);
  expect(text).toMatch(/\.$/);
  expect(text).not.toMatch(/undefined|null|NaN|Infinity|∞|\[object/);
}

describe('what the forecast says', () => {
  it('has words for every code, tried here', () => {
    expect(new Set(remarks.map(({ code }) => code))).toEqual(new Set(Object.keys(en)));
    expect(Object.keys(fr).sort()).toEqual(Object.keys(en).sort());
  });

  it.each(remarks.map((remark) => [remark.code, remark] as const))(
    '%s is a sentence in both languages, and not the same one',
    (_code, remark) => {
      const [english, french] = [say(en, remark), say(fr, remark)];
      checkSentence(english);
      checkSentence(french);
      expect(french).not.toBe(english);
    },
  );

  it('names the row of a bad table in both languages', () => {
    for (const remark of remarks) {
      if (!('row' in remark.with) || remark.code === 'table-no-stages') continue;
      for (const words of [en, fr]) expect(say(words, remark)).toContain(String(remark.with.row));
    }
  });

  it('in French calls an egg-sac fry alevin vésiculé, never a bare alevin', () => {
    expect(say(fr, { code: 'table-leaves-box', with: { row: 'table', days: 3, min: 5, max: 20 } })).toContain(
      'alevins vésiculés',
    );
    for (const remark of remarks) expect(say(fr, remark)).not.toMatch(/alevins?\b(?! vésiculés?)/);
  });

  it('takes one day for one day', () => {
    const told = (days: number): Remark<ForecastingWords> => ({
      code: 'read-logger-to-lead',
      with: { station: 'mill', days },
    });
    expect(say(en, told(1))).toContain('1 day ');
    expect(say(fr, told(1))).toContain('1 jour ');
    expect(say(fr, told(2))).toContain('2 jours ');
  });

  it('covers whatever the forecast of an odd season brings up', () => {
    const odd = [
      season(),
      season({ stations: [] }),
      season({ boxes: [box({ stations: [] })] }),
      season({ boxes: [box({ fills: [] })] }),
      season({ asOf: dayOf('2025-10-01') }),
    ];
    const known = new Set<string>(remarks.map(({ code }) => code));
    const said = odd.flatMap((input) =>
      forecast(input).boxes.flatMap((each) => [
        ...each.assumptions,
        ...each.sharpenBy,
        each.oldRule.why,
        ...each.windows.flatMap(({ unreached }) => (unreached === null ? [] : [unreached])),
      ]),
    );
    expect(said.length).toBeGreaterThan(12);
    for (const { code } of said) expect(known).toContain(code);
  });
});
