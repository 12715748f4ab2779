/** Why a regression cannot be made. */
export class NoRegression extends Error {
  readonly reason: 'too-few' | 'constant' | 'not-finite' | 'uneven' | 'collinear';

  constructor(reason: NoRegression['reason'], message: string) {
    super(message);
    this.name = 'NoRegression';
    this.reason = reason;
  }
}
