/** Month names in English and French, folded: lower case, no accents. */
const months: readonly (readonly string[])[] = [
  ['january', 'janvier'],
  ['february', 'fevrier'],
  ['march', 'mars'],
  ['april', 'avril'],
  ['may', 'mai'],
  ['june', 'juin'],
  ['july', 'juillet'],
  ['august', 'aout'],
  ['september', 'septembre'],
  ['october', 'octobre'],
  ['november', 'novembre'],
  ['december', 'decembre'],
];

/** Every beginning of three letters or more that belongs to one month only: jan, janv, juil, juill; never jui. */
function beginnings(): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  months.forEach((names, i) => {
    for (const name of names) {
      for (let n = 3; n <= name.length; n++) {
        const start = name.slice(0, n);
        const other = found.get(start);
        found.set(start, other === undefined || other === i + 1 ? i + 1 : 0);
      }
    }
  });
  return found;
}

const monthOf = beginnings();

const weekdays = new Set(
  (
    'mon tue tues wed thu thur thurs fri sat sun monday tuesday wednesday thursday friday saturday sunday ' +
    'lun mar mer jeu ven sam dim lundi mardi mercredi jeudi vendredi samedi dimanche le'
  ).split(' '),
);

/**
 * Abbreviations of zones as files write them, in minutes east of UTC. Canadian English and French (heure normale
 * HN-, heure avancée HA-), the United States' and Europe's; those with several meanings (IST, BST) are left out.
 */
const abbreviations: Readonly<Record<string, number>> = {
  z: 0,
  utc: 0,
  gmt: 0,
  tu: 0,
  tuc: 0,
  nst: -210,
  ndt: -150,
  ast: -240,
  adt: -180,
  est: -300,
  edt: -240,
  cst: -360,
  cdt: -300,
  mst: -420,
  mdt: -360,
  pst: -480,
  pdt: -420,
  akst: -540,
  akdt: -480,
  hst: -600,
  hnt: -210,
  hat: -150,
  hna: -240,
  haa: -180,
  hne: -300,
  hae: -240,
  hnc: -360,
  hac: -300,
  hnr: -420,
  har: -360,
  hnp: -480,
  hap: -420,
  wet: 0,
  west: 60,
  cet: 60,
  cest: 120,
  eet: 120,
  eest: 180,
  msk: 180,
};

/** Lower case without accents or full stops: "Févr." is "fevr". */
export function foldWord(word: string): string {
  return word
    .normalize('NFD')
    .replace(/[\u0300-\u036f.]/g, '')
    .toLowerCase();
}

/** 1-12, or 0 where the folded word names no month. */
export function monthNamed(folded: string): number {
  return monthOf.get(folded) ?? 0;
}

export function isWeekday(folded: string): boolean {
  return weekdays.has(folded);
}

/** Minutes east of UTC, or null where the folded word is no zone's abbreviation. */
export function abbreviatedOffset(folded: string): number | null {
  return Object.hasOwn(abbreviations, folded) ? abbreviations[folded] : null;
}
