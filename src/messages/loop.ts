/** Does one thing again and again, never twice at a time, with a pause between. */
export class Loop {
  private timer: NodeJS.Timeout | null = null;
  private running: Promise<void> = Promise.resolve();

  constructor(
    private readonly work: () => Promise<void>,
    private readonly pause: number,
    private readonly signal: AbortSignal,
    private readonly failed: (error: unknown) => void,
  ) {}

  /** Now instead of in a while; after what runs. */
  wake(): void {
    this.rest();
    if (this.signal.aborted) return;
    this.running = this.running
      .then(() => (this.signal.aborted ? undefined : this.work()))
      .catch(this.failed)
      .then(() => this.later());
  }

  /** Once what runs has come to its end; nothing begins after the signal. */
  async ended(): Promise<void> {
    this.rest();
    await this.running;
  }

  private later(): void {
    this.rest();
    if (this.signal.aborted) return;
    this.timer = setTimeout(() => this.wake(), this.pause);
    this.timer.unref();
  }

  private rest(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
  }
}
