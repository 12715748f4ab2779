import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  betaBinomial,
  type Counted,
  compareGroups,
  countingError,
  holm,
  MANY_BOXES,
  ofFertilised,
  quasiBinomial,
  sharedBy,
  wilson,
  worthFewer,
} from '../../../forecasting/survival/index.js';
import { askR, vector } from '../../references/r.js';

/** Crowder 1978, Applied Statistics 27:34-37: germinated seeds in five groups (data: memory). */
const CROWDER: readonly Counted[] = [
  { seen: 10, of: 39 },
  { seen: 23, of: 62 },
  { seen: 23, of: 81 },
  { seen: 26, of: 51 },
  { seen: 17, of: 39 },
];
/** Invented tallies of two other sites. */
const FORD: readonly Counted[] = [
  { seen: 812, of: 1000 },
  { seen: 744, of: 1000 },
  { seen: 790, of: 990 },
];
const BRAID: readonly Counted[] = [
  { seen: 402, of: 1000 },
  { seen: 515, of: 900 },
];
const rows = (boxes: readonly Counted[]) =>
  `x <- ${vector(boxes.map(({ seen }) => seen))}; n <- ${vector(boxes.map(({ of }) => of))}`;

describe('Wilson’s interval', () => {
  // Newcombe 1998, Statistics in Medicine 17:857-872, method 3.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i is %f to %f', (seen, of, from, to) => {
    const interval = wilson({ seen, of });
    expect(interval?.from).toBeCloseTo(from, 4);
    expect(interval?.to).toBeCloseTo(to, 4);
  });

  it('there is no share of no eggs', () => {
    expect(wilson({ seen: 0, of: 0 })).toBeNull();
    expect(sharedBy([])).toBeNull();
    expect(sharedBy([{ seen: 0, of: 0 }])).toBeNull();
    expect(
      quasiBinomial([
        { seen: 0, of: 0 },
        { seen: 0, of: 0 },
      ]),
    ).toBeNull();
  });
});

describe('groups that differ more than chance', () => {
  // Values of the check table, computed in R from Crowder's data.
  it('Crowder’s five groups', () => {
    const quasi = quasiBinomial(CROWDER);
    // R stops its iterations a little short: 2.43989 when it goes on (see below).
    expect(quasi?.dispersion).toBeCloseTo(2.43991, 4);
    expect(quasi?.from).toBeCloseTo(0.2489, 4);
    expect(quasi?.to).toBeCloseTo(0.4971, 4);
    const beta = betaBinomial(CROWDER);
    expect(beta?.share).toBeCloseTo(0.36867, 5);
    expect(beta?.rho).toBeCloseTo(0.01732, 5);
    expect(beta?.minusLogLikelihood).toBeCloseTo(14.9435, 4);
  });

  it('R gives the same on the same tallies', () => {
    const [quasi, beta, two, adjusted] = askR(`
      ${rows(FORD)}
      m <- glm(cbind(x, n - x) ~ 1, family = quasibinomial, control = list(epsilon = 1e-14)); s <- summary(m)
      ci <- plogis(coef(m) + c(-1, 1) * qt(0.975, length(x) - 1) * s$coefficients[2])
      say(c(s$dispersion, ci))
      ${rows(CROWDER)}
      f <- function(v) { r <- plogis(v[2]); a <- plogis(v[1]) * (1/r - 1); b <- plogis(-v[1]) * (1/r - 1)
        -sum(lchoose(n, x) + lbeta(x + a, n - x + b) - lbeta(a, b)) }
      o <- optim(c(-0.5, -4), f, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-14))
      se <- sqrt(solve(o$hessian)[1, 1])
      say(c(plogis(o$par[1] + c(-1, 0, 1) * qnorm(0.975) * se), plogis(o$par[2])))
      x <- ${vector([...FORD, ...BRAID].map(({ seen }) => seen))}
      n <- ${vector([...FORD, ...BRAID].map(({ of }) => of))}
      g <- factor(${vector([...FORD.map(() => 1), ...BRAID.map(() => 2)])})
      say(summary(glm(cbind(x, n - x) ~ g, family = quasibinomial, control = list(epsilon = 1e-14)))$coefficients[2, c(1, 4)])
      say(p.adjust(c(0.01, 0.04, 0.03, 0.005, 0.8), "holm"))`);
    const ours = quasiBinomial(FORD);
    expect([ours?.dispersion, ours?.from, ours?.to].map((one) => one?.toFixed(8))).toEqual(
      quasi.map((one) => one.toFixed(8)),
    );
    const fitted = betaBinomial(CROWDER);
    for (const [i, value] of [fitted?.from, fitted?.share, fitted?.to, fitted?.rho].entries())
      expect(value).toBeCloseTo(beta[i], 4);
    const [compared] = compareGroups([
      { name: 'ford', boxes: FORD },
      { name: 'braid', boxes: BRAID },
    ]);
    expect(compared).toMatchObject({ higher: 'ford', lower: 'braid' });
    expect(compared.difference).toBeCloseTo(Math.abs(two[0]), 8);
    expect(compared.p).toBeCloseTo(two[1], 8);
    for (const [i, one] of holm([0.01, 0.04, 0.03, 0.005, 0.8]).entries())
      expect(one).toBeCloseTo(adjusted[i], 12);
  });

  it('holds near its level where a pooled interval does not', () => {
    // 4 boxes of 200 eggs, rho 0.08 (check table: quasi-binomial with t 95-100 %, pooled Wilson 36 %), drawn by R.
    const [x] = askR(`set.seed(7); mu <- 0.75; s <- 1/0.08 - 1
      say(rbinom(4 * 400, 200, rbeta(4 * 400, mu * s, (1 - mu) * s)))`);
    let [grouped, pooled] = [0, 0];
    for (let i = 0; i < x.length; i += 4) {
      const boxes = x.slice(i, i + 4).map((seen) => ({ seen, of: 200 }));
      const interval = sharedBy(boxes);
      const all = wilson({ seen: boxes.reduce((sum, { seen }) => sum + seen, 0), of: 800 });
      if (interval !== null && interval.from <= 0.75 && interval.to >= 0.75) grouped++;
      if (all !== null && all.from <= 0.75 && all.to >= 0.75) pooled++;
    }
    expect(grouped / 400).toBeGreaterThan(0.92);
    expect(pooled / 400).toBeLessThan(0.6);
  });

  it('the number of boxes chooses the method, and the interval always holds the share', () => {
    const box = fc
      .integer({ min: 1, max: 2000 })
      .chain((of) => fc.record({ of: fc.constant(of), seen: fc.nat(of) }));
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 24 }), (boxes) => {
        const shared = sharedBy(boxes);
        expect(shared).not.toBeNull();
        if (shared === null) return;
        expect(shared.from).toBeLessThanOrEqual(shared.share + 1e-9);
        expect(shared.to).toBeGreaterThanOrEqual(shared.share - 1e-9);
        expect(shared.from).toBeGreaterThanOrEqual(0);
        expect(shared.to).toBeLessThanOrEqual(1);
        if (boxes.length === 1) expect(shared.method).toBe('wilson');
        else if (boxes.length < MANY_BOXES) expect(shared.method).toBe('quasi-binomial');
        expect(shared.few).toBe(boxes.length === 2 || boxes.length === 3);
      }),
      { numRuns: 60 },
    );
  });

  it('one box a group: nothing can be compared', () => {
    const groups = [FORD, BRAID].map((boxes, i) => ({ name: `${i}`, boxes: boxes.slice(0, 1) }));
    expect(compareGroups(groups)).toEqual([]);
  });
});

