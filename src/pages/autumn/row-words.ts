import { type FaceWord, isFaceWord } from '../../field/face-words.js';

/** What the parts of a row of loggers or of counted samples are called. */
export const rowWords: ReadonlyMap<string, FaceWord> = new Map([
  ['logger', 'logger'],
  ['did', 'did'],
  ['box', 'box'],
  ['lay', 'lay'],
  ['fast', 'fast'],
  ['iceBath', 'iceBath'],
  ['eggs', 'sample-eggs'],
  ['amount', 'sample-amount'],
]);

/** What was done with a logger, and where it lies. */
export const DONE = ['in', 'out', 'read', 'checked'] as const;
export const LAYS = ['tied-to-box', 'in-box', 'gravel', 'stream', 'bank'] as const;

/** The word of an answer that a menu offers; null where it was typed. */
export function choiceWord(part: string, given: string): FaceWord | null {
  const word = `${part}-${given}`;
  return (part === 'did' || part === 'lay') && isFaceWord(word) ? word : null;
}
