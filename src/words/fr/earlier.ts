import type { EarlierWords } from '../../earlier/index.js';
import { whole } from '../format.js';

export const earlier: { [Code in keyof EarlierWords]: (figures: EarlierWords[Code]) => string } = {
  'earlier-columns': ({ headers }) =>
    `Ces colonnes ne disent pas de quelle saison ni de quel incubateur ou site il s’agit : ${headers.join(', ')}. Dites quelle colonne est laquelle (saison, et incubateur ou site).`,
  'earlier-no-column': ({ column, headers }) =>
    `Il n’y a pas de colonne « ${column} ». Il y a : ${headers.join(', ')}.`,
  'earlier-no-field': ({ field, fields }) =>
    `« ${field} » n’est rien de ce qu’un incubateur passé peut avoir. Il y a : ${fields.join(', ')}.`,
  'earlier-not-a-table': () =>
    'Ce n’est pas un tableau : une première ligne avec les noms des colonnes, puis une ligne par incubateur (CSV ou .xlsx).',
  'earlier-too-long': ({ rows, most }) =>
    `Le tableau compte ${whole('fr', rows)} lignes; le maximum est de ${whole('fr', most)} : divisez-le.`,
  'earlier-cell': ({ line, column, given }) =>
    `Ligne ${line}, ${column} : « ${given} » n’est pas une date : écrivez 2024-11-04. Rien n’a été gardé.`,
  'earlier-cell-count': ({ line, column, given }) =>
    `Ligne ${line}, ${column} : « ${given} » n’est pas un nombre entier écrit sans séparateur, comme 13000. Rien n’a été gardé.`,
  'earlier-unknown': ({ id }) => `Aucun tableau de saisons passées n’est gardé sous « ${id} ».`,
  'earlier-twice': ({ file, id }) => `Le même tableau est déjà gardé, venu de ${file} (${id}).`,
  'cli-earlier': () => 'mises en incubateur et décomptes des saisons passées : charger, énumérer, retirer',
  'cli-earlier-load': () =>
    'prendre un tableau (CSV ou .xlsx) d’incubateurs passés, une ligne par incubateur',
  'cli-earlier-list': () => 'tableaux de saisons passées qui sont gardés',
  'cli-earlier-withdraw': () => 'retirer un tableau de saisons passées',
  'cli-earlier-id': () => 'tel que « earlier list » le montre',
  'cli-earlier-column': () => 'quelle colonne est laquelle, par exemple eggs="Nb œufs"',
  'cli-earlier-sheet': () => 'la feuille d’un classeur (sinon la première)',
  'cli-earlier-dry-run': () => 'dire ce qui a été compris sans rien garder',
  'cli-earlier-understood': ({ file, boxes, seasons, columns }) =>
    `${file} : ${whole('fr', boxes)} incubateurs de ${seasons.join(', ')}. Colonnes : ${columns.join('; ')}.`,
  'cli-earlier-kept': ({ id }) => `Gardé sous ${id}; « underice earlier withdraw ${id} » le retire.`,
  'cli-earlier-not-kept': () => 'Rien n’a été gardé (--dry-run).',
  'cli-earlier-none': () => 'Aucun tableau de saisons passées n’est gardé.',
  'cli-earlier-withdrawn': ({ id }) => `${id} est retiré.`,
  'cli-earlier-line': ({ id, file, boxes }) => `${id}  ${file} : ${whole('fr', boxes)} incubateurs`,
};
