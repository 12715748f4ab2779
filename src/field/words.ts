import type { Remark } from '../../adapters/remark.js';

/** Why an entry waits for a person, and what the faces of entries say; words in src/words/<lang>/field. */
export interface EntryWaitsWords {
  'field-unknown-kind': { readonly kind: string };
  'field-unknown-field': { readonly field: string };
  'field-missing': { readonly field: string };
  'field-not-plain': { readonly field: string };
  'field-future': { readonly when: string };
  'field-box-elsewhere': { readonly box: string; readonly site: string; readonly given: string };
  'field-already-planted': { readonly box: string; readonly lot: string };
  'field-already-there': { readonly id: string };
  'field-box-unknown': { readonly box: string };
  'field-not-lying': { readonly logger: string };
  'field-no-station': { readonly site: string };
}
export type EntryWaitsRemark = Remark<EntryWaitsWords>;

export interface FieldRefusedWords {
  'field-not-a-batch': { readonly places: readonly string[] };
  'field-no-such-entry': { readonly id: string };
  'field-settled': { readonly id: string };
  'field-busy': Record<never, never>;
  'photo-not-one': Record<never, never>;
  'photo-too-large': { readonly megapixels: number; readonly most: number };
  'photo-too-heavy': { readonly megabytes: number };
  'photo-none': { readonly name: string };
}
