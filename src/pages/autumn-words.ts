type Nothing = Record<never, never>;

/** The autumn at a desk: lots, boxes, sheets, entries. */
export interface AutumnPageWords {
  'page-nav-autumn': Nothing;
  'page-autumn-title': Nothing;
  'page-autumn-answer': { readonly unplaced: number; readonly lots: number };
  'page-autumn-answer-none': Nothing;
  'page-autumn-did': Nothing;
  'page-autumn-enter': Nothing;
  'page-autumn-lots': Nothing;
  'page-autumn-in-boxes': Nothing;
  'page-autumn-control': Nothing;
  'page-autumn-lost': Nothing;
  'page-autumn-left-over': Nothing;
  'page-autumn-unplaced': Nothing;
  'page-autumn-count': {
    readonly eggs: number;
    readonly low: number;
    readonly high: number;
    readonly samples: number;
  };
  'page-autumn-count-one': Nothing;
  'page-autumn-fertilised': { readonly rate: string; readonly of: number };
  'page-autumn-no-box': { readonly lot: string };
  'page-autumn-no-lot': { readonly box: string };
  'page-autumn-permits': Nothing;
  'page-autumn-permit': {
    readonly number: string;
    readonly from: string;
    readonly to: string;
    readonly due: string;
  };
  'page-autumn-visits': Nothing;
  'page-autumn-sheet': Nothing;
  'page-autumn-sheet-answer': Nothing;
  'page-autumn-hear': Nothing;
  'page-autumn-keep-anyway': Nothing;
  'page-autumn-plan': Nothing;
  'page-autumn-grid': Nothing;
  'page-autumn-grid-answer': Nothing;
  'page-autumn-grid-keep': Nothing;
  'page-autumn-entries': Nothing;
  'page-autumn-phone': Nothing;
  'page-autumn-earlier': Nothing;
  'page-earlier-answer': { readonly tables: number };
  'page-earlier-file': Nothing;
  'page-earlier-read': Nothing;
  'page-earlier-take': Nothing;
  'page-earlier-withdraw': Nothing;
  'page-earlier-season': Nothing;
  'page-earlier-site': Nothing;
  'page-earlier-box': Nothing;
  'page-earlier-lot': Nothing;
  'page-earlier-planted': Nothing;
  'page-earlier-lifted': Nothing;
  'page-earlier-eggs': Nothing;
  'page-earlier-empty': Nothing;
  'page-earlier-dead': Nothing;
  'page-earlier-note': Nothing;
  'page-earlier-one': { readonly file: string; readonly boxes: number };
  'autumn-permit-ends': { readonly number: string };
  'autumn-permit-report': { readonly number: string };
  'autumn-permit-about': { readonly from: string; readonly to: string; readonly authority: string };
}
