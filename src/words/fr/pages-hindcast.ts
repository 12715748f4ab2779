import type { HindcastPageWords } from '../../pages/hindcast-words.js';
import { decimal, percent, shortDay, whole } from '../format.js';

const days = (value: number) => `${decimal('fr', value, 1)} ${value < 2 ? 'jour' : 'jours'}`;

export const pagesHindcast: {
  [Code in keyof HindcastPageWords]: (words: HindcastPageWords[Code]) => string;
} = {
  'page-nav-hindcast': () => 'Justesse',
  'page-hindcast-title': () => 'Ce qu’aurait valu la prévision',
  'page-hindcast-answer': ({ winters, stage, lead, mae, plain, holds }) =>
    [
      `Pour ${winters === 1 ? 'un hiver caché' : `${whole('fr', winters)} hivers cachés`} de vos propres stations, la prévision du stade « ${stage} » faite le ${shortDay('fr', lead)} s’est trompée de ${days(mae)} en moyenne`,
      plain === null
        ? '.'
        : plain.own === mae
          ? `; seule, la méthode « ${plain.name.toLowerCase()} », de ${days(plain.mae)}.`
          : `; là où la méthode « ${plain.name.toLowerCase()} » donne une réponse, elle s’est trompée de ${days(plain.mae)} et la nôtre de ${days(plain.own)}.`,
      holds === null ? '' : ` L’intervalle à 80 % contenait la date ${percent('fr', holds)} du temps.`,
    ].join(''),
  'page-hindcast-none': () =>
    'Aucune station n’a d’hiver entier à cacher : au moins 235 des 242 jours à compter de la fécondation doivent être mesurés. Chargez des hivers passés, puis revenez ici.',
  'page-hindcast-working': ({ done, all }) =>
    all === 0
      ? 'Le calcul est en cours : chaque hiver passé est caché, puis prévu.'
      : `Le calcul est en cours : ${whole('fr', done)} étapes sur ${whole('fr', all)} sont faites.`,
  'page-hindcast-wait': () => 'Cette page se met à jour d’elle-même toutes les quelques secondes.',
  'page-hindcast-case': () => 'Ce qui était connu',
  'page-hindcast-station': () => 'Station',
  'page-hindcast-stage': () => 'Stade',
  'page-hindcast-table': () => 'Table de développement',
  'page-hindcast-fertilised': () => 'Fécondation (mois-jour)',
  'page-hindcast-show': () => 'Afficher',
  'page-hindcast-ours': () => 'Cette prévision',
  'page-hindcast-persistence': () => 'La dernière semaine continue',
  'page-hindcast-error-chart': ({ stage, first, last }) =>
    `Plus la prévision du stade « ${stage} » est faite tard, moins elle se trompe : de ${days(first)} à ${days(last)}`,
  'page-hindcast-error-axis': () => 'Erreur moyenne, jours',
  'page-hindcast-windows': ({ station, lead, held, winters }) =>
    `${station}, prévision du ${shortDay('fr', lead)} : la fenêtre contenait la date pour ${whole('fr', held)} hivers sur ${whole('fr', winters)}`,
  'page-hindcast-windows-note': () =>
    'Barre : la fenêtre qui doit contenir la date 8 fois sur 10. Trait : sa médiane. Point : la date que donne l’hiver mesuré selon la même table; vide si la fenêtre l’a manquée.',
  'page-hindcast-winter': () => 'Hiver',
  'page-hindcast-came': () => 'Survenu',
  'page-hindcast-median': () => 'Médiane',
  'page-hindcast-window': () => 'Fenêtre à 80 %',
  'page-hindcast-never': () => 'non atteint',
  'page-hindcast-by-lead': () => 'Selon le jour où la prévision est faite, en jours',
  'page-hindcast-past-only': () => 'Avec les seuls hivers précédents',
  'page-hindcast-at-station': ({ station }) => `À ${station}`,
  'page-hindcast-notes': () => 'Sur quoi cela repose',
  'page-hindcast-few': ({ winters }) =>
    `${whole('fr', winters)} hivers, c’est peu : sur si peu, la part contenue peut facilement s’écarter de 20 points des 80 %.`,
};
