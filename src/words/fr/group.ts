import type { NameWords } from '../../group/unknown-name.js';
import { fewOf } from '../format.js';
import { de } from './elision.js';

export const group: { [Code in keyof NameWords]: (words: NameWords[Code]) => string } = {
  'unknown-box': ({ box, boxes }) =>
    `Il n’y a pas d’incubateur « ${box} » dans la saison : elle ${boxes.length > 0 ? `a ${fewOf('fr', boxes)}` : 'n’en a encore aucun'}.`,
  'unknown-station-name': ({ station, stations }) =>
    `Il n’y a pas de station « ${station} » dans la saison : elle ${stations.length > 0 ? `a ${fewOf('fr', stations)}` : 'n’en a encore aucune'}.`,
  'unknown-table': ({ table, tables }) =>
    `Il n’y a pas de table de développement « ${table} » : il y a ${fewOf('fr', tables)}.`,
  'unknown-thing': ({ id, ids }) =>
    `La saison n’a rien qui s’appelle « ${id} » dans cette liste : ${ids.length > 0 ? `il y a ${fewOf('fr', ids)}` : 'elle est vide'}.`,
  'unknown-layout': ({ layout, layouts }) =>
    `Il n’y a pas de disposition enregistrée « ${layout} » : il ${layouts.length > 0 ? `y a ${fewOf('fr', layouts)}` : 'n’y en a encore aucune'}.`,
  'no-layout-needed': ({ file }) =>
    `Aucune disposition n’a été enregistrée d’après ${file} : soit il n’a pas été compris, soit son format s’explique lui-même et n’en demande pas.`,
  'not-a-load': ({ load }) =>
    `« ${load} » n’est pas un chargement : « underice loads » les énumère par numéro, par exemple 3.`,
  'folder-taken': ({ folder }) =>
    `Le dossier ${folder} contient déjà une saison : nommez un dossier vide ou absent pour la saison inventée.`,
  'season-moved': ({ expected, version, by }) =>
    `La saison a changé depuis que vous l’avez ouverte : vous avez modifié la version ${expected}, et la version ${version} ${de(by)} est maintenant en vigueur. Rien n’a été écrasé : regardez la leur, puis refaites votre changement.`,
  'unknown-version': ({ version }) => `Il n’y a pas de version ${version} de la saison.`,
  'nothing-to-undo': () => 'La saison n’a pas de version antérieure à laquelle revenir.',
};
