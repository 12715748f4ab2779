import type { LeadingPageWords } from '../leading-words.js';

type Meaning = Extract<keyof LeadingPageWords, `page-meaning-${string}`>;

/** The trade's words in both languages; the same table stands whichever language the page is in. */
export const tradeWords: readonly (readonly [en: string, fr: string, meaning: Meaning])[] = [
  ['station', 'station', 'page-meaning-station'],
  ['quantity', 'grandeur', 'page-meaning-quantity'],
  ['logger, deployment', 'enregistreur, mise à l’eau', 'page-meaning-logger'],
  ['visit', 'visite', 'page-meaning-visit'],
  ['download', 'relevé', 'page-meaning-download'],
  ['load', 'chargement', 'page-meaning-load'],
  ['reading', 'lecture', 'page-meaning-reading'],
  ['broodstock', 'géniteurs', 'page-meaning-broodstock'],
  ['lot', 'lot', 'page-meaning-lot'],
  ['site', 'site', 'page-meaning-site'],
  ['box', 'incubateur', 'page-meaning-box'],
  ['fill', 'remplissage', 'page-meaning-fill'],
  ['development table', 'table de développement', 'page-meaning-table'],
  ['stage', 'stade', 'page-meaning-stage'],
  ['alevin', 'alevin vésiculé', 'page-meaning-alevin'],
  ['thermal units', 'degrés-jours', 'page-meaning-units'],
  ['progress', 'avancement', 'page-meaning-progress'],
  ['day series', 'série journalière', 'page-meaning-days'],
  ['window', 'fenêtre', 'page-meaning-window'],
  ['spell', 'épisode', 'page-meaning-spell'],
  ['lifting date, lifting window', 'date et fenêtre de levée', 'page-meaning-lifting'],
  ['tally', 'décompte', 'page-meaning-tally'],
  ['freshet, anchor ice', 'crue printanière, glace de fond', 'page-meaning-ice'],
];
