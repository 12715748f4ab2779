import {
  type AllWords,
  type Language,
  longDay,
  named,
  percent,
  shortDay,
  stageName,
  whole,
  words,
} from '../words/index.js';

/** The words and figures of one language, as the pages use them. */
export interface Speech {
  readonly language: Language;
  readonly say: <Code extends keyof AllWords>(code: Code, figures: AllWords[Code]) => string;
  /** "4 March 2026" */
  readonly long: (day: number) => string;
  /** "4 Mar" */
  readonly short: (day: number) => string;
  /** "Map: none", with the no-break space French asks for. */
  readonly named: (name: string, what: string) => string;
  readonly whole: (value: number) => string;
  readonly percent: (fraction: number) => string;
  readonly stage: (stage: string) => string;
}

const made = new Map<Language, Speech>();

export function speech(language: Language): Speech {
  const known = made.get(language) ?? {
    language,
    say: (code, figures) => words(language, code, figures),
    long: (day) => longDay(language, day),
    short: (day) => shortDay(language, day),
    named: (name, what) => named(language, name, what),
    whole: (value) => whole(language, value),
    percent: (fraction) => percent(language, fraction),
    stage: (stage) => stageName(stage, language),
  };
  made.set(language, known);
  return known;
}
