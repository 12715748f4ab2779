import { type Language, languages } from '../words/format.js';

/**
 * The language to speak, known before the command line is parsed so that help and refusals speak it too:
 * --lang, else UNDERICE_LANG, else the terminal's locale (LC_ALL, LC_MESSAGES, LANG), else English.
 */
export function chooseLanguage(args: readonly string[], env: NodeJS.ProcessEnv): Language {
  const asked = langOption(args) ?? env.UNDERICE_LANG ?? env.LC_ALL ?? env.LC_MESSAGES ?? env.LANG ?? '';
  return languages.find((language) => asked.toLowerCase().startsWith(language)) ?? 'en';
}

function langOption(args: readonly string[]): string | undefined {
  for (const [index, arg] of args.entries()) {
    if (arg === '--') return undefined;
    if (arg === '--lang') return args[index + 1];
    if (arg.startsWith('--lang=')) return arg.slice('--lang='.length);
  }
  return undefined;
}
