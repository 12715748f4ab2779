import type { EpochMillis } from '../../../forecasting/units.js';
import type { MessageKind } from './kind.js';

/** What src/feeds finds and tells by itself, with its own marks. */
export interface FeedSilentNews {
  readonly kind: 'feed-silent';
  readonly feed: string;
  readonly since: EpochMillis;
  readonly hours: number;
}

export interface FeedGapNews {
  readonly kind: 'feed-gap';
  readonly feed: string;
  readonly station: string;
  readonly from: EpochMillis;
  readonly to: EpochMillis;
}

export const feedSilentKind: MessageKind<FeedSilentNews> = {
  subject: 'silence',
  passage: (news, { speech: { say }, time }) => ({
    head: say('letter-feed-head', news),
    says: [say('letter-feed-says', { since: time(news.since) })],
    figures: [],
    means: say('letter-feed-means', {}),
    might: say('letter-feed-might', {}),
  }),
};

export const feedGapKind: MessageKind<FeedGapNews> = {
  subject: 'silence',
  passage: (news, { speech: { say }, time, stationName }) => ({
    head: say('letter-gap-head', { station: stationName(news.station) }),
    says: [say('letter-gap-says', { feed: news.feed, from: time(news.from), to: time(news.to) })],
    figures: [],
    means: say('letter-gap-means', {}),
    might: say('letter-gap-might', {}),
  }),
};
