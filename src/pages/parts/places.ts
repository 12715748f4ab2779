import type { AllWords } from '../../words/index.js';

/** A place of the navigation: its name is what a page gives as `current`. */
interface Place {
  readonly href: `/${string}`;
  readonly word: Extract<keyof AllWords, `page-nav-${string}`>;
  /** Its pages say the same until the next write: they are drawn once for everybody (src/http/middleware/kept-pages). */
  readonly lasting: boolean;
}

/** The navigation, in its order; a part of the pages adds its line here. */
export const places = {
  season: { href: '/', word: 'page-nav-season', lasting: true },
  lifting: { href: '/lifting', word: 'page-nav-lifting', lasting: true },
  spells: { href: '/spells', word: 'page-nav-spells', lasting: true },
  survival: { href: '/survival', word: 'page-nav-survival', lasting: true },
  report: { href: '/report', word: 'page-nav-report', lasting: true },
  downloads: { href: '/downloads', word: 'page-nav-downloads', lasting: false },
  autumn: { href: '/autumn', word: 'page-nav-autumn', lasting: false },
  stations: { href: '/stations', word: 'page-nav-stations', lasting: true },
  messages: { href: '/messages', word: 'page-nav-messages', lasting: false },
  tables: { href: '/tables', word: 'page-nav-tables', lasting: true },
  hindcast: { href: '/hindcast', word: 'page-nav-hindcast', lasting: false },
  editing: { href: '/editing', word: 'page-nav-editing', lasting: true },
  help: { href: '/help', word: 'page-nav-help', lasting: true },
} as const satisfies Readonly<Record<string, Place>>;

export type PlaceName = keyof typeof places;

export const allPlaces: readonly (readonly [string, Place])[] = Object.entries(places);

/** Whether the pages at this path say the same until the next write. */
export function lasting(path: string): boolean {
  if (path === '/' || path.startsWith('/boxes/')) return true;
  return allPlaces.some(
    ([, { href, lasting }]) => lasting && href !== '/' && (path === href || path.startsWith(`${href}/`)),
  );
}
