import type { Layout } from './layout.js';
import { delimitedLayouts } from './layouts-delimited.js';
import { tableLayouts } from './layouts-tables.js';

/** Every layout a download is understood in, each with a sample under sample-logs/layouts. */
export const layouts: readonly Layout[] = [...delimitedLayouts, ...tableLayouts];
