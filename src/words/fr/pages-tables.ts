import type { TablesPageWords } from '../../pages/tables-words.js';
import { percent, whole } from '../format.js';

const n = (count: number) => whole('fr', count);

const part = (of: number) => `${percent('fr', Math.abs(of), 1)} ${of < 0 ? 'de moins' : 'de plus'}`;

/** Development tables in French (fr-CA). */
export const pagesTables: { [Code in keyof TablesPageWords]: (words: TablesPageWords[Code]) => string } = {
  'page-tables-title': () => 'Tables de développement',
  'page-tables-answer': ({ tables, own }) =>
    `${n(tables)} tables disent ce que demande chaque stade${own === 0 ? ' ; aucune n’est encore la vôtre.' : `, dont ${own === 1 ? 'une' : n(own)} à vous.`}`,
  'page-tables-shipped': () => 'Livrées avec le programme',
  'page-tables-own': () => 'Les vôtres',
  'page-tables-beside': () => 'Deux tables côte à côte',
  'page-tables-left': () => 'une table',
  'page-tables-right': () => 'l’autre',
  'page-tables-compare': () => 'Comparer',
  'page-table-title': ({ table }) => table,
  'page-table-answer': ({ days, cold }) =>
    `La moitié des œufs éclosent après ${n(days)} jours à 5 °C constants, et après ${n(cold)} jours à 1 °C.`,
  'page-table-answer-plain': ({ table }) =>
    `Ce que demande chaque stade de « ${table} », et d’où vient chaque nombre.`,
  'page-table-days': ({ table }) => `${table} : plus l’eau est froide, plus chaque stade est long à venir`,
  'page-table-x': () => 'température constante (°C)',
  'page-table-y': () => 'jours depuis la fécondation',
  'page-table-broken': () => 'En pointillé là où la ligne n’est pas établie.',
  'page-table-needs': () => 'demande',
  'page-table-holds': () => 'établi',
  'page-table-holds-from': ({ min, max }) => `de ${min} à ${max} °C`,
  'page-table-spread': () => 'dispersion entre œufs',
  'page-table-sources': () => 'sources',
  'page-table-limits': () => 'Ce qui nuit, et quand les œufs ne doivent pas être manipulés',
  'page-table-multiple': ({ factor, stage }) => `${factor} × ${stage}`,
  'page-table-same': ({ stage }) => `comme ${stage}`,
  'page-table-add': () => 'Ajouter la vôtre',
  'page-table-add-what': () =>
    'À partir de jours jusqu’à l’éclosion à températures constantes, comme les donnent les articles et les registres d’écloserie. Les autres formes s’écrivent dans le fichier de saison.',
  'page-table-name': () => 'nom',
  'page-table-id': () => 'nom court, pour le fichier de saison',
  'page-table-species': () => 'espèce',
  'page-table-rows': () => 'jours jusqu’à l’éclosion, une ligne par température',
  'page-table-rows-what': () =>
    'D’abord les °C, puis les jours, comme « 2\u00a0180 ». Au moins deux lignes, la plus froide d’abord.',
  'page-table-eye': () => 'œuf œillé, en fraction du chemin vers l’éclosion',
  'page-table-button': () => 'résorption du sac vitellin, en multiple du chemin vers l’éclosion',
  'page-table-source': () => 'd’où viennent les nombres',
  'page-stock-title': () => 'Ce que vos propres lots ont montré',
  'page-stock-none': () =>
    'Rien encore. Quand des œufs d’un lot sont examinés et comptés (tant d’œillés ou d’éclos sur tant), le résultat est mis ici à côté de la table publiée.',
  'page-stock-shown': ({ table, lots, shown, adjustment, spread, weight }) =>
    `${table} : il a fallu à ${lots === 1 ? 'un de vos lots' : `${lots} de vos lots`} ${part(shown)} que ce que dit la table. Ramené vers la table publiée d’autant plus que les lots sont rares (${percent('fr', weight)} vient d’eux) : ${part(adjustment)}, à ${percent('fr', spread, 1)} près.`,
  'page-stock-beside': () => 'Jours jusqu’à la moitié éclose à température constante',
  'page-stock-published': () => 'Publiée',
  'page-stock-own': () => 'Avec vos lots',
  'page-stock-note': () =>
    'La prévision suit la table publiée et ce qui a été vu de chaque lot cette saison; l’ajustement est mis à côté. Plusieurs examens d’un même lot ne comptent que pour un lot.',
  'page-stock-link': () => 'Ce que cela change en jours',
  'page-table-species-name': ({ species }) => species,
};
