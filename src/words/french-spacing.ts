import type { Language } from './format.js';

/** No-break space: a sign that stands apart from its word must not begin a line. */
const NB = '\u00a0';

/**
 * Canadian French typography, put right once for every face, whoever wrote the sentence (Office québécois de la langue
 * française, Banque de dépannage linguistique, "Espacement avant et après les signes de ponctuation"; Le guide du
 * rédacteur of the Translation Bureau of Canada says the same): a no-break space before : and » and after «, and between
 * a figure and its °C, % or h; none before ; ? and !. What has no space on purpose (12:30, https://…, `name:`) keeps
 * none: a colon is never moved away from its word.
 *
 * @example frenchSpacing('Est-ce prêt ? Oui : « 4 °C ».') // 'Est-ce prêt? Oui\u00a0: «\u00a04\u00a0°C\u00a0».'
 */
export function frenchSpacing(sentence: string): string {
  return sentence
    .replace(/[ \u202f](?=»|:(?:[\s.,)»]|$))/g, NB)
    .replace(/«[ \u202f]/g, `«${NB}`)
    .replace(/(?<=[^\s«(])[ \u00a0\u202f](?=[;?!](?:[\s.,)»]|$))/g, '')
    .replace(/(\d)[ \u202f](?=(?:°C|%|h)(?![\p{L}\d]))/gu, `$1${NB}`);
}

/**
 * English: a figure and its unit stay on one line (Bureau international des poids et mesures, The International System
 * of Units, 5.4.3: a space between number and unit; that it does not break is common practice).
 *
 * @example englishSpacing('at most 0.2 °C') // 'at most 0.2\u00a0°C'
 */
export function englishSpacing(sentence: string): string {
  return sentence.replace(/(\d) (?=(?:°C|h|mm|km|m)(?![\p{L}\d]))/gu, `$1${NB}`);
}

/** Text between tags; whole elements whose text goes back to the service, is read by a script, or is code. */
const TEXT = /<(textarea|script|style|pre)\b[\s\S]*?<\/\1>|>[^<]+/g;

/** @example spacedPage('<p>Oui : « ici »</p>') // '<p>Oui\u00a0: «\u00a0ici\u00a0»</p>' */
export function spacedPage(html: string, language: Language = 'fr'): string {
  const spaced = language === 'fr' ? frenchSpacing : englishSpacing;
  return html.replace(TEXT, (found) => (found.startsWith('<') ? found : `>${spaced(found.slice(1))}`));
}

/** A name and what it is, as the language sets them apart: "Map: none", "Carte\u00a0: aucune". */
export function named(language: Language, name: string, what: string): string {
  return `${name}${language === 'fr' ? NB : ''}: ${what}`;
}
