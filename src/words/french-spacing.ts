/** No-break space: a sign that stands apart from its word must not begin a line. */
const NB = '\u00a0';

/**
 * French typography, put right once for every page, whoever wrote the sentence: a no-break space before : ; ? ! » and
 * after «, and between a figure and its °C, % or h. What has no space on purpose (12:30, https://…, `name:`) keeps none:
 * a colon is never moved away from its word, and ; ? ! only where a space or the end of the sentence follows.
 *
 * @example frenchSpacing('Est-ce prêt? Oui : « 4 °C ».') // 'Est-ce prêt\u00a0? Oui\u00a0: «\u00a04\u00a0°C\u00a0».'
 */
export function frenchSpacing(sentence: string): string {
  return sentence
    .replace(/[ \u202f](?=»|[:;?!](?:[\s.,)»]|$))/g, NB)
    .replace(/«[ \u202f]/g, `«${NB}`)
    .replace(/([^\s;?!:«(])(?=[;?!](?:[\s.,)»]|$))/g, `$1${NB}`)
    .replace(/(\d)[ \u202f](?=(?:°C|%|h)(?![\p{L}\d]))/gu, `$1${NB}`);
}

/** Text between tags; whole elements whose text goes back to the service, is read by a script, or is code. */
const TEXT = /<(textarea|script|style|pre)\b[\s\S]*?<\/\1>|>[^<]+/g;

/** What spacing makes of a sign written as HTML escapes it (`&amp;`): its semicolon is no punctuation. */
const ESCAPED = /(&(?:[a-z]+|#\w+))\u00a0;/gi;

/** @example spacedPage('<p>Oui : « ici »</p>') // '<p>Oui\u00a0: «\u00a0ici\u00a0»</p>' */
export function spacedPage(html: string): string {
  return html.replace(TEXT, (found) =>
    found.startsWith('<') ? found : `>${frenchSpacing(found.slice(1)).replace(ESCAPED, '$1;')}`,
  );
}
