import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../forecasting/quality/index.js';
import { withCorrections } from '../../src/group/deployment-checks.js';
import { flagOfVerdict, flagsOf } from '../../src/group/judging/flags.js';
import type { Correction, Ruling } from '../../src/season/index.js';
import { correctionAt, flagged } from '../../src/store/corrections.js';

const START = Date.UTC(2026, 0, 1);
const HOUR = 3_600_000;
const moment = (hour: number) => new Date(START + hour * HOUR).toISOString().replace('.000Z', 'Z');
const at = Float64Array.from({ length: 60 }, (_, i) => START + i * HOUR);

const stretch = fc.tuple(fc.nat(59), fc.nat(59)).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const kind = fc.constantFrom('spike', 'in-air', 'frozen-in', 'flat-line');
const finding: fc.Arbitrary<Finding> = fc
  .tuple(stretch, kind, fc.constantFrom(1, 3, 4))
  .map(([[from, to], check, flag]) => ({
    kind: check,
    from: START + from * HOUR,
    to: START + to * HOUR,
    flag,
    figures: {},
    offer: null,
  }));
const ruling: fc.Arbitrary<Ruling> = fc
  .tuple(stretch, kind, fc.constantFrom('good', 'suspect', 'fail'))
  .map(([[from, to], check, verdict]) => ({
    station: 'pool',
    quantity: 'temperature',
    check,
    from: moment(from),
    to: moment(to),
    verdict,
    reason: 'seen',
    by: 'Rose',
    at: moment(100),
  }));

const entries = (flags: ReturnType<typeof flagsOf>) =>
  flags.map((one) => ({ ...one, station: 'pool', quantity: 'temperature' as const, by: 'checks', at: 0 }));

test('a person’s ruling wins over the check it speaks about; every reading keeps a flag', () => {
  fc.assert(
    fc.property(fc.array(finding, { maxLength: 6 }), ruling, (findings, one) => {
      const flags = flagsOf({ first: at[0], beforeLast: at[58] }, findings, [one]);
      const flag = flagged(at, entries(flags));
      expect(flag).toHaveLength(at.length);
      at.forEach((instant, i) => {
        if (instant < Date.parse(one.from) || instant > Date.parse(one.to)) return;
        if (one.verdict !== 'good') expect(flag[i]).toBe(flagOfVerdict[one.verdict]);
        else {
          const others = findings.filter(
            ({ kind: check, from, to }) => check !== one.check && from <= instant && instant <= to,
          );
          expect(flag[i]).toBe(
            Math.max(i === 59 ? 2 : 1, ...others.map((other) => (other.flag === 1 ? 0 : other.flag))),
          );
        }
      });
    }),
  );
});

test('without a ruling the gravest finding counts; outside of all a reading passes, the newest is not evaluated yet', () => {
  fc.assert(
    fc.property(fc.array(finding, { maxLength: 6 }), (findings) => {
      const flag = flagged(at, entries(flagsOf({ first: at[0], beforeLast: at[58] }, findings, [])));
      at.forEach((instant, i) => {
        const here = findings.filter(
          ({ from, to, flag: grave }) => grave >= 3 && from <= instant && instant <= to,
        );
        expect(flag[i]).toBe(here.length > 0 ? Math.max(...here.map((one) => one.flag)) : i === 59 ? 2 : 1);
      });
    }),
  );
});

describe('accepted corrections beside checks', () => {
  const correction = (one: Partial<Correction>): Correction => ({
    quantity: 'temperature',
    course: 'check',
    from: moment(0),
    to: moment(10),
    add: 0,
    check: 'plateau-bias',
    by: 'Rose',
    at: moment(100),
    ...one,
  });
  const hour = (n: number) => START + n * HOUR;

  test('a check at the plateau joins those in the ice bath: straight lines between them', () => {
    const checks = withCorrections(
      [{ at: hour(0), add: -0.1 }],
      [correction({ from: moment(10), add: -0.2 })],
      'temperature',
    );
    expect([0, 5, 10, 50].map((n) => correctionAt(checks, hour(n)))).toEqual([
      -0.1,
      expect.closeTo(-0.15, 9),
      -0.2,
      -0.2,
    ]);
  });

  test('a clock set right from a moment on leaves what was before; a drift grows to its end and stays', () => {
    const clock = (one: Partial<Correction>) =>
      withCorrections([], [correction({ quantity: 'clock', check: 'clock', ...one })], 'clock');
    const step = clock({ course: 'step', from: moment(5), add: 3600 });
    expect([0, 4, 5, 9].map((n) => correctionAt(step, hour(n)))).toEqual([0, 0, HOUR, HOUR]);
    const drift = clock({ course: 'rising', from: moment(0), to: moment(10), add: -3600 });
    expect([0, 5, 10, 20].map((n) => Math.round(correctionAt(drift, hour(n))))).toEqual([
      0,
      -HOUR / 2,
      -HOUR,
      -HOUR,
    ]);
    expect(withCorrections([], [correction({ quantity: 'clock' })], 'temperature')).toEqual([]);
  });
});
