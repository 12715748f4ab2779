import type { CheckKind } from '../../forecasting/quality/finding.js';
import type { LoadedBattery } from '../loading/index.js';
import type { QualityRefusalWords } from './refused.js';

type Nothing = Record<never, never>;

/** A finding's figures by name (forecasting/quality), its flag, and the unit of what is recorded. */
export interface Explained {
  readonly figures: Readonly<Record<string, number>>;
  readonly flag: number;
  readonly unit: string;
}

/** What each check is called, what it says of a stretch, and where its limit comes from. */
type CheckWords = { [Kind in CheckKind as `check-${Kind}`]: Nothing } & {
  [Kind in CheckKind as `finding-${Kind}`]: Explained;
} & { [Kind in CheckKind as `check-source-${Kind}`]: Nothing };

/** The checks of a record, on the page and in the terminal. Instants are epoch milliseconds in `zone`. */
export interface QualityWords extends CheckWords, QualityRefusalWords {
  /** What a file says of the battery of a station's logger; moments in epoch milliseconds. */
  'battery-said': LoadedBattery & { readonly zone: string };
  'quality-still-looking': Nothing;
  'quality-title': Nothing;
  'quality-answer': { readonly doubted: number; readonly ruled: number; readonly offered: number };
  'quality-none': Nothing;
  'quality-more': { readonly more: number };
  'quality-flag': { readonly flag: number };
  'quality-span': { readonly from: number; readonly to: number; readonly zone: string };
  'quality-ruled': {
    readonly verdict: 'good' | 'suspect' | 'fail';
    readonly by: string;
    readonly at: number;
    readonly zone: string;
    readonly reason: string;
  };
  'quality-verdict': Nothing;
  'quality-verdict-good': Nothing;
  'quality-verdict-suspect': Nothing;
  'quality-verdict-fail': Nothing;
  'quality-reason': Nothing;
  'quality-overrule': Nothing;
  'quality-overrule-save': Nothing;
  'quality-ruling-withdraw': Nothing;
  'quality-offer': {
    readonly quantity: 'temperature' | 'clock';
    readonly add: number;
    readonly course: string;
  };
  'quality-offer-accept': Nothing;
  'quality-offer-no-logger': Nothing;
  /** A day number. */
  'quality-fills': { readonly day: number };
  'quality-corrections': Nothing;
  'quality-correction': {
    readonly logger: string;
    readonly quantity: 'temperature' | 'clock';
    readonly add: number;
    readonly course: string;
    readonly by: string;
    readonly at: number;
    readonly zone: string;
  };
  'quality-undo': Nothing;
  'quality-kept': Nothing;
  'cli-checks': Nothing;
  'cli-checks-station': Nothing;
}
