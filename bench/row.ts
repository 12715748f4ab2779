/** One figure beside the same work done the plain way in the same run; a ratio above 1 is better than that. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly reference: { readonly name: string; readonly value: number } | null;
  readonly ratio: number | null;
}
