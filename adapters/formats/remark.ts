/** What the exchange formats and the recognisers of other kinds of files have to tell people. */
export interface FormatWords {
  /** The file is of another kind than a download. */
  'not-a-download': { kind: string };
}
