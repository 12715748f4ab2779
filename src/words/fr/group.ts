import type { NameWords } from '../../group/unknown-name.js';
import { list } from '../format.js';

export const group: { [Code in keyof NameWords]: (words: NameWords[Code]) => string } = {
  'unknown-box': ({ box, boxes }) =>
    `Il n’y a pas d’incubateur « ${box} » dans la saison : elle ${boxes.length > 0 ? `a ${list('fr', boxes)}` : 'n’en a encore aucun'}.`,
  'unknown-station-name': ({ station, stations }) =>
    `Il n’y a pas de station « ${station} » dans la saison : elle ${stations.length > 0 ? `a ${list('fr', stations)}` : 'n’en a encore aucune'}.`,
  'unknown-table': ({ table, tables }) =>
    `Il n’y a pas de table de développement « ${table} » : il y a ${list('fr', tables)}.`,
  'not-a-load': ({ load }) =>
    `« ${load} » n’est pas un chargement : « underice loads » les énumère par numéro, par exemple 3.`,
  'folder-taken': ({ folder }) =>
    `Le dossier ${folder} contient déjà une saison : nommez un dossier vide ou absent pour la saison inventée.`,
};
