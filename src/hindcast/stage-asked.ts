import { type Language, stageName, words } from '../words/index.js';

/** A stage as a person reads it: `last-hatch` is the hatch of the last eggs. */
export function stageAsked(name: string, language: Language): string {
  const [, egg, stage] = /^(first|last)-(.+)$/.exec(name) ?? [];
  if (stage === undefined) return stageName(name, language);
  const code = egg === 'first' ? 'hindcast-first-eggs' : 'hindcast-last-eggs';
  return words(language, code, { stage: stageName(stage, language) });
}
