import { type Language, words } from '../../words/index.js';

const known = ['eye-up', 'hatch', 'button-up', 'emergence'] as const;

/** A stage in words; a stage of the group's own keeps the name its table gives it. */
export function stageName(stage: string, language: Language): string {
  const one = known.find((name) => name === stage);
  return one === undefined ? stage : words(language, `stage-${one}`, {});
}
