type Nothing = Record<never, never>;

/** Development tables. */
export interface TablesPageWords {
  'page-tables-title': Nothing;
  'page-tables-answer': { readonly tables: number; readonly own: number };
  'page-tables-shipped': Nothing;
  'page-tables-own': Nothing;
  'page-tables-beside': Nothing;
  'page-tables-left': Nothing;
  'page-tables-right': Nothing;
  'page-tables-compare': Nothing;
  'page-table-title': { readonly table: string };
  'page-table-answer': { readonly table: string; readonly days: number; readonly cold: number };
  'page-table-answer-plain': { readonly table: string };
  'page-table-days': { readonly table: string };
  'page-table-x': Nothing;
  'page-table-y': Nothing;
  'page-table-broken': Nothing;
  'page-table-needs': Nothing;
  'page-table-holds': Nothing;
  'page-table-holds-from': { readonly min: string; readonly max: string };
  'page-table-spread': Nothing;
  'page-table-sources': Nothing;
  'page-table-limits': Nothing;
  'page-table-multiple': { readonly factor: string; readonly stage: string };
  'page-table-same': { readonly stage: string };
  'page-table-add': Nothing;
  'page-table-add-what': Nothing;
  'page-table-name': Nothing;
  'page-table-id': Nothing;
  'page-table-species': Nothing;
  'page-table-rows': Nothing;
  'page-table-rows-what': Nothing;
  'page-table-eye': Nothing;
  'page-table-button': Nothing;
  'page-table-source': Nothing;
  'page-stock-title': Nothing;
  'page-stock-none': Nothing;
  /** Parts of the way: 0.03 is 3 % more than the table says; `weight` is the lots' share in it. */
  'page-stock-shown': {
    readonly table: string;
    readonly lots: number;
    readonly shown: number;
    readonly adjustment: number;
    readonly spread: number;
    readonly weight: number;
  };
  'page-stock-beside': Nothing;
  'page-stock-published': Nothing;
  'page-stock-own': Nothing;
  'page-stock-note': Nothing;
  'page-stock-link': Nothing;
  'page-table-species-name': { readonly species: string };
}
