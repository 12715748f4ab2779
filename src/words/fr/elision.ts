/** A name that begins with a vowel sound: an h is taken as mute, as in Halifax, but in words known to aspirate it. */
const VOWEL =
  /^(?:[aeiouâàäéèêëîïôöûùüœæ]|h(?!aut|al[lt]|ameau|angar|anche|avre|êtr|etr|ér[oi]|ero|utte|ors|ull|uit))/i;

/** "de" before a name somebody else gave. @example de('amont') // 'd’amont'; de('pont') is 'de pont' */
export function de(name: string): string {
  return VOWEL.test(name) ? `d’${name}` : `de ${name}`;
}

/** "que" before a name. @example que('amont') // 'qu’amont' */
export function que(name: string): string {
  return VOWEL.test(name) ? `qu’${name}` : `que ${name}`;
}
