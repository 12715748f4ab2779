/** One figure beside the same work done another way in the same run, or what is promised; a ratio above 1 is better. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly reference: { readonly name: string; readonly value: number };
  readonly ratio: number;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** A row of which less is better. */
export function lessIsBetter(
  name: string,
  value: number,
  unit: string,
  reference: BenchRow['reference'],
): BenchRow {
  return { name, value, unit, reference, ratio: reference.value / value };
}

/** Seconds that a piece of work takes. */
export async function seconds(work: () => Promise<unknown>): Promise<number> {
  const begin = performance.now();
  await work();
  return (performance.now() - begin) / 1000;
}
