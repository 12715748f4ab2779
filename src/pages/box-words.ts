type Nothing = Record<never, never>;

/** A box's page. Days are day numbers. */
export interface BoxPageWords {
  'page-box-title': { readonly box: string; readonly day: number };
  'page-box-answer': {
    readonly box: string;
    readonly eggs: number;
    /** Null where nothing is known. */
    readonly now: string | null;
    /** The stage itself: each language has its own form of it. */
    readonly next: string | null;
    readonly median: number | null;
    readonly from: number | null;
    readonly to: number | null;
  };
  'page-box-windows': Nothing;
  'page-box-windows-whole': Nothing;
  'page-box-windows-lot': { readonly lot: string; readonly eggs: number };
  'page-box-first': Nothing;
  'page-box-median': Nothing;
  'page-box-last': Nothing;
  'page-box-passed': Nothing;
  'page-box-outside': Nothing;
  'page-box-windows-note': Nothing;
  'page-box-old-rule': Nothing;
  'page-box-old-rule-date': { readonly units: number; readonly day: number };
  'page-box-progress': Nothing;
  'page-box-progress-finding': { readonly lot: string; readonly share: string; readonly stage: string };
  'page-box-progress-unit': { readonly stage: string };
  'page-box-units-finding': { readonly lot: string; readonly units: number };
  'page-box-units-unit': Nothing;
  'page-box-water': Nothing;
  'page-box-water-finding': {
    readonly station: string;
    readonly measured: number;
    readonly filled: number;
    readonly projected: number;
  };
  'page-box-water-none': Nothing;
  'page-box-water-unit': Nothing;
  'page-box-water-key': Nothing;
  'page-box-filled': Nothing;
  'page-box-filled-none': Nothing;
  'page-box-filled-days': Nothing;
  'page-box-filled-from': Nothing;
  'page-box-weight': Nothing;
  'page-box-slope': Nothing;
  'page-box-intercept': Nothing;
  'page-box-n': Nothing;
  'page-box-error': Nothing;
  'page-box-scatter-link': { readonly from: string; readonly to: string };
  'page-box-scatter-title': { readonly box: string };
  'page-box-scatter-answer': { readonly count: number };
  'page-box-scatter-finding': {
    readonly station: string;
    readonly from: string;
    readonly n: number;
    readonly error: number;
  };
  'page-box-scatter-note': Nothing;
  'page-box-method': Nothing;
  'page-box-assumes': Nothing;
  'page-box-sharpen': Nothing;
  'page-box-observed': Nothing;
  'page-box-observed-none': Nothing;
  'page-box-observed-row': {
    readonly day: number;
    readonly stage: string;
    readonly seen: number | null;
    readonly of: number | null;
    readonly lot: string | null;
    readonly note: string | null;
  };
  'page-box-observed-add': Nothing;
  'page-box-observed-caution': Nothing;
  'page-box-observed-seen': Nothing;
  'page-box-observed-of': Nothing;
  'page-box-observed-kept': Nothing;
  'page-box-lots': Nothing;
  'page-box-lot': {
    readonly lot: string;
    readonly eggs: number;
    readonly fertilised: string;
    readonly planted: string;
    readonly table: string;
    readonly part: string | null;
  };
  'page-box-place': { readonly site: string };
  'page-box-stations': Nothing;
  'page-day': Nothing;
  'page-note': Nothing;
  'page-lot': Nothing;
  'page-stage': Nothing;
  'page-keep': Nothing;
  'page-week-of': Nothing;
  'page-origin-measured': Nothing;
  'page-origin-filled': Nothing;
  'page-origin-projected': Nothing;
  'page-origin': Nothing;
  'page-mean-c': Nothing;
  'page-low-c': Nothing;
  'page-high-c': Nothing;
  'page-low': Nothing;
  'page-middle': Nothing;
  'page-high': Nothing;
}
