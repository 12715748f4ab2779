/** Work goes on for so long, milliseconds, before others are answered. */
const SLICE = 15;

/** Lets others be answered between two steps of work that takes long. */
export class Slices {
  private begun = performance.now();

  /** To be awaited between two steps; gives way only where the thread has been held for a while. */
  async between(): Promise<void> {
    if (performance.now() - this.begun <= SLICE) return;
    await new Promise((resolve) => setImmediate(resolve));
    this.begun = performance.now();
  }
}

/** What steps give at their end, others being answered between them. */
export async function inSlices<T>(steps: Generator<undefined, T>): Promise<T> {
  const slices = new Slices();
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    await slices.between();
  }
}
