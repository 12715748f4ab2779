export interface EarlierWords {
  'earlier-columns': { readonly headers: readonly string[] };
  'earlier-no-column': { readonly column: string; readonly headers: readonly string[] };
  'earlier-no-field': { readonly field: string; readonly fields: readonly string[] };
  'earlier-not-a-table': Record<never, never>;
  'earlier-too-long': { readonly rows: number; readonly most: number };
  'earlier-cell': { readonly line: number; readonly column: string; readonly given: string };
  'earlier-cell-count': { readonly line: number; readonly column: string; readonly given: string };
  'earlier-unknown': { readonly id: string };
  'earlier-twice': { readonly file: string; readonly id: string };
  'cli-earlier': Record<never, never>;
  'cli-earlier-load': Record<never, never>;
  'cli-earlier-list': Record<never, never>;
  'cli-earlier-withdraw': Record<never, never>;
  'cli-earlier-id': Record<never, never>;
  'cli-earlier-column': Record<never, never>;
  'cli-earlier-sheet': Record<never, never>;
  'cli-earlier-dry-run': Record<never, never>;
  'cli-earlier-understood': {
    readonly file: string;
    readonly boxes: number;
    readonly seasons: readonly string[];
    readonly columns: readonly string[];
  };
  'cli-earlier-kept': { readonly id: string };
  'cli-earlier-not-kept': Record<never, never>;
  'cli-earlier-none': Record<never, never>;
  'cli-earlier-withdrawn': { readonly id: string };
  'cli-earlier-line': { readonly id: string; readonly file: string; readonly boxes: number };
}
