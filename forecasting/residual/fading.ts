/**
 * An error that fades: the sum of a slow part, a fast part and a day's own noise, each with the standard deviation
 * that its season has,
 *
 *     e(t) = u(t) + v(t) + w(t),   u, v Ornstein-Uhlenbeck with times τ₁ and τ₂ (Uhlenbeck & Ornstein 1930),
 *     variances q₁ s(t)², q₂ s(t)², q₃ s(t)², q₁ + q₂ + q₃ = 1.
 *
 * Where s falls (autumn to the ice plateau) a carried error shrinks with it; where s rises (plateau to melt) it is
 * carried as it is and never blown up, so that what was learnt on the plateau says little about the melt. The
 * mean given what was observed comes from a Kalman filter and a Rauch-Tung-Striebel smoother (Rauch, Tung &
 * Striebel 1965, AIAA J. 3:1445-1450: memory), whose gains depend only on which days were observed: they are
 * worked out once and used for the mean and for every trace.
 */
export interface FadingModel {
  /** One figure, or one for each day: how fast what is carried into that day fades. */
  readonly slowDays: number | Float64Array;
  readonly fastDays: number;
  /** Shares of the variance; what is left is the day's own noise. */
  readonly slowShare: number;
  readonly fastShare: number;
}

export interface FadingSmoother {
  readonly length: number;
  /** Mean of u + v given errors on the observed days; `out` may be reused. */
  smooth(errors: Float64Array, out: Float64Array): void;
  /** Variance of u + v + w on a day given the observed days; 0 on an exactly observed day. */
  readonly variance: Float64Array;
  /** One path of u + v + w that nobody observed, from 2 n + n standard normals. */
  draw(normals: Float64Array, from: number, out: Float64Array): void;
}

/** Normals that `draw` takes for a path of `length` days. */
export const NORMALS_A_DAY = 3;

/**
 * @param sd standard deviation of the error on each day, °C
 * @param noise variance of the observation of a day beyond the day's own noise, °C² (0: a measured day);
 *   NaN where the day was not observed
 */
export function fadingSmoother(model: FadingModel, sd: Float64Array, noise: Float64Array): FadingSmoother {
  const n = sd.length;
  const g = gains(model, sd, noise);
  const slow = new Float64Array(n);
  const fast = new Float64Array(n);
  return {
    length: n,
    variance: smoothedVariance(model, sd, noise, g),
    smooth(errors, out) {
      let u = 0;
      let v = 0;
      for (let t = 0; t < n; t++) {
        u *= g.slowKeep[t];
        v *= g.fastKeep[t];
        if (g.slowGain[t] !== 0 || g.fastGain[t] !== 0) {
          const innovation = errors[t] - u - v;
          u += g.slowGain[t] * innovation;
          v += g.fastGain[t] * innovation;
        }
        slow[t] = u;
        fast[t] = v;
      }
      if (n > 0) out[n - 1] = u + v;
      for (let t = n - 2; t >= 0; t--) {
        const du = u - g.slowKeep[t + 1] * slow[t];
        const dv = v - g.fastKeep[t + 1] * fast[t];
        u = slow[t] + g.j11[t] * du + g.j12[t] * dv;
        v = fast[t] + g.j21[t] * du + g.j22[t] * dv;
        out[t] = u + v;
      }
    },
    draw(normals, from, out) {
      let u = 0;
      let v = 0;
      let z = from;
      const own = Math.sqrt(1 - model.slowShare - model.fastShare);
      for (let t = 0; t < n; t++) {
        u = g.slowKeep[t] * u + g.slowStep[t] * normals[z++];
        v = g.fastKeep[t] * v + g.fastStep[t] * normals[z++];
        out[t] = u + v + own * sd[t] * normals[z++];
      }
    },
  };
}

interface Gains {
  readonly slowKeep: Float64Array;
  readonly fastKeep: Float64Array;
  readonly slowStep: Float64Array;
  readonly fastStep: Float64Array;
  readonly slowGain: Float64Array;
  readonly fastGain: Float64Array;
  /** Filtered covariance after each day: p11, p12, p22. */
  readonly filtered: Float64Array;
  /** Predicted covariance of each day. */
  readonly predicted: Float64Array;
  /** Smoother gains from day t + 1 to t. */
  readonly j11: Float64Array;
  readonly j12: Float64Array;
  readonly j21: Float64Array;
  readonly j22: Float64Array;
}

