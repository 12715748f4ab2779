type Nothing = Record<never, never>;

/** What the forms edit: a list of the season file each. */
export type KindName =
  | 'stations'
  | 'sites'
  | 'lots'
  | 'boxes'
  | 'loggers'
  | 'deployments'
  | 'blocked'
  | 'permits';

/** Season editing, through forms and as the whole file. */
export interface EditingPageWords
  extends Record<`page-kind-name-${KindName}`, Nothing>,
    Record<`page-kind-new-${KindName}`, Nothing> {
  'page-edit-title': Nothing;
  'page-edit-answer': { readonly version: number; readonly by: string; readonly day: number };
  'page-edit-answer-none': Nothing;
  'page-edit-new-station': Nothing;
  'page-edit-file': Nothing;
  'page-edit-history': Nothing;
  'page-edit-none': Nothing;
  'page-edit-one-title': { readonly thing: string };
  'page-edit-keep': Nothing;
  'page-edit-remove': Nothing;
  'page-edit-refused': Nothing;
  'page-edit-file-answer': Nothing;
  'page-edit-file-text': Nothing;
  'page-edit-file-preview': Nothing;
  'page-edit-file-apply': Nothing;
  'page-edit-file-paper': Nothing;
  'page-edit-file-same': Nothing;
  'page-edit-changes': { readonly count: number };
  'page-edit-history-answer': { readonly versions: number };
  'page-edit-version': { readonly version: number; readonly by: string; readonly at: string };
  'page-edit-version-now': Nothing;
  'page-edit-undo': { readonly version: number };
  'page-edit-moment': Nothing;
  'page-edit-list': Nothing;
  'page-field-id': Nothing;
  'page-field-name': Nothing;
  'page-field-kind': Nothing;
  'page-field-place': Nothing;
  'page-field-zone': Nothing;
  'page-field-latitude': Nothing;
  'page-field-longitude': Nothing;
  'page-field-reports': Nothing;
  'page-field-accuracy': Nothing;
  'page-field-note': Nothing;
  'page-field-station': Nothing;
  'page-field-access': Nothing;
  'page-field-find': Nothing;
  'page-field-iceRisk': Nothing;
  'page-field-depthM': Nothing;
  'page-field-velocityMs': Nothing;
  'page-field-bed': Nothing;
  'page-field-consent': Nothing;
  'page-field-fertilised': Nothing;
  'page-field-eggs': Nothing;
  'page-field-table': Nothing;
  'page-field-parents': Nothing;
  'page-field-before-station': Nothing;
  'page-field-before-celsius': Nothing;
  'page-field-site': Nothing;
  'page-field-stations': Nothing;
  'page-field-lifted': Nothing;
  'page-field-fills': Nothing;
  'page-field-lot': Nothing;
  'page-field-part': Nothing;
  'page-field-planted': Nothing;
  'page-field-serial': Nothing;
  'page-field-memory': Nothing;
  'page-field-interval': Nothing;
  'page-field-clock': Nothing;
  'page-field-logger': Nothing;
  'page-field-lay': Nothing;
  'page-field-box': Nothing;
  'page-field-from': Nothing;
  'page-field-to': Nothing;
  'page-field-read': Nothing;
  'page-field-lost': Nothing;
  'page-field-reason': Nothing;
  'page-field-number': Nothing;
  'page-field-authority': Nothing;
  'page-field-reportDue': Nothing;
  'page-field-control-eggs': Nothing;
  'page-field-control-fertilised': Nothing;
  'page-field-control-of': Nothing;
  'page-field-lost-eggs': Nothing;
  'page-field-left-over': Nothing;
  'page-field-bankMark': Nothing;
  'page-field-tiedTo': Nothing;
  'page-risk-low': Nothing;
  'page-risk-moderate': Nothing;
  'page-risk-high': Nothing;
}
