import type { HindcastWords } from '../../hindcast/words.js';
import { list, whole } from '../format.js';
import { de } from './elision.js';

const column: Record<string, string> = {
  station: 'le nom de la station',
  date: 'une date écrite année-mois-jour, par exemple 2021-11-01',
  latitude: 'des degrés de −90 à 90',
  longitude: 'des degrés de −180 à 180',
  water_c: 'une température en °C avec un point décimal',
  air_c: 'une température en °C avec un point décimal',
};

/** Ce qu’aurait valu la prévision, en français (fr-CA). */
export const hindcast: { [Code in keyof HindcastWords]: (words: HindcastWords[Code]) => string } = {
  'hindcast-no-columns': ({ missing }) =>
    `Ce n’est pas un fichier de moyennes journalières : il manque à sa première ligne ${list('fr', missing)}. Elle doit se lire station,latitude,longitude,date,water_c,air_c.`,
  'hindcast-bad-line': ({ line, column: name, value }) =>
    `À la ligne ${whole('fr', line)}, la colonne ${name} contient « ${value} » : elle attend ${column[name] ?? 'une autre valeur'}.`,
  'hindcast-two-values': ({ line, station, date }) =>
    `La ligne ${whole('fr', line)} donne à ${station} une autre valeur pour le ${date} qu’une ligne précédente : gardez-en une seule.`,
  'hindcast-two-places': ({ line, station }) =>
    `La ligne ${whole('fr', line)} place ${station} à d’autres coordonnées qu’une ligne précédente : donnez deux noms à deux endroits.`,
  'hindcast-too-long': ({ station }) =>
    `Plus de cent cinquante ans séparent les jours ${de(station)} : cherchez une année erronée.`,
  'hindcast-no-water': () =>
    'Aucun jour de ce fichier n’a de température de l’eau : il n’y a rien à comparer.',
  'hindcast-not-a-day': ({ option, value }) =>
    `${option} a reçu « ${value} » : écrivez le jour de l’année sous la forme mois-jour, par exemple 12-15.`,
  'hindcast-not-a-gap': ({ value }) =>
    `--gap a reçu « ${value} » : il faut un nombre entier de jours, de 1 à 242.`,
  'hindcast-no-stage': ({ stage, table, stages }) =>
    `La table ${table} n’a pas de stade « ${stage} » : elle a ${list('fr', stages)}.`,
  'hindcast-no-winter': () =>
    'Aucune station n’a ici d’hiver complet : au moins 235 des 242 jours à partir de la fécondation doivent être mesurés. Chargez des hivers passés ou nommez un fichier de moyennes journalières.',
  'cli-hindcast': () => 'ce qu’aurait valu la prévision aux hivers passés, à côté de méthodes simples',
  'cli-hindcast-file': () =>
    'moyennes journalières : station,latitude,longitude,date,water_c,air_c (par défaut : les stations de la saison)',
  'cli-hindcast-case': () =>
    'ce qui était connu : history, late-download, under-ice ou gaps ; peut être répété (par défaut : tous)',
  'cli-hindcast-fertilised': () => 'jour de la fécondation, mois-jour (par défaut : 11-01)',
  'cli-hindcast-lead': () =>
    'jour où la prévision est faite, mois-jour ; peut être répété (par défaut : 11-01, 12-15, 03-01, 04-01, 05-01)',
  'cli-hindcast-gap': () =>
    'longueur d’une lacune cachée, en jours ; peut être répété (par défaut : 7, 30, 120)',
  'cli-hindcast-table': () => 'table de développement',
  'cli-hindcast-stage': () =>
    'stade prévu (par défaut : hatch); last-hatch et first-emergence sont ce que la levée attend',
  'hindcast-first-eggs': ({ stage }) => `${stage}, premiers œufs (5 %)`,
  'hindcast-last-eggs': ({ stage }) => `${stage}, derniers œufs (95 %)`,
  'cli-hindcast-visits': () =>
    'Avec les visites qu’une équipe aurait pu faire, simulées à partir de chaque hiver caché : une lecture à la main toutes les trois semaines en eau libre, le jour où la glace a pris et celui où elle est partie',
  'cli-hindcast-rows': () => 'avec --json, aussi chaque hiver à chaque station',
  'hindcast-case-history': () => 'Lectures de la station jusqu’au jour de la prévision, aucune autre station',
  'hindcast-case-late-download': () =>
    'Lectures de la station jusqu’au jour de la prévision ; les stations qui transmettent continuent jusqu’à la fin',
  'hindcast-case-under-ice': () =>
    'Les lectures de la station s’arrêtent à la mise en place ; les stations qui transmettent continuent jusqu’au jour de la prévision',
  'hindcast-gaps': () => 'Lacunes cachées dans un relevé mesuré, les voisines conservées (°C)',
  'hindcast-icy': () =>
    'Hivers à glace seulement (60 jours ou plus à 0,5 °C ou moins parmi les 182 premiers) :',
  'hindcast-all-icy': () =>
    'Tous ces hivers sont des hivers à glace (60 jours ou plus à 0,5 °C ou moins parmi les 182 premiers).',
  'hindcast-legend': () =>
    'Jours entre la médiane prévue et la date que donne l’hiver mesuré avec la même table. « Contient » dit combien de fois l’intervalle à 80 % contenait la date : ce devrait être près de 80 %. Le CRPS, en jours, note la fenêtre entière : moins, c’est mieux.',
  'hindcast-column-lead': () => 'Prévue le',
  'hindcast-column-n': () => 'n',
  'hindcast-column-error': () => 'Erreur',
  'hindcast-column-bias': () => 'Biais',
  'hindcast-column-p90': () => '9 sur 10 sous',
  'hindcast-column-holds': () => 'Contient',
  'hindcast-column-width': () => 'Largeur',
  'hindcast-column-days': () => 'Jours',
  'hindcast-plain-ensemble': () => 'Hivers passés',
  'hindcast-plain-neighbour': () => 'Meilleure voisine',
  'hindcast-plain-far-neighbour': () => 'Meilleure à 1 km ou plus',
  'hindcast-column-crps': () => 'CRPS',
  'hindcast-column-station': () => 'Station',
  'hindcast-asked': ({ stage, table, fertilised }) =>
    `Stade « ${stage} », table ${table}, œufs fécondés le ${fertilised}.`,
  'hindcast-beside': () =>
    'Erreur moyenne des méthodes simples, en jours (entre parenthèses celle de cette prévision, mêmes hivers)',
  'hindcast-already-passed': () =>
    'Sous la glace, hivers où le stade était déjà passé le jour de la prévision, ce que personne ne pouvait savoir',
  'hindcast-still-to-come': () =>
    'Sous la glace, hivers où le stade était encore à venir le jour de la prévision',
  'hindcast-by-station': () => 'Erreur moyenne par station, en jours (entre parenthèses les hivers)',
  'hindcast-plain-line': () => 'Ligne droite',
  'hindcast-one-winter': ({ station, winter }) =>
    `${station} n’a qu’un hiver complet (${winter}) : il est prévu d’après les autres stations ou les jours voisins.`,
  'hindcast-no-whole-winter': ({ station }) =>
    `${station} n’a aucun hiver complet et ne sert que de voisine.`,
  'hindcast-not-reached': ({ count }) =>
    count < 2
      ? 'Dans un cas, le relevé s’arrête avant le stade : il est compté à part et n’entre pas dans les erreurs.'
      : `Dans ${whole('fr', count)} cas, le relevé s’arrête avant le stade : ils sont comptés à part et n’entrent pas dans les erreurs.`,
};
