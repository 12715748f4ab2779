/**
 * What kills eggs beside the water's temperature, and what survives elsewhere: published figures that no forecast uses
 * and the help page tells. Marks as in the development tables: what of a source was seen.
 */
export const OTHER_HARM = {
  /** Fine sediment in the gravel, %. Can. J. Fish. Aquat. Sci. 61(12), 2004: abstract. */
  silt: { harms: 0.5, hardToOffset: 1.5 },
  /** Dissolved oxygen, mg/L. EPA 1986: memory. */
  oxygen: { water: 8, gravel: 5 },
  /** pH below which they die. DFO 2000/050: seen. */
  acid: { eggs: 4.8, fry: 5 },
  /** Share killed by one wading of a redd just before hatch, at most. Roberts & White 1992: abstract. */
  wading: 0.43,
  /**
   * Boxes frozen solid under flowing water, cm of it, and the share that survived in those recovered (brown trout).
   * In-situ freezing study, Laramie River 1975-76: abstract (authors Reiser & Wesche: memory).
   */
  frozenSolid: { shallowest: 12, deepest: 20, survived: 0.01 },
  /** °C that alevins of Atlantic salmon still survive. Ojanguren et al. 1999: abstract. */
  alevinsSurvive: 22,
} as const;

export const ELSEWHERE = {
  /** Share that hatches in single-egg plates, at least (brown trout). N. Am. J. Fish. Manage. 12:833: abstract. */
  plates: 0.72,
  /** Share that emerges from redds in three Maine streams. MacKenzie & Moring 1988. */
  redds: { least: 0.02, most: 0.12, mean: 0.07 },
} as const;
