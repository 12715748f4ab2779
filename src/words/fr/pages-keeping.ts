import type { KeepingPageWords } from '../../pages/keeping-words.js';
import { whole } from '../format.js';

/** Sauvegardes, formats ouverts, vérification du dossier, réglages en vigueur. */
export const pagesKeeping: { [Code in keyof KeepingPageWords]: (words: KeepingPageWords[Code]) => string } = {
  'page-keeping-title': () => 'Garder les données en sûreté',
  'page-keeping-answer': ({ loads }) =>
    loads === 0
      ? 'Il n’y a encore aucun chargement; la saison et ses versions peuvent être gardées quand même.'
      : `${loads === 1 ? 'Un chargement' : `${whole('fr', loads)} chargements`} de lectures et toutes les versions de la saison sont au même endroit. Une copie ailleurs, après chaque visite, est ce qui les sauve si cet endroit est perdu.`,
  'page-keeping-link': () => 'Sauvegarde et réglages',
  'page-keeping-backup': () => 'Une sauvegarde',
  'page-keeping-backup-what': () =>
    'Un seul fichier avec tout : données, saisons, photographies, comptes, personnes averties. Gardez-le sur un autre disque, où personne d’autre ne peut le lire. « underice restore » en refait un dossier.',
  'page-keeping-backup-do': () => 'Télécharger une sauvegarde',
  'page-keeping-open': () => 'Formats ouverts',
  'page-keeping-open-what': () =>
    'Une archive de CSV, de JSON et du fichier de saison que tout programme lit, sans les comptes. Une fois extraite, « underice restore » la relit.',
  'page-keeping-open-do': () => 'Télécharger l’archive',
  'page-keeping-check': () => 'Tout est-il entier?',
  'page-keeping-check-what': () =>
    'Chaque chargement est relu et comparé à ce qui avait été accepté. Avec des années de lectures, cela prend une minute.',
  'page-keeping-check-do': () => 'Vérifier maintenant',
  'page-keeping-settings': () => 'Réglages en vigueur',
  'page-keeping-settings-what': () =>
    'Ils se changent dans settings.yaml du dossier de données, par des variables ou au démarrage du service, qui les lit en démarrant.',
};
