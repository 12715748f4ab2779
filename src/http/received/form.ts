import type { SpooledFile } from './spool.js';

/** A posted form. Files have been received already: `files` says where they wait. */
export interface Form {
  /** The first value of a field; '' where it was not posted. */
  field(name: string): string;
  /** Every value of a field that may be given several times. */
  all(name: string): readonly string[];
  readonly fields: ReadonlyMap<string, readonly string[]>;
  readonly files: readonly SpooledFile[];
}

export function form(
  fields: ReadonlyMap<string, readonly string[]>,
  files: readonly SpooledFile[] = [],
): Form {
  return {
    field: (name) => fields.get(name)?.[0] ?? '',
    all: (name) => fields.get(name) ?? [],
    fields,
    files,
  };
}

export const noForm: Form = form(new Map());
