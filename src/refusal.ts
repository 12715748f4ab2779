/**
 * What every refusal of the program looks like: a code with its figures, put into words by src/words. `exit` is
 * 2 where the input is refused or a question waits for an answer, 1 where the work failed. The folders that may
 * not import src (adapters, forecasting) throw errors of the same shape.
 */
export abstract class Refusal extends Error {
  abstract readonly remark: { readonly code: string; readonly with: unknown };
  abstract readonly exit: 1 | 2;
}
