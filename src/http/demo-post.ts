import type { DayNumber } from '../../forecasting/units.js';
import { type Messages, noonOf, type Post, type Recipients } from '../messages/index.js';

/** Days before the one the demonstration stands at on which it looked what was news. */
const LOOKED = [28, 21, 14, 7];

/** Two invented people, one for each language. */
export function inventedPeople(recipients: Recipients): void {
  const quiet = { from: '21:00', to: '07:00' };
  recipients.add({ name: 'Mara Quell', language: 'en', email: 'mara@example.org', weekly: 1, quiet });
  recipients.add({ name: 'Odile Fauvert', language: 'fr', email: 'odile@example.org', weekly: 5, quiet });
}

/** What would have been told in the weeks before, had the service run. */
export async function inventedPast(messages: Messages, post: Post, standingAt: DayNumber): Promise<void> {
  for (const back of LOOKED) {
    const day = standingAt - back;
    const at = noonOf(day);
    await messages.judge(day, at);
    await messages.compose(day, at);
    await post.round(at, new AbortController().signal);
  }
}
