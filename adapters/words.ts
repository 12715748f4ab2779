/** What the engine for delimited downloads has to tell people, with the figures each sentence needs. */
export interface EngineWords {
  /** Nothing in the file. */
  'empty-file': Record<never, never>;
}