describe('what is carried along', () => {
  it('survival of the fertilised: wider by the control’s own error, as a simulation in R says', () => {
    const survival = wilson({ seen: 640, of: 1000 });
    if (survival === null) throw new Error('no interval');
    const corrected = ofFertilised(survival, { seen: 88, of: 100 });
    const [[from, to]] = askR(`set.seed(3)
      s <- rbinom(2e5, 1000, 0.64) / 1000; f <- rbinom(2e5, 100, 0.88) / 100
      say(quantile(s / f, c(0.025, 0.975)))`);
    expect(corrected?.share).toBeCloseTo(0.64 / 0.88, 10);
    expect(Math.abs((corrected?.from ?? 0) - from)).toBeLessThan(0.008);
    expect(Math.abs((corrected?.to ?? 0) - to)).toBeLessThan(0.008);
    expect(ofFertilised(survival, { seen: 0, of: 0 })).toBeNull();
    expect(ofFertilised(survival, { seen: 0, of: 50 })).toBeNull();
    expect(ofFertilised(survival, { seen: 30, of: 50 })?.share).toBe(1);
  });

  it('two counters: the error of a count widens one box’s interval', () => {
    expect(countingError([])).toBeNull();
    expect(countingError([4, 2])).toBeCloseTo(Math.sqrt(5), 12);
    const [alone, both] = [
      wilson({ seen: 700, of: 1000 }),
      wilson(worthFewer({ seen: 700, of: 1000 }, 30, 2)),
    ];
    // Errors of the two add: 0.01449² + (30/1000)²/2.
    const error = Math.sqrt(0.21 / 1000 + 0.03 ** 2 / 2);
    expect((both?.to ?? 0) - (both?.from ?? 0)).toBeCloseTo(2 * 1.96 * error, 2);
    expect(both?.to).toBeGreaterThan(alone?.to ?? 1);
    expect(worthFewer({ seen: 0, of: 0 }, 3, 2)).toEqual({ seen: 0, of: 0 });
  });
});
