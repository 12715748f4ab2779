import type { ThingName } from '../../season/index.js';

/** With its gender, for the articles. */
export const things: Record<
  ThingName,
  { name: string; no: string; called: string; fresh: string; gone: string }
> = {
  group: feminine('organisation'),
  station: feminine('station'),
  logger: masculine('enregistreur', 'nouvel'),
  deployment: feminine('mise à l’eau'),
  site: masculine('site'),
  broodstock: masculine('géniteur'),
  lot: masculine('lot'),
  box: masculine('incubateur', 'nouvel'),
  visit: feminine('visite'),
  observed: masculine('stade observé'),
  blocked: { ...masculine('jours exclus'), fresh: 'nouveaux jours exclus', gone: 'jours exclus retirés' },
  putBack: masculine('incubateur vérifié et remis en place', 'nouvel'),
  tally: masculine('décompte'),
  permit: masculine('permis'),
  ruling: feminine('décision sur un contrôle'),
  cross: masculine('croisement'),
  entry: feminine('inscription'),
  table: feminine('table de développement'),
  layout: feminine('disposition de relevé'),
};

function feminine(name: string) {
  return {
    name,
    no: `aucune ${name}`,
    called: `une ${name} appelée`,
    fresh: `nouvelle ${name}`,
    gone: `${name} retirée`,
  };
}

function masculine(name: string, fresh = 'nouveau') {
  return {
    name,
    no: `aucun ${name}`,
    called: `un ${name} appelé`,
    fresh: `${fresh} ${name}`,
    gone: `${name} retiré`,
  };
}
