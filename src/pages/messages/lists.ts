import type { FeedRemark, FeedShown } from '../../feeds/index.js';
import { type DeliveryRemark, letterSchema, type Recipients } from '../../messages/index.js';
import type { Outbox } from '../../store/index.js';
import { type Language, say } from '../../words/index.js';
import type { DeliveryRow } from './deliveries.js';
import type { FeedLine } from './feeds.js';

type Messages = Awaited<ReturnType<Outbox['messages']>>;

/** Each way of each message, newest first. */
export function deliveryRows(messages: Messages, recipients: Recipients, language: Language): DeliveryRow[] {
  return messages.flatMap(({ message, deliveries }) =>
    deliveries.map(({ channel, state, tries, next, answer }) => ({
      at: message.at,
      to: recipients.find(message.person)?.name ?? null,
      subject: letterSchema.parse(JSON.parse(message.content)).subject,
      channel,
      state,
      tries,
      next,
      answer:
        channel === 'none'
          ? say(language, { code: 'delivery-no-address', with: {} })
          : said(answer, language),
      seenBy: message.acknowledged?.by ?? null,
    })),
  );
}

export function feedLines(feeds: readonly FeedShown[], language: Language): FeedLine[] {
  return feeds.map((feed) => ({ ...feed, answer: said(feed.row?.answer ?? null, language) }));
}

/** A kept remark in words. */
export function said(kept: string | null, language: Language): string | null {
  if (kept === null) return null;
  const remark: DeliveryRemark | FeedRemark = JSON.parse(kept);
  return say(language, remark);
}
