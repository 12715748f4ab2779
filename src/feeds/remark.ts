import type { FeedWords } from '../messages/words.js';
import type { NetworkRemark } from '../network/index.js';

/** What came of asking a feed. */
export type FeedRemark =
  | NetworkRemark
  | { [Code in keyof FeedWords]: { readonly code: Code; readonly with: FeedWords[Code] } }[keyof FeedWords];