function gains(model: FadingModel, sd: Float64Array, noise: Float64Array): Gains {
  const n = sd.length;
  const column = () => new Float64Array(n);
  const g: Gains = {
    slowKeep: column(),
    fastKeep: column(),
    slowStep: column(),
    fastStep: column(),
    slowGain: column(),
    fastGain: column(),
    filtered: new Float64Array(3 * n),
    predicted: new Float64Array(3 * n),
    j11: column(),
    j12: column(),
    j21: column(),
    j22: column(),
  };
  const { slowDays, slowShare, fastShare } = model;
  const ownShare = 1 - slowShare - fastShare;
  const slow1 =
    typeof slowDays === 'number'
      ? new Float64Array(n).fill(Math.exp(-1 / slowDays))
      : slowDays.map((days) => Math.exp(-1 / days));
  const fast1 = Math.exp(-1 / model.fastDays);
  let p11 = 0;
  let p12 = 0;
  let p22 = 0;
  for (let t = 0; t < n; t++) {
    const now = sd[t] * sd[t];
    const before = t > 0 ? sd[t - 1] * sd[t - 1] : 0;
    const shrink = t > 0 && now < before ? Math.sqrt(now / before) : 1;
    const a = t > 0 ? slow1[t] * shrink : 0;
    const b = t > 0 ? fast1 * shrink : 0;
    const qa = slowShare * (now - a * a * before);
    const qb = fastShare * (now - b * b * before);
    g.slowKeep[t] = a;
    g.fastKeep[t] = b;
    g.slowStep[t] = Math.sqrt(Math.max(0, qa));
    g.fastStep[t] = Math.sqrt(Math.max(0, qb));
    p11 = a * a * p11 + qa;
    p12 *= a * b;
    p22 = b * b * p22 + qb;
    store(g.predicted, t, p11, p12, p22);
    if (!Number.isNaN(noise[t])) {
      const total = p11 + 2 * p12 + p22 + ownShare * now + noise[t];
      const k1 = (p11 + p12) / total;
      const k2 = (p12 + p22) / total;
      g.slowGain[t] = k1;
      g.fastGain[t] = k2;
      const c1 = p11 + p12;
      const c2 = p12 + p22;
      p11 -= k1 * c1;
      p12 -= k1 * c2;
      p22 -= k2 * c2;
    }
    store(g.filtered, t, p11, p12, p22);
  }
  smootherGains(g, n);
  return g;
}

function store(columns: Float64Array, t: number, p11: number, p12: number, p22: number): void {
  columns[3 * t] = p11;
  columns[3 * t + 1] = p12;
  columns[3 * t + 2] = p22;
}

/** J = P(t|t) Φᵀ P(t+1|t)⁻¹. */
function smootherGains(g: Gains, n: number): void {
  for (let t = 0; t < n - 1; t++) {
    const f11 = g.filtered[3 * t];
    const f12 = g.filtered[3 * t + 1];
    const f22 = g.filtered[3 * t + 2];
    const p11 = g.predicted[3 * t + 3];
    const p12 = g.predicted[3 * t + 4];
    const p22 = g.predicted[3 * t + 5];
    const a = g.slowKeep[t + 1];
    const b = g.fastKeep[t + 1];
    const det = p11 * p22 - p12 * p12;
    if (!(det > 0)) continue;
    g.j11[t] = (f11 * a * p22 - f12 * b * p12) / det;
    g.j12[t] = (f12 * b * p11 - f11 * a * p12) / det;
    g.j21[t] = (f12 * a * p22 - f22 * b * p12) / det;
    g.j22[t] = (f22 * b * p11 - f12 * a * p12) / det;
  }
}

function smoothedVariance(model: FadingModel, sd: Float64Array, noise: Float64Array, g: Gains): Float64Array {
  const n = sd.length;
  const variance = new Float64Array(n);
  const own = 1 - model.slowShare - model.fastShare;
  let s11 = 0;
  let s12 = 0;
  let s22 = 0;
  for (let t = n - 1; t >= 0; t--) {
    const f11 = g.filtered[3 * t];
    const f12 = g.filtered[3 * t + 1];
    const f22 = g.filtered[3 * t + 2];
    if (t === n - 1) {
      s11 = f11;
      s12 = f12;
      s22 = f22;
    } else {
      const p11 = g.predicted[3 * t + 3];
      const p12 = g.predicted[3 * t + 4];
      const p22 = g.predicted[3 * t + 5];
      const d11 = s11 - p11;
      const d12 = s12 - p12;
      const d22 = s22 - p22;
      const a = g.j11[t];
      const b = g.j12[t];
      const c = g.j21[t];
      const d = g.j22[t];
      s11 = f11 + a * a * d11 + 2 * a * b * d12 + b * b * d22;
      s12 = f12 + a * c * d11 + (a * d + b * c) * d12 + b * d * d22;
      s22 = f22 + c * c * d11 + 2 * c * d * d12 + d * d * d22;
    }
    const exact = noise[t] === 0;
    variance[t] = exact ? 0 : Math.max(0, s11 + 2 * s12 + s22) + own * sd[t] * sd[t];
  }
  return variance;
}
