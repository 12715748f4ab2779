import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import type { Feeds } from '../feeds/index.js';
import type { Messages } from './messages.js';
import type { Post } from './post.js';

/** How often it is looked whether something is due. */
const EVERY = 5000;
/** A series of loads is judged once: only when nothing was written for so long. */
const REST = 20_000;

export interface RoundOptions {
  readonly messages: Messages;
  readonly post: Post;
  readonly feeds: Feeds;
  /** Counts what was written to the group. */
  readonly revision: () => number;
  readonly today: () => Promise<DayNumber>;
  readonly now: () => EpochMillis;
  /** Done once before the first round: what was being sent when the service ended waits again. */
  readonly first: (at: EpochMillis) => Promise<void>;
  readonly failed: (error: unknown) => void;
}

/**
 * The round of the service: ask the feeds that are due, judge what is news where something was written or a day began,
 * write the messages that are due, send what waits. On start every feed is asked first and everything judged once, so
 * that a time out of service ends in one message.
 */
export class Round {
  private readonly ending = new AbortController();
  private timer: NodeJS.Timeout | null = null;
  private running: Promise<void> = Promise.resolve();
  private judged = { revision: -1, day: Number.NaN };
  private seen = { revision: -1, at: 0 };
  private begun = false;

  constructor(private readonly options: RoundOptions) {}

  start(): void {
    this.wake();
  }

  /** Goes round now instead of in a while. */
  wake(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    if (this.ending.signal.aborted) return;
    this.running = this.running
      .then(() => this.once())
      .catch(this.options.failed)
      .then(() => this.later());
  }

  /** Lets the conversation that runs come to its end, and begins none. */
  async stop(): Promise<void> {
    this.ending.abort();
    if (this.timer !== null) clearTimeout(this.timer);
    await this.running;
  }

  private later(): void {
    if (this.ending.signal.aborted) return;
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(() => this.wake(), EVERY);
    this.timer.unref();
  }

  private async once(): Promise<void> {
    const { messages, post, feeds, now, first, today } = this.options;
    const { signal } = this.ending;
    if (signal.aborted) return;
    const begins = !this.begun;
    if (begins) await first(now());
    await feeds.round(now(), signal, begins);
    this.begun = true;
    if (signal.aborted) return;
    const day = await today();
    if (this.toJudge(day, begins)) {
      this.judged = { revision: this.options.revision(), day };
      await messages.judge(day, now());
    }
    if (signal.aborted) return;
    await messages.compose(day, now());
    await post.round(now(), signal);
  }

  private toJudge(day: DayNumber, begins: boolean): boolean {
    const revision = this.options.revision();
    if (revision !== this.seen.revision) this.seen = { revision, at: Date.now() };
    if (begins || day !== this.judged.day) return true;
    return revision !== this.judged.revision && Date.now() - this.seen.at >= REST;
  }
}
