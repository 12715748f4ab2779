import type { Remark } from '../remark.js';

/** What is said of files that are recognised by their first bytes, with the figures each sentence needs. */
export interface FormatWords {
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

export type FormatRemark = Remark<FormatWords>;
