import type { Source } from '../../forecasting/table.js';
import type { Language } from './format.js';
import { frenchSpacing } from './french-spacing.js';

/** A source as its reader is told it: a citation as published, the project's own notes in their language. */
export function citedIn(language: Language, { cite, inFrench }: Pick<Source, 'cite' | 'inFrench'>): string {
  return language === 'fr' && inFrench !== undefined ? frenchSpacing(inFrench) : cite;
}
