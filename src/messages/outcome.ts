import type { NetworkRemark } from '../network/index.js';
import type { DeliveryWords } from './words.js';

export type DeliveryRemark =
  | NetworkRemark
  | {
      [Code in keyof DeliveryWords]: { readonly code: Code; readonly with: DeliveryWords[Code] };
    }[keyof DeliveryWords];

/** What came of one try: it arrived, it may arrive later, or never will. */
export interface Outcome {
  readonly came: 'delivered' | 'later' | 'refused';
  readonly remark: DeliveryRemark;
}
