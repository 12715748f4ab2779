import { describe, expect, it } from 'vitest';
import { atlanticSalmon, brookTrout, brownTrout, rainbowTrout } from '../../../forecasting/index.js';
import { type Given, held, judged } from './eggs.js';

/*
 * Just below a limit or a dose raises nothing, just beyond raises the right spell. The limits are those published
 * (tests/references/harm-limits.test.ts names each source and mark; check values "Harm"): Atlantic salmon eggs 12 °C
 * sustained (Gunnes 1979, abstract) and 16 °C (Elliott & Elliott 2010, memory), alevins 22 °C (the same); brown trout 13
 * and 16; brook trout 12.7 (Hokanson et al. 1973, memory). Hours are ours. The logger states 0.2 °C.
 */
const EGG = 50;
const EYED = 150;
const ALEVIN = 210;
/** A crossing takes a tenth of an hour or so on either side: a run of n readings lasts n - 1 hours and a bit. */
/** Only what is too warm: water that warms within an hour is a sudden change besides. */
const warm = (given: Given) => judged(given).filter(({ kind }) => kind === 'too-warm');
const run = (celsius: number, hours: number) => held(celsius, hours + 1);

describe.each([
  ['Atlantic salmon eggs', atlanticSalmon, EGG, 12, 24, 'lowers-survival', 'fertilised'],
  ['eyed Atlantic salmon eggs', atlanticSalmon, EYED, 16, 6, 'lethal', 'eye-up'],
  ['Atlantic salmon alevins', atlanticSalmon, ALEVIN, 22, 6, 'lethal', 'hatch'],
  ['brown trout eggs', brownTrout, EGG, 13, 24, 'lowers-survival', 'fertilised'],
  ['brown trout eggs, upper', brownTrout, EGG, 16, 6, 'lethal', 'fertilised'],
  ['rainbow trout eggs', rainbowTrout, EYED, 18, 6, 'lethal', 'eye-up'],
  ['brook trout eggs', brookTrout, EGG, 12.7, 24, 'lowers-survival', 'fertilised'],
] as const)('%s in warm water', (_, table, from, limit, hours, severity, stage) => {
  const lethalBefore = (celsius: number) =>
    table.harm.some((one) => one.kind === 'warm' && one.severity === 'lethal' && celsius > one.limit);
  it('passed by no more than the logger may be wrong raises nothing of that limit', () => {
    const found = warm({ table, from, hours: run(limit + 0.2, hours + 30) });
    expect(found.filter((spell) => spell.limit?.value === limit)).toEqual([]);
  });
  it('an hour short of the dose raises nothing of that limit', () => {
    const found = warm({ table, from, hours: held(limit + 0.3, hours - 1) });
    expect(found.filter((spell) => spell.limit?.value === limit)).toEqual([]);
  });
  it('just beyond both raises it, with hours, peak and degree-hours', () => {
    const found = warm({ table, from, hours: run(limit + 0.3, hours) });
    expect(lethalBefore(limit + 0.3)).toBe(severity === 'lethal');
    expect(found).toMatchObject([
      { kind: 'too-warm', severity, certainty: 'measured', boxes: ['B1'], eggs: 1000, stages: [stage] },
    ]);
    const [spell] = found;
    expect(spell?.peak).toBeCloseTo(limit + 0.3, 6);
    expect(spell?.hours).toBeGreaterThanOrEqual(hours);
    expect(spell?.hours).toBeLessThan(hours + 0.2);
    // ∫ (T - limit): 0.3 °C over the hours, and the slopes on either side where T is between 0.2 and 0.3 beyond.
    expect(spell?.degreeHours).toBeCloseTo(0.3 * hours, 1);
    expect(spell?.limit).toMatchObject({ value: limit, unit: 'celsius', hours });
    expect(spell?.limit?.sources.length).toBeGreaterThan(0);
  });
});

describe('a limit holds at its stage only', () => {
  it('17 °C kills eggs and not alevins', () => {
    expect(warm({ from: EYED, hours: run(17, 8) })).toMatchObject([{ severity: 'lethal' }]);
    expect(warm({ from: ALEVIN, hours: run(17, 8) })).toEqual([]);
  });
  it('where hatch is not certain the gravest possible stage judges, and both stages are named, likeliest first', () => {
    // Hatch on day 200 ± 10: on day 197 about a third have hatched.
    const [spell] = warm({ from: 197, hours: run(17, 8), spread: 20 });
    expect(spell).toMatchObject({ severity: 'lethal', stages: ['eye-up', 'hatch'] });
    const chances = spell?.touched[0]?.stages.map(({ chance }) => chance) ?? [];
    expect(chances[0]).toBeGreaterThan(0.5);
    expect(chances[1]).toBeGreaterThan(0.2);
  });
  it('long after hatch, when one in twenty may still be an egg at most, the limit of eggs is over', () => {
    expect(warm({ from: 212, hours: run(17, 8), spread: 20 })).toEqual([]);
  });
});

