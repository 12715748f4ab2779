import { describe, expect, it } from 'vitest';
import { brookTrout, daysAtConstant, wayTo } from '../../forecasting/index.js';
import { fitLinear } from '../../forecasting/regression/linear.js';
import { sortedQuantile } from '../../forecasting/windows/draws.js';
import { widerFor } from '../../forecasting/windows/few-winters.js';
import { longley, norris } from '../forecasting/water/references/nist.js';
import { askR, vector } from './r.js';

/** The same numbers by R (R Core Team; `stats`), run beside ours: a second opinion that shares no code with it. */
const WINTERS = [1, 2, 4, 8, 12, 20];
const SHARES = [0.05, 0.1, 0.5, 0.9, 0.95];
const values = Float64Array.from({ length: 37 }, (_, i) => Math.sin(i * 1.7) * 9 + i / 5).sort();
const weights = norris.x.map((_, i) => 1 + (i % 4));
const water = [1.7, 2.5, 3, 6.1, 8.8, 11.9];
/** °F and days. */
const rows = [
  [35, 144],
  [40, 103],
  [45, 68],
  [50, 44],
  [55, 35],
];

const answers = askR(`
x <- ${vector(norris.x)}
y <- ${vector(norris.y)}
line <- lm(y ~ x)
say(c(coef(line), summary(line)$sigma, summary(line)$r.squared))
say(coef(lm(y ~ x, weights = ${vector(weights)})))
many <- lm(Employed ~ ., data = datasets::longley)
say(c(coef(many), summary(many)$sigma))
say(quantile(${vector(values)}, ${vector(SHARES)}, type = 7))
say(qt(0.9, ${vector(WINTERS)} + 2) / qnorm(0.9))
say(exp(approx((${vector(rows.map(([f]) => f))} - 32) / 1.8, log(${vector(rows.map(([, d]) => d))}), ${vector(water)})$y))
`);
const [line, weighted, many, quantiles, wider, brook] = answers;

/** Agrees to so many digits, whatever the size of the number. */
function agrees(ours: number, theirs: number, digits = 9): void {
  expect(Math.abs(ours - theirs)).toBeLessThan(10 ** -digits * Math.max(1, Math.abs(theirs)));
}

describe('R says the same', () => {
  it('of a straight line (Norris), its residual SD and r²', () => {
    const fit = fitLinear([norris.x], norris.y);
    for (const [i, ours] of [fit.intercept, fit.slopes[0], fit.residualSd, fit.r2].entries())
      agrees(ours, line[i]);
  });

  it('of a line through weighted rows', () => {
    const fit = fitLinear([norris.x], norris.y, { weights });
    agrees(fit.intercept, weighted[0]);
    agrees(fit.slopes[0], weighted[1]);
  });

  it('of six predictors that nearly repeat each other (Longley)', () => {
    const columns = [0, 1, 2, 3, 4, 5].map((j) => longley.rows.map((row) => row[j]));
    const fit = fitLinear(
      columns,
      longley.rows.map((row) => row[6]),
    );
    for (const [i, ours] of [fit.intercept, ...fit.slopes, fit.residualSd].entries())
      agrees(ours, many[i], 7);
  });

  it('of quantiles (its type 7)', () => {
    for (const [i, share] of SHARES.entries()) agrees(sortedQuantile(values, share), quantiles[i], 12);
  });

  it('of t over the normal, by which few winters widen an interval', () => {
    for (const [i, winters] of WINTERS.entries()) agrees(widerFor(winters), wider[i], 7);
  });

  it('of days between the rows of brook trout, straight in ln D (Leitritz & Lewis 1976, memory)', () => {
    for (const [i, celsius] of water.entries())
      agrees(daysAtConstant(wayTo(brookTrout, 'hatch'), celsius), brook[i]);
  });
});
