export { keepEarlier, withdrawEarlier } from './keep.js';
export { EarlierRefused } from './refused.js';
export {
  type Columns,
  type EarlierField,
  type EarlierTable,
  earlierFields,
  isEarlierField,
  readEarlier,
} from './table.js';
export type { EarlierWords } from './words.js';
