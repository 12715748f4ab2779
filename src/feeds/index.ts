/** Feeds: stations whose readings come by themselves, out of a folder, from an address, or sent to us. */
export { type FeedShown, Feeds, type FeedsOptions } from './feeds.js';
export { addressFor } from './fetch.js';
export type { PushedReading } from './push.js';
export type { FeedRemark } from './remark.js';
export type { TakenIn } from './take-in.js';