describe('hours are unbroken', () => {
  it('two times four hours above 16 °C with a cool evening between are no six', () => {
    const found = warm({ from: EGG, hours: [...held(17, 4), ...held(8, 6), ...held(17, 4)] });
    expect(found).toEqual([]);
  });
  it('two runs on two days are one spell; a week apart they are two', () => {
    const day = [...run(17, 8), ...held(8, 15)];
    expect(warm({ from: EGG, hours: [...day, ...day] })).toMatchObject([{ severity: 'lethal' }]);
    const apart = [...run(17, 8), ...held(8, 24 * 7), ...run(17, 8)];
    expect(warm({ from: EGG, hours: apart })).toHaveLength(2);
  });
  it('a hole of more than six hours is not bridged', () => {
    const hours = [...held(17, 4), ...held(Number.NaN, 7), ...held(17, 4)];
    const input = warm({ from: EGG, hours });
    expect(input).toEqual([]);
  });
});

describe('sudden change, limit 3 °C an hour (ours; coho bore about 1, Tang, Bryant & Brannon 1987, abstract)', () => {
  it.each([
    [EYED, -3.1, 0],
    [EYED, -3.3, 1],
    [EYED, 3.3, 1],
    // Before the eyed stage nothing was found to be harmed.
    [EGG, -3.3, 0],
    // Well after hatch neither.
    [ALEVIN + 10, -3.3, 0],
  ])('day %i, %f °C within an hour: %i', (from, by, count) => {
    const found = judged({ from, hours: held(5 + by, 12), base: 5 });
    expect(found.filter(({ kind }) => kind === 'sudden-change')).toHaveLength(count);
    if (count === 0) return;
    expect(found[0]).toMatchObject({ kind: 'sudden-change', severity: 'lowers-survival', degreeHours: null });
    expect(Math.abs(found[0]?.peak ?? 0)).toBeCloseTo(3.3, 6);
  });
});

describe('fry near emergence, 7 °C (Elliott 1991, memory; a week and the span are ours)', () => {
  it.each([
    [6.9, 24 * 8, 0],
    [6.7, 24 * 6, 0],
    [6.7, 24 * 7.5, 1],
  ])('%f °C for %i h: %i', (celsius, hours, count) => {
    // The span, 1.6 to 1.7 of the way to hatch, lasts from day 234.3 to 240: eight days with what is possible around.
    const found = judged({ from: 233, hours: held(celsius, hours), spread: 12 });
    expect(found.map(({ kind }) => kind)).toEqual(held(0, count).map(() => 'too-cold'));
  });
});

describe('freezing, bands of the check values (ours; Fletcher et al. 1988 and Osterkamp et al. 1983, abstracts)', () => {
  const frozen = (celsius: number, hours: number, lay: 'in-box' | 'stream' | 'bank' = 'in-box') =>
    judged({ from: EYED, hours: held(celsius, hours), base: 0, lay });
  it('-0.9 °C is -0.7 within what the logger may be wrong: no lethal freezing', () => {
    expect(frozen(-0.9, 12).filter(({ kind }) => kind === 'freezing')).toEqual([]);
  });
  it('-0.95 °C for less than an hour raises no freezing, for an hour a lethal one', () => {
    expect(frozen(-0.95, 1).filter(({ kind }) => kind === 'freezing')).toEqual([]);
    expect(frozen(-0.95, 2)).toMatchObject([
      { kind: 'freezing', severity: 'lethal', certainty: 'measured', peak: -0.95 },
    ]);
    expect(frozen(-0.95, 2)[0]?.mortality).toMatchObject([{ from: 0.99, to: 1 }]);
  });
  it('the same on the bank or elsewhere in the stream says nothing of the box', () => {
    expect([...frozen(-0.95, 12, 'bank'), ...frozen(-0.95, 12, 'stream')]).toEqual([]);
  });
  it('what swings as air does is no ice: one possible exposure of the box, and no temperature spell', () => {
    const air = Array.from({ length: 72 }, (_, h) => -6 + 5 * Math.sin((h * Math.PI) / 12));
    const found = judged({ from: EYED, hours: air, base: 0 });
    expect(found).toMatchObject([{ kind: 'exposure', severity: 'watch', certainty: 'possible' }]);
    expect(judged({ from: EYED, hours: air, base: 0, lay: 'bank' })).toEqual([]);
  });
});

describe('the ice plateau', () => {
  it.each([0.2, 0.1, 0, -0.1, -0.2])(
    '%f °C for five months, logger wrong by a tenth or none, raises nothing',
    (celsius) => {
      for (const accuracy of [0, 0.1, 0.2])
        expect(judged({ from: 30, hours: held(celsius, 24 * 150), base: 1, accuracy })).toEqual([]);
    },
  );
  it('nor does one that wanders within ±0.2 °C', () => {
    const hours = Array.from({ length: 24 * 150 }, (_, h) => 0.2 * Math.sin(h / 7) * Math.cos(h / 91));
    expect(judged({ from: 30, hours, base: 1, accuracy: 0 })).toEqual([]);
  });
  it('cold right after fertilisation is advice before planting, never a spell (Peterson et al. 1977, abstract)', () => {
    expect(judged({ from: 0, hours: held(0.5, 24 * 60), base: 1 })).toEqual([]);
  });
});
