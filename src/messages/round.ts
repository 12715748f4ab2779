import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import type { Feeds } from '../feeds/index.js';
import { Loop } from './loop.js';
import type { Messages } from './messages.js';
import type { Post } from './post.js';

/** How often it is looked whether something is due. */
const EVERY = 5000;
/** A series of loads is judged once: only when nothing was written for so long. */
const REST = 20_000;
/** Where something is written all the time, it is judged this long after the first all the same. */
const AT_LATEST = 40_000;
/** What could not be judged is judged again so long after. */
const AGAIN = 60_000;
/** On start what feeds missed is waited for, but not longer than this: a provider that hangs hides no spell (ours). */
const FIRST_WAIT = 120_000;

export interface RoundOptions {
  readonly messages: Messages;
  readonly post: Post;
  readonly feeds: Feeds;
  /** Counts what was written to the group. */
  readonly revision: () => number;
  /** Years that were loaded are still being looked at: nothing is judged before, or much would be told and taken back. */
  readonly stillChecking?: () => boolean;
  readonly today: () => Promise<DayNumber>;
  readonly now: () => EpochMillis;
  /** Done once before the first round: what was being sent when the service ended waits again. */
  readonly first: (at: EpochMillis) => Promise<void>;
  readonly failed: (error: unknown) => void;
  /** Milliseconds without a write before it is judged. */
  readonly rest?: number;
  /** Milliseconds between two looks. */
  readonly every?: number;
}

/**
 * The rounds of the service, each on its own so that none holds another up: ask the feeds that are due; judge what is
 * news where something was written or a day began, and write the messages that are due; send what waits. On start every
 * feed is asked first and everything judged once, so that a time out of service ends in one message.
 */
export class Round {
  private readonly ending = new AbortController();
  private readonly loops: { readonly asking: Loop; readonly judging: Loop; readonly sending: Loop };
  private judged = { revision: -1, day: Number.NaN };
  private seen = { revision: -1, at: 0, since: 0 };
  private ready: Promise<void> | null = null;
  private asked: () => void = () => undefined;
  private readonly allAsked = new Promise<void>((resolve) => {
    this.asked = resolve;
  });
  /** When a judging that failed is tried again. */
  private again = Number.POSITIVE_INFINITY;

  constructor(private readonly options: RoundOptions) {
    const loop = (work: () => Promise<void>) =>
      new Loop(work, options.every ?? EVERY, this.ending.signal, options.failed);
    this.loops = {
      asking: loop(() => this.ask()),
      judging: loop(() => this.judge()),
      sending: loop(() => this.send()),
    };
  }

  start(): void {
    this.wake();
  }

  /** Goes round now instead of in a while. */
  wake(): void {
    const { asking, judging } = this.loops;
    asking.wake();
    judging.wake();
  }

  /** Lets the conversation that runs come to its end, and begins none. */
  async stop(): Promise<void> {
    this.ending.abort();
    this.asked();
    const { asking, judging, sending } = this.loops;
    await Promise.all([asking.ended(), judging.ended()]);
    await sending.ended();
  }

  private begun(): Promise<void> {
    this.ready ??= this.options.first(this.options.now()).catch((error: unknown) => {
      this.ready = null;
      throw error;
    });
    return this.ready;
  }

  private async ask(): Promise<void> {
    const { feeds, now } = this.options;
    const begins = this.ready === null;
    try {
      await this.begun();
      await feeds.round(now(), this.ending.signal, begins);
    } finally {
      this.asked();
    }
  }

  private async judge(): Promise<void> {
    const { messages, now, today, revision } = this.options;
    const { signal } = this.ending;
    const begins = Number.isNaN(this.judged.day);
    if (begins) await this.firstAsked();
    await this.begun();
    if (signal.aborted) return;
    const day = await today();
    if (this.toJudge(day, begins)) {
      this.judged = { revision: revision(), day };
      this.again = (await messages.judge(day, now())) ? Number.POSITIVE_INFINITY : Date.now() + AGAIN;
    }
    if (signal.aborted) return;
    await messages.compose(day, now());
    this.loops.sending.wake();
  }

  private async send(): Promise<void> {
    await this.options.post.round(this.options.now(), this.ending.signal);
  }

  /** Once every feed has been asked, or after a while. */
  private async firstAsked(): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, FIRST_WAIT);
    });
    await Promise.race([this.allAsked, late]);
    clearTimeout(timer);
  }

  private toJudge(day: DayNumber, begins: boolean): boolean {
    if (this.options.stillChecking?.() === true) return false;
    const revision = this.options.revision();
    const at = Date.now();
    if (revision !== this.seen.revision) {
      const since = this.seen.revision === this.judged.revision ? at : this.seen.since;
      this.seen = { revision, at, since };
    }
    if (begins || day !== this.judged.day || at >= this.again) return true;
    const { rest = REST } = this.options;
    return (
      revision !== this.judged.revision && (at - this.seen.at >= rest || at - this.seen.since >= AT_LATEST)
    );
  }
}
