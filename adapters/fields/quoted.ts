import Papa from 'papaparse';
import type { Delimiter } from '../download.js';

/**
 * The fields of one line that holds a quote. Papaparse decides what quotes mean; one line at a time, because a
 * stray quote would otherwise swallow the rest of the file.
 */
export function quotedFields(line: string, delimiter: Delimiter): string[] {
  const { data } = Papa.parse<string[]>(line, { delimiter, newline: '\n', quoteChar: '"' });
  return data[0] ?? [];
}

/** The fields of one line. */
export function fieldsOf(line: string, delimiter: Delimiter): string[] {
  return line.includes('"') ? quotedFields(line, delimiter) : line.split(delimiter);
}
