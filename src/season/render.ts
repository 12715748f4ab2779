import { Document } from 'yaml';
import type { Season } from './season.js';
import { seasonDocument } from './written.js';

/**
 * The season as YAML text, the same text for the same season, byte for byte: reading it back gives the season, and
 * rendering that gives the text. Comments of a file that was read are not kept; `note` fields are.
 */
export function renderSeason(season: Season): string {
  const document = new Document(seasonDocument(season), { aliasDuplicateObjects: false, version: '1.2' });
  return document.toString({ lineWidth: 0, indent: 2, indentSeq: true, flowCollectionPadding: false });
}
