/** What is taken from jstat, which ships no types. */
declare module 'jstat' {
  interface Quantiles {
    readonly studentt: {
      inv(probability: number, degreesOfFreedom: number): number;
      cdf(t: number, degreesOfFreedom: number): number;
    };
    /** Natural logarithm of Γ. */
    gammaln(x: number): number;
    readonly normal: {
      inv(probability: number, mean: number, deviation: number): number;
      cdf(x: number, mean: number, deviation: number): number;
      pdf(x: number, mean: number, deviation: number): number;
    };
  }
  const jStat: Quantiles;
  export default jStat;
}
