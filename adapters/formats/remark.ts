import type { Remark } from '../remark.js';

/** What is said of files that are recognised by their first bytes. */
export interface FileWords {
  'formats.empty': Record<string, never>;
  'formats.picture': Record<string, never>;
  'formats.recording': Record<string, never>;
  'formats.pdf': Record<string, never>;
  'formats.document': Record<string, never>;
  'formats.workbook': Record<string, never>;
  'formats.old-office': Record<string, never>;
  'formats.archive': Record<string, never>;
  'formats.compressed': Record<string, never>;
  'formats.database': Record<string, never>;
  'formats.scientific': Record<string, never>;
  'formats.program': Record<string, never>;
  'formats.binary': Record<string, never>;
  'formats.login-page': Record<string, never>;
  'formats.web-page': Record<string, never>;
  'formats.service-error': Record<string, never>;
  'formats.old-waterml': Record<string, never>;
  'formats.other-xml': { readonly root: string };
  'formats.json': Record<string, never>;
}

/** What is said of WaterML documents. */
export interface WaterMlWords {
  'waterml.broken': { readonly line: number };
  'waterml.doctype': Record<string, never>;
  'waterml.too-large': { readonly line: number };
  'waterml.coverage': Record<string, never>;
  'waterml.too-many-series': { readonly limit: number };
  /** The document was read, and holds no time series of measurements. */
  'waterml.no-series': Record<string, never>;
}

/** What is said of saved layouts. */
export interface LayoutWords {
  'layout.not-json': Record<string, never>;
  'layout.unknown-part': { readonly path: string; readonly known: readonly string[] };
  'layout.missing-part': { readonly path: string; readonly rule: LayoutRule };
  'layout.wrong-part': { readonly path: string; readonly given: string; readonly rule: LayoutRule };
  'layout.column-twice': { readonly column: string };
}

/** What a saved layout may settle, in the order it is written. */
export const settledParts = [
  'encoding',
  'delimiter',
  'decimal',
  'headerLine',
  'dateOrder',
  'time',
  'temperature',
  'level',
  'discharge',
  'station',
  'unit',
  'zone',
  'missing',
] as const;

/** The parts of a saved layout, each with a sentence in src/words that says what would do. */
export const layoutRules = ['layout', 'name', 'match', 'settled', ...settledParts] as const;
export type LayoutRule = (typeof layoutRules)[number];

/** Every sentence about files, exchange formats and saved layouts, with the figures it needs. */
export type FormatWords = FileWords & WaterMlWords & LayoutWords;
export type FileRemark = Remark<FileWords>;
export type LayoutRemark = Remark<LayoutWords>;
export type FormatRemark = Remark<FormatWords>;
