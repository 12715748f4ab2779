/** What `underice layouts` says, and what keeping a layout while loading says. */
export interface LayoutsWords {
  'cli-layouts': Record<never, never>;
  'cli-layouts-list': Record<never, never>;
  'cli-layouts-keep': Record<never, never>;
  'cli-layouts-file': Record<never, never>;
  'cli-layouts-remove': Record<never, never>;
  'cli-layouts-name': Record<never, never>;
  'cli-layouts-none': Record<never, never>;
  'cli-layouts-kept': { readonly layout: string };
  'cli-layouts-removed': { readonly layout: string };
  /** What a layout's files are known by; one of the three. */
  'cli-layouts-header': { readonly headers: readonly string[] };
  'cli-layouts-opening': { readonly opening: string };
  'cli-layouts-file-name': { readonly part: string };
  'cli-load-keep-layout': Record<never, never>;
  'cli-load-one-layout': Record<never, never>;
}
