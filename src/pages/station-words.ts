type Nothing = Record<never, never>;

/** Stations and their records. Days are day numbers. */
export interface StationPageWords {
  'page-stations-title': Nothing;
  'page-stations-answer': { readonly stations: number; readonly silent: number };
  'page-stations-none': Nothing;
  'page-station-last': Nothing;
  'page-station-first': Nothing;
  'page-station-kind': Nothing;
  'page-station-reports': Nothing;
  'page-station-title': { readonly station: string };
  'page-station-answer': {
    /** What is recorded there: the station's kind, as the season states it. */
    readonly kind: string;
    readonly station: string;
    readonly readings: number;
    readonly from: number;
    readonly to: number;
  };
  'page-station-load': Nothing;
  'page-station-empty': { readonly station: string };
  'page-station-not-in-season': Nothing;
  'page-station-later-readings': { readonly day: number };
  'page-station-record': {
    readonly from: number;
    readonly to: number;
    readonly low: string;
    readonly high: string;
    readonly unit: string;
  };
  'page-station-lowest': Nothing;
  'page-station-highest': Nothing;
  'page-station-doubted': Nothing;
  'page-station-key': Nothing;
  'page-station-zoom': Nothing;
  'page-station-from': Nothing;
  'page-station-to': Nothing;
  'page-station-show': Nothing;
  'page-station-whole': Nothing;
  'page-station-closer': Nothing;
  'page-station-wider': Nothing;
  'page-station-earlier': Nothing;
  'page-station-later': Nothing;
  'page-station-flagged': { readonly steps: number; readonly of: number };
  'page-station-unflagged': Nothing;
  'page-station-deployments': Nothing;
  'page-station-no-deployments': Nothing;
  'page-station-deployment': {
    readonly logger: string;
    readonly from: number;
    readonly to: number | null;
    readonly lay: string;
    readonly lost: boolean;
  };
  'page-station-loads': Nothing;
  'page-station-readings-csv': Nothing;
  'page-station-days-csv': Nothing;
  'page-station-days-json': Nothing;
  'page-station-record-json': Nothing;
  'page-station-findings-json': Nothing;
  'page-station-filled-days': Nothing;
  'page-lay-in-box': Nothing;
  'page-lay-tied-to-box': Nothing;
  'page-lay-gravel': Nothing;
  'page-lay-stream': Nothing;
  'page-lay-bank': Nothing;
  'page-lay-tank': Nothing;
  'page-lay-air': Nothing;
  'page-kind-stream': Nothing;
  'page-kind-gravel': Nothing;
  'page-kind-air': Nothing;
  'page-kind-tank': Nothing;
  'page-kind-gauge': Nothing;
  'page-yes': Nothing;
  'page-no': Nothing;
}
