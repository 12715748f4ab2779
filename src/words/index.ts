import type { FormatWords } from '../../adapters/formats/remark.js';
import type { CliWords } from '../cli/words.js';
import type { NameWords } from '../group/unknown-name.js';
import type { SeasonWords } from '../season/index.js';
import { cli as cliEn } from './en/cli.js';
import { formats as formatsEn } from './en/formats.js';
import { group as groupEn } from './en/group.js';
import { season as seasonEn } from './en/season.js';
import type { Language } from './format.js';
import { cli as cliFr } from './fr/cli.js';
import { formats as formatsFr } from './fr/formats.js';
import { group as groupFr } from './fr/group.js';
import { season as seasonFr } from './fr/season.js';

export * from './format.js';

/** Every sentence of the program. A code without words in one of the languages does not compile. */
export interface AllWords extends CliWords, NameWords, SeasonWords, FormatWords {}

type Phrases = { [Code in keyof AllWords]: (figures: AllWords[Code]) => string };

const phrases: Record<Language, Phrases> = {
  en: { ...cliEn, ...groupEn, ...seasonEn, ...formatsEn },
  fr: { ...cliFr, ...groupFr, ...seasonFr, ...formatsFr },
};

/** Puts a remark into words, in one language. */
export function say<Code extends keyof AllWords>(
  language: Language,
  remark: { readonly code: Code; readonly with: AllWords[Code] },
): string {
  return phrases[language][remark.code](remark.with);
}

/** Same, from a code and its figures. */
export function words<Code extends keyof AllWords>(
  language: Language,
  code: Code,
  figures: AllWords[Code],
): string {
  return phrases[language][code](figures);
}
