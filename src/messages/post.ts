import type { EpochMillis } from '../../forecasting/units.js';
import type { Delivery, Outbox } from '../store/index.js';
import { type Letter, letterSchema } from './letter.js';
import type { Outcome } from './outcome.js';
import type { Recipient, Recipients } from './people.js';

const MINUTE = 60_000;
/** The pause after a try doubles from a minute to four hours (ours). */
const LONGEST_PAUSE = 240;
const AT_ONCE = 4;

/** The ways a message can go; a way that the settings do not open is null. */
export interface Ways {
  readonly email: ((to: Recipient, letter: Letter) => Promise<Outcome>) | null;
  readonly webhook: (to: Recipient, letter: Letter, signal: AbortSignal) => Promise<Outcome>;
}

export interface PostOptions {
  readonly outbox: Outbox;
  readonly recipients: Recipients;
  readonly ways: Ways;
  /** How long a message is tried before it is given up. */
  readonly hours: number;
  readonly failed: (error: unknown) => void;
}

/** Minutes until the next try, after so many. */
export function pauseMinutes(tries: number): number {
  return Math.min(LONGEST_PAUSE, 2 ** Math.max(0, tries - 1));
}

/** Takes what waits in the outbox to its people, and notes what came of each. */
export class Post {
  constructor(private readonly options: PostOptions) {}

  /** Tries everything that is due, a few at a time. */
  async round(at: EpochMillis, signal: AbortSignal): Promise<void> {
    const due = [...(await this.options.outbox.toSend(at))];
    const carry = async () => {
      for (let one = due.shift(); one !== undefined && !signal.aborted; one = due.shift())
        await this.carry(one, at, signal).catch(this.options.failed);
    };
    await Promise.all(Array.from({ length: AT_ONCE }, carry));
  }

  private async carry(delivery: Delivery, at: EpochMillis, signal: AbortSignal): Promise<void> {
    const { outbox, recipients, hours } = this.options;
    const message = await outbox.message(delivery.message);
    const person = message === null ? null : recipients.find(message.person);
    if (message === null || person === null || person.unsubscribed !== null) {
      await outbox.settle(delivery.number, { state: 'unsubscribed', next: at, at, answer: null });
      return;
    }
    const letter = letterSchema.parse(JSON.parse(message.content));
    if (delivery.channel === 'email' && this.options.ways.email === null) {
      const answer = JSON.stringify({ code: 'delivery-no-server', with: {} });
      const next = at + pauseMinutes(4) * MINUTE;
      const over = at - message.at > hours * 60 * MINUTE;
      await outbox.settle(delivery.number, { state: over ? 'given-up' : 'waiting', next, at, answer });
      return;
    }
    await outbox.begin(delivery.number, at);
    const outcome = await this.send(delivery, person, letter, signal);
    const tries = delivery.tries + 1;
    const next = at + pauseMinutes(tries) * MINUTE;
    const over = next - message.at > hours * 60 * MINUTE;
    const state = {
      delivered: 'delivered',
      refused: 'failed',
      later: over ? 'given-up' : 'waiting',
    } as const;
    await outbox.settle(delivery.number, {
      state: state[outcome.came],
      next: signal.aborted ? at : next,
      at,
      answer: JSON.stringify(outcome.remark),
    });
  }

  private async send(
    { channel }: Delivery,
    person: Recipient,
    letter: Letter,
    signal: AbortSignal,
  ): Promise<Outcome> {
    const { email, webhook } = this.options.ways;
    if (channel === 'mailbox') return { came: 'delivered', remark: { code: 'delivery-here', with: {} } };
    if (channel === 'webhook' && person.webhook !== null) return webhook(person, letter, signal);
    if (channel === 'email' && person.email !== null && email !== null) return email(person, letter);
    return { came: 'refused', remark: { code: 'delivery-no-address', with: {} } };
  }
}
