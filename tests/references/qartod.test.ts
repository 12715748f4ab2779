import { describe, expect, test } from 'vitest';
import { flatLine, grossRange, rateOfChange, spike } from '../../forecasting/quality/index.js';
import { outsideSeason } from '../../forecasting/quality/qartod/climatology.js';
import { flagged } from '../../src/store/corrections.js';
import { askR, vector } from './r.js';

/*
 * Worked inputs and flags from outside.
 *
 * [implementation] the unit tests of a public implementation of the manuals (github.com/ioos/ioos_qc,
 *   tests/test_qartod.py at c91d50c3 and 0166080e, seen 27 November 2026); numbers only.
 * [manual] the condition tables of the QARTOD manuals for gliders (temperature and salinity), pH and wind
 *   (github.com/ioos/qartod_manuals, ocefpaf/qartod_manuals, seen the same day). The manual for in-situ temperature and
 *   salinity (v2.0 2016, DOI 10.7289/V5V40SD4) was not at hand; its siblings word tests 4 to 8 alike.
 */
const MINUTE = 60_000;
const every = (minutes: number, values: readonly number[]) =>
  Float64Array.from(values, (_, i) => i * minutes * MINUTE);
const none = Number.NaN;

describe('worked examples of the QARTOD tests', () => {
  test('gross range: a value on a limit is within it [implementation]', () => {
    const limits = { fail: [10, 50], suspect: [20, 40] } as const;
    expect([...grossRange([5, 10, 15, 20, 25, 30, 35, 40, 45, 51], limits)]).toEqual([
      4, 3, 3, 1, 1, 1, 1, 1, 3, 4,
    ]);
    expect([...grossRange([none, 10, 15, 20, 25, 30, 35, 40, none, 51], limits)]).toEqual([
      9, 3, 3, 1, 1, 1, 1, 1, 9, 4,
    ]);
  });

  test('climatology: suspect outside the season, never failed; not judged where no season is known [implementation, manual]', () => {
    const season = { low: 10, high: 20, years: 3 };
    expect([9, 10, 11, 20, 21].map((value) => outsideSeason(value, season, 0))).toEqual([3, 1, 1, 1, 3]);
    expect(
      outsideSeason(21, { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY, years: 0 }, 0),
    ).toBe(2);
    // The glider manual's own figures: spring from 12 to 18 °C.
    expect(
      [11.9, 12, 18, 18.1].map((value) => outsideSeason(value, { low: 12, high: 18, years: 3 }, 0)),
    ).toEqual([3, 1, 1, 3]);
  });

  test('spike: n−1 against the mean of its neighbours; first and newest stay 2 [implementation]', () => {
    const limits = { suspect: 25, fail: 50 };
    const high = [10, 12, 999.99, 13, 15, 40, 9, 9];
    expect([...spike(every(15, high), high, limits)]).toEqual([2, 4, 4, 4, 1, 3, 1, 2]);
    const low = high.map((one) => -one);
    expect([...spike(every(15, low), low, limits)]).toEqual([2, 4, 4, 4, 1, 3, 1, 2]);
    const flat = [-100, -99, -99, -98];
    expect([...spike(every(15, flat), flat, limits)]).toEqual([2, 1, 1, 2]);
    const real = [
      -0.189, -0.0792, -0.0122, 0.0457, 0.0671, 0.0213, -0.0488, -0.1463, -0.2438, -0.3261, -0.3871, -0.4054,
      -0.3932, -0.3383, -0.2804, -0.2347, -0.2134, -0.2347, -0.2926, -0.3597, -0.442, -0.509, 0, -0.5944,
      -0.57, -0.4267, -0.2926, -0.1585, -0.0945, -0.0762,
    ];
    expect([...spike(every(15, real), real, { suspect: 0.5, fail: 1 })]).toEqual(
      real.map((_, i) => (i === 0 || i === real.length - 1 ? 2 : i === 22 ? 3 : 1)),
    );
    const mixed = [3, 4.99, 5, 6, 8, 6, 6, 6.75, 6, 6, 5.3, 6, 6, 9, 5];
    expect([...spike(every(15, mixed), mixed, { suspect: 0.5, fail: 1 })]).toEqual([
      2, 3, 1, 1, 4, 3, 1, 3, 1, 1, 3, 1, 4, 4, 2,
    ]);
  });

  /**
   * Ours differs: where a neighbour is missing the implementation gives 9 or 1, by how its masked arithmetic comes out;
   * the reading has a value and could not be judged, which is 2.
   */
  test('spike: beside a missing value nothing is judged', () => {
    const values = [10, 12, 13, none, 10, 10, 10];
    expect([...spike(every(15, values), values, { suspect: 25, fail: 50 })]).toEqual([2, 1, 2, 9, 2, 1, 2]);
  });

  /** The implementation takes a fixed rate; ours with no deviations counted (`deviations: 0`) is the same test. */
  test('rate of change against a fixed rate [implementation]', () => {
    const values = [2, 10, 2.1, 3, 4, 5, 7, 10, 0, 2, 2.2, 2, 1, 2, 3, 90, 91, 92, 93, 1, 2, 3, 4, 5];
    const flags = [1, 3, 3, 1, 1, 1, 1, 1, 3, 1, 1, 1, 1, 1, 1, 3, 1, 1, 1, 3, 1, 1, 1, 1];
    // 5 in each step. Ours needs three readings before it can judge: they are put in front.
    const lead = [2, 2, 2];
    const found = rateOfChange(every(60, [...lead, ...values]), [...lead, ...values], 5, { deviations: 0 });
    expect([...found.subarray(lead.length)]).toEqual(flags);
    const below = values.map((one) => -one);
    const leadBelow = lead.map((one) => -one);
    expect([
      ...rateOfChange(every(60, [...leadBelow, ...below]), [...leadBelow, ...below], 5, {
        deviations: 0,
      }).subarray(lead.length),
    ]).toEqual(flags);
    // |Tn − Tn−1| > N_DEV·SD with N_DEV·SD = 2·2, 3·20 and 1·0.5.
    for (const [one, limit, expected] of [
      [[2, 10, 2.1, 3, 4, 5, 7, 10, 0, 2, 2.2, 2], 4, [1, 3, 3, 1, 1, 1, 1, 1, 3, 1, 1, 1]],
      [[1, 2, 3, 90, 91, 92, 93, 1, 2, 3], 60, [1, 1, 1, 3, 1, 1, 1, 3, 1, 1]],
      [[1, 2, 3, 90, 91, 92, 93, 1, 2, 3], 0.5, [1, 3, 3, 3, 3, 3, 3, 3, 3, 3]],
    ] as const) {
      const whole = [one[0], one[0], one[0], ...one];
      expect([...rateOfChange(every(60, whole), whole, limit, { deviations: 0 }).subarray(3)]).toEqual(
        expected,
      );
    }
  });

  /** [manual], example 1 of the pH manual and the temperature tests: three standard deviations of the last 25 hours. */
  test('rate of change: the deviation of the 25 hours before is the one R gives', () => {
    const values = Float64Array.from(
      { length: 60 },
      (_, i) => 8 + 1.3 * Math.sin(i / 3.8) + 0.4 * Math.sin(i * 2.3),
    );
    // R's sd() has n − 1 below the line; a standard deviation of all of them has n.
    const [limits] = askR(`
x <- ${vector(values)}
say(sapply(27:length(x), function(n) { past <- x[(n - 25):(n - 1)]; 3 * sqrt(mean((past - mean(past))^2)) }))
`);
    for (const [k, limit] of limits.entries()) {
      const n = 26 + k;
      for (const [step, flag] of [
        [limit * 0.999, 1],
        [limit * 1.001, 3],
      ]) {
        const tried = Float64Array.from(values.subarray(0, n + 1));
        tried[n] = tried[n - 1] + step;
        expect([n, rateOfChange(every(60, [...tried]), tried, 0)[n]]).toEqual([n, flag]);
      }
    }
  });

  /**
   * The manuals' sentence: the three most recent observations equal are suspect, the five most recent fail. The loop
   * beside it, i = 1 … REP_CNT, asks for three and five *previous* ones; the implementation follows the loop. With the
   * counts one higher ours gives its flags.
   */
  test('flat line [implementation, manual]', () => {
    const loop = () => ({ suspect: 4, fail: 6 });
    const values = [1, 2, 2.0001, 2, 2.0001, 2, 2.0001, 2, 4, 5, 3, 3.0001, 3.0005, 3.00001];
    const flags = [1, 1, 1, 1, 3, 3, 4, 4, 1, 1, 1, 1, 1, 3];
    expect([...flatLine(values, 0.01, loop)]).toEqual(flags);
    expect([
      ...flatLine(
        values.map((one) => -one),
        0.01,
        loop,
      ),
    ]).toEqual(flags);
    expect([...flatLine(values.slice(1), 0.01, loop)]).toEqual([1, 1, 1, 3, 3, 4, 4, 1, 1, 1, 1, 1, 3]);
    for (const [length, expected] of [
      [0, []],
      [1, [1]],
      [2, [1, 1]],
      [3, [1, 1, 1]],
      [4, [1, 1, 1, 3]],
      [5, [1, 1, 1, 3, 3]],
      [6, [1, 1, 1, 3, 3, 4]],
    ] as const)
      expect([
        ...flatLine(
          Array.from({ length }, () => 5),
          0.1,
          loop,
        ),
      ]).toEqual(expected);
    // By the sentence.
    expect([...flatLine(values, 0.01)]).toEqual([1, 1, 1, 3, 3, 4, 4, 4, 1, 1, 1, 1, 3, 3]);
  });

  /**
   * Each is compared with the newest [manual: Tn − Tn−i < EPS], so a slow drift is no flat line. The implementation asks
   * for the range of all of them, which spares one reading more at the eighth place here: it gives 1 there.
   */
  test('flat line: what agrees with the one beside it only is no flat line [implementation, manual]', () => {
    const drifting = Array.from({ length: 40 }, (_, i) => i * 0.009);
    expect([...flatLine(drifting, 0.01)]).toEqual(drifting.map(() => 1));
    const values = [1, 1, 1, 1, 1, 6, 5, 4, 3, 2];
    expect([...flatLine(values, 4, () => ({ suspect: 4, fail: 20 }))]).toEqual([
      1, 1, 1, 3, 3, 1, 1, 3, 3, 3,
    ]);
  });

  /** Of several tests the gravest counts, "not evaluated" below "pass" [implementation]. */
  test('flags of several tests together', () => {
    const tests = [
      [1, 1, 1, 1, 1, 1, 2, 2],
      [2, 1, 1, 1, 1, 1, 2, 2],
      [1, 3, 3, 4, 3, 1, 2, 2],
    ] as const;
    const entries = tests.flatMap((flags, test) =>
      flags.map((flag, i) => ({
        station: 'a',
        quantity: 'temperature' as const,
        from: i,
        to: i,
        flag,
        set: `test ${test}`,
        by: 'checks',
        at: 0,
        note: '',
      })),
    );
    const at = Float64Array.from({ length: 8 }, (_, i) => i);
    // The implementation's example has 9 where one test found no value; a reading that is not there has no row here.
    expect([...flagged(at, entries)]).toEqual([1, 3, 3, 4, 3, 1, 2, 2]);
  });
});
