/// <reference lib="dom" />
import type { FaceWord } from '../../../field/face-words.js';

type Language = 'en' | 'fr';

/** The words of both languages came with the page: switching needs no network. */
const words: Record<Language, Record<string, string>> = JSON.parse(
  document.querySelector('#words')?.textContent ?? '{"en":{},"fr":{}}',
);
let chosen: Language = document.documentElement.lang.startsWith('fr') ? 'fr' : 'en';

export const language = (): Language => chosen;

export function speak(language: Language): void {
  chosen = language;
  document.documentElement.lang = language === 'fr' ? 'fr-CA' : 'en-CA';
  document.title = say('title');
}

/** What stands between a name and its value: French sets a space before it. */
export const colon = (): string => (chosen === 'fr' ? '\u00a0:' : ':');

/** A count as the language writes it: 13 000, 13,000. */
export const whole = (count: number): string => count.toLocaleString(chosen === 'fr' ? 'fr-CA' : 'en-CA');

export const say = (word: FaceWord): string => words[chosen][word] ?? word;
