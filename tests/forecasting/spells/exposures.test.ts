import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../forecasting/quality/finding.js';
import { EXPOSURE_DOSES } from '../../../forecasting/spells/index.js';
import { BEGIN, DAY, HOUR, held, judged } from './eggs.js';

/*
 * Doses out of the water (check values "Harm": Becker, Neitzel & Abernethy 1983 and Becker et al. 1982, chinook salmon,
 * abstracts): eggs 12 days 98 % alive; embryos 12 days 92 %, 20 days 53 %; newly hatched 6 hours 96 %, high mortality at
 * 48; before emergence nearly all die in 6 hours, or by an hour a day. Before hatch a watch, after hatch urgent.
 */
const finding = (kind: Finding['kind'], day: number, hours: number): Finding => ({
  kind,
  from: BEGIN + day * DAY,
  to: BEGIN + day * DAY + hours * HOUR,
  flag: kind === 'frozen-in' ? 3 : 4,
  figures: {},
  offer: null,
});

const lying = (
  kind: Finding['kind'],
  day: number,
  hours: number,
  lay: 'in-box' | 'bank' | 'stream' = 'in-box',
) =>
  // In air the logger reads what it likes: 19 °C would be too warm for every stage before hatch.
  judged({ from: day, hours: held(19, hours), lay, findings: [finding(kind, day, hours + 1)] });

describe.each(['in-air', 'in-snow', 'frozen-in'] as const)('a logger found %s', (kind) => {
  it('in a box raises one possible exposure and no temperature spell', () => {
    expect(lying(kind, 50, 96)).toMatchObject([
      { kind: 'exposure', severity: 'watch', certainty: 'possible', sign: kind, peak: null, chance: null },
    ]);
  });
  it('on the bank or elsewhere in the stream raises nothing', () => {
    expect([...lying(kind, 50, 96, 'bank'), ...lying(kind, 50, 96, 'stream')]).toEqual([]);
  });
});

describe('how grave an exposure is', () => {
  it.each([
    ['a fertilised egg, 12 days', 50, 12 * 24, 'watch'],
    ['an embryo, 20 days', 150, 20 * 24, 'watch'],
    ['a newly hatched alevin, less than six hours', 205, 4, 'watch'],
    ['a newly hatched alevin, six hours and more', 205, 6, 'lethal'],
    ['an alevin near emergence, an hour', 236, 1, 'lethal'],
  ])('%s: day %i, %i h: %s', (_, day, hours, severity) => {
    expect(lying('in-air', day, hours)).toMatchObject([{ kind: 'exposure', severity }]);
  });
  it('carries the published mortality of its stage with its conditions', () => {
    const [egg] = lying('in-air', 50, 48);
    expect(egg?.mortality.map(({ from }) => Number((1 - from).toFixed(2)))).toEqual([0.98]);
    const [embryo] = lying('in-air', 150, 48);
    expect(embryo?.mortality.map(({ from }) => Number((1 - from).toFixed(2)))).toEqual([0.92, 0.53]);
    expect(embryo?.mortality[0]?.conditions.fr).toContain('12 jours');
  });
  it('every dose names its source', () => {
    for (const { sources, mortality } of EXPOSURE_DOSES) {
      expect(sources.some(({ mark }) => mark === 'abstract')).toBe(true);
      expect(mortality.length).toBeGreaterThan(0);
    }
  });
});

describe('one exposure', () => {
  it('of findings two days apart; a fortnight apart they are two', () => {
    const two = (apart: number) =>
      judged({
        from: 50,
        hours: held(4, 1),
        findings: [finding('frozen-in', 50, 10), finding('in-snow', 50 + apart, 20)],
      });
    expect(two(2)).toMatchObject([{ hours: 30 }]);
    expect(two(14)).toHaveLength(2);
  });
  it('ends with the box: nothing after all fry have left the gravel', () => {
    expect(lying('in-air', 250, 48)).toEqual([]);
  });
  it('a box whose logger is frozen in at -0.95 °C for hours is freezing, not also exposed', () => {
    const found = judged({
      from: 150,
      hours: held(-0.95, 10),
      base: 0,
      findings: [finding('frozen-in', 150, 11)],
    });
    expect(found).toMatchObject([{ kind: 'freezing', severity: 'lethal' }]);
  });
  it('a logger “frozen in” at 0.0 ± 0.2 °C lies in a normal winter: nothing', () => {
    for (const [level, count] of [
      [-0.2, 0],
      [-0.1, 0],
      [-0.3, 1],
    ] as const) {
      const frozen = { ...finding('frozen-in', 150, 200), figures: { level } };
      expect(judged({ from: 150, hours: held(level, 200), base: 0, findings: [frozen] })).toHaveLength(count);
    }
  });
  it('between -0.2 and -0.7 °C it is suspect: "frozen in?"', () => {
    const found = judged({ from: 150, hours: held(-0.5, 10), base: 0 });
    expect(found).toMatchObject([{ kind: 'exposure', severity: 'watch', sign: 'just-below-zero' }]);
  });
});
