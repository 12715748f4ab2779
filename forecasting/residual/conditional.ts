import { type FadingModel, type FadingSmoother, fadingSmoother, NORMALS_A_DAY } from './fading.js';

/**
 * Possible errors given those that were observed, by conditioning a path drawn without regard to them (Hoffman &
 * Ribak 1991, Astrophys. J. 380:L5-L8: memory): e* = mean(observed) + z − mean(z on the observed days).
 */
export interface ConditionalErrors {
  readonly smoother: FadingSmoother;
  /** Mean error on each day given the observed ones. */
  readonly mean: Float64Array;
  /** Writes path `path` of the error into `out`, an odd one being the mirror image of the one before it. */
  write(path: number, out: Float64Array): void;
}

/**
 * @param errors observed errors; days without one have NaN noise
 * @param wider factor on what is not known, from the calibration
 * @param normals standard normals, NORMALS_A_DAY × days for each pair of paths, from `from` on
 */
export function conditionalErrors(
  model: FadingModel,
  sd: Float64Array,
  noise: Float64Array,
  errors: Float64Array,
  wider: number,
  normals: Float64Array,
): ConditionalErrors {
  const length = sd.length;
  const smoother = fadingSmoother(model, sd, noise);
  const mean = new Float64Array(length);
  smoother.smooth(errors, mean);
  const drawn = new Float64Array(length);
  const seen = new Float64Array(length);
  const free = new Float64Array(length);
  let pair = -1;
  const drawPair = (wanted: number) => {
    const from = wanted * length * NORMALS_A_DAY;
    smoother.draw(normals, from, drawn);
    for (let t = 0; t < length; t++) {
      seen[t] = noise[t] > 0 ? drawn[t] + Math.sqrt(noise[t]) * normals[from + t] : drawn[t];
    }
    smoother.smooth(seen, free);
    for (let t = 0; t < length; t++) free[t] = drawn[t] - free[t];
    pair = wanted;
  };
  return {
    smoother,
    mean,
    write(path, out) {
      if (path < 0) {
        out.set(mean);
        return;
      }
      if (pair !== path >> 1) drawPair(path >> 1);
      const sign = path % 2 === 0 ? wider : -wider;
      for (let t = 0; t < length; t++) out[t] = mean[t] + sign * free[t];
    },
  };
}
