/** The part of ml-regression used here; the package ships no types of its own. */
declare module 'ml-regression' {
  export class MultivariateLinearRegression {
    constructor(
      x: readonly (readonly number[])[],
      y: readonly (readonly number[])[],
      options?: { readonly intercept?: boolean; readonly statistics?: boolean },
    );
    /** One row for each predictor (and a last one for the intercept), one column for each output. */
    readonly weights: number[][];
  }
}
