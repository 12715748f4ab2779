import type { Language } from './format.js';

/** Whoever did something while nobody had an account (src/http/middleware/person.ts) has no name. */
const NOBODY = '-';

/** @example byWhom('en', '-') // 'somebody' */
export function byWhom(language: Language, name: string): string {
  if (name !== NOBODY) return name;
  return language === 'fr' ? 'quelqu’un' : 'somebody';
}

/** The same at the beginning of a sentence; a person's own name stays as it is written. */
export function whoFirst(language: Language, name: string): string {
  if (name !== NOBODY) return name;
  return language === 'fr' ? 'Quelqu’un' : 'Somebody';
}
