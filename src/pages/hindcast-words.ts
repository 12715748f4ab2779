type Nothing = Record<never, never>;

/** The page that says how good the forecast would have been. `lead` is a day number in any year. */
export interface HindcastPageWords {
  'page-nav-hindcast': Nothing;
  'page-hindcast-title': Nothing;
  'page-hindcast-answer': {
    readonly winters: number;
    readonly stage: string;
    readonly lead: number;
    readonly mae: number;
    readonly plain: { readonly name: string; readonly mae: number; readonly own: number } | null;
    readonly holds: number | null;
  };
  'page-hindcast-none': Nothing;
  'page-hindcast-working': { readonly done: number; readonly all: number };
  'page-hindcast-wait': Nothing;
  'page-hindcast-case': Nothing;
  'page-hindcast-station': Nothing;
  'page-hindcast-stage': Nothing;
  'page-hindcast-table': Nothing;
  'page-hindcast-fertilised': Nothing;
  'page-hindcast-show': Nothing;
  'page-hindcast-ours': Nothing;
  'page-hindcast-persistence': Nothing;
  'page-hindcast-error-chart': { readonly stage: string; readonly first: number; readonly last: number };
  'page-hindcast-error-axis': Nothing;
  'page-hindcast-windows': {
    readonly station: string;
    readonly lead: number;
    readonly held: number;
    readonly winters: number;
  };
  'page-hindcast-windows-note': Nothing;
  'page-hindcast-winter': Nothing;
  'page-hindcast-came': Nothing;
  'page-hindcast-median': Nothing;
  'page-hindcast-window': Nothing;
  'page-hindcast-never': Nothing;
  'page-hindcast-by-lead': Nothing;
  'page-hindcast-past-only': Nothing;
  'page-hindcast-at-station': { readonly station: string };
  'page-hindcast-notes': Nothing;
  'page-hindcast-few': { readonly winters: number };
}
