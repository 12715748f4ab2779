export { type Batch, batchSchema, readBatch, type SentEntry, sentEntrySchema } from './batch.js';
export { entryCautions } from './cautions.js';
export { keepPhotograph, MOST_PHOTO_MEGABYTES, photographBytes } from './photographs.js';
export { type Prepared, preparedDay } from './prepared.js';
export { fieldsOf, type Receipt, receiveEntries, settleEntry, whyWaiting } from './receive.js';
export { EntryWaits, FieldRefused } from './refused.js';
export type { EntryWaitsWords, FieldRefusedWords } from './words.js';
