import type { AutumnPageWords } from '../../pages/autumn-words.js';
import { whole, writtenDay } from '../format.js';

const day = (date: string) => writtenDay('fr', date);

export const pagesAutumn: { [Code in keyof AutumnPageWords]: (figures: AutumnPageWords[Code]) => string } = {
  'page-nav-autumn': () => 'Automne et visites',
  'page-autumn-title': () => 'Automne et visites',
  'page-autumn-answer': ({ unplaced, lots }) =>
    unplaced === 0
      ? `Tous les œufs ${lots === 1 ? 'du lot' : `des ${whole('fr', lots)} lots`} sont comptés quelque part.`
      : `${whole('fr', unplaced)} œufs ne sont encore nulle part : mettez-les en incubateur, ou inscrivez-les comme témoins, perdus ou en surplus.`,
  'page-autumn-answer-none': () => 'Aucun lot encore. Commencez par les géniteurs, ou par un lot.',
  'page-autumn-did': () => 'Gardé.',
  'page-autumn-enter': () => 'Inscrire',
  'page-autumn-lots': () => 'Où se trouve chaque œuf',
  'page-autumn-in-boxes': () => 'en incubateur',
  'page-autumn-control': () => 'témoins',
  'page-autumn-lost': () => 'perdus',
  'page-autumn-left-over': () => 'en surplus',
  'page-autumn-unplaced': () => 'nulle part encore',
  'page-autumn-count': ({ eggs, low, high, samples }) =>
    `Compté par ${whole('fr', samples)} échantillons : ${whole('fr', eggs)} œufs, entre ${whole('fr', low)} et ${whole('fr', high)} (95 %).`,
  'page-autumn-count-one': () =>
    'Compté par un seul échantillon : un deuxième dirait à quel point le compte est sûr.',
  'page-autumn-fertilised': ({ rate, of }) => `Fécondés : ${rate} sur ${whole('fr', of)} examinés.`,
  'page-autumn-no-box': ({ lot }) => `Le lot ${lot} n’est encore dans aucun incubateur.`,
  'page-autumn-no-lot': ({ box }) => `L’incubateur ${box} ne contient pas encore d’œufs.`,
  'page-autumn-permits': () => 'Permis',
  'page-autumn-permit': ({ number, from, to, due }) =>
    `${number} : du ${day(from)} au ${day(to)}${due === '' ? '' : `, rapport attendu le ${day(due)}`}`,
  'page-autumn-visits': () => 'Visites',
  'page-autumn-sheet': () => 'Feuilles à imprimer',
  'page-autumn-sheet-answer': () =>
    'Une feuille par site, une ligne par incubateur. Écrivez au crayon : il tient sur le papier mouillé. Transcrivez ensuite, une ligne par incubateur.',
  'page-autumn-hear': () => 'Avant de mettre les œufs en place :',
  'page-autumn-keep-anyway': () => 'J’ai lu ceci : garder tel quel',
  'page-autumn-plan': () => 'Remplir les lignes avec les œufs qui ne sont encore nulle part',
  'page-autumn-plan-none': () =>
    'Il n’y a rien à remplir : aucun incubateur sans œufs n’indique son nombre de compartiments.',
  'page-autumn-paper': () =>
    'Pour écrire sur papier, imprimez les « Feuilles à imprimer », sous Automne et visites.',
  'page-autumn-loggers': () => 'Enregistreurs',
  'page-autumn-samples': () => 'Échantillons comptés',
  'page-autumn-grid': () => 'Transcrire des feuilles',
  'page-autumn-grid-answer': () =>
    'Une ligne par incubateur. La touche de tabulation passe au champ suivant. Les lignes correctes sont gardées; les autres reviennent avec ce qui ne va pas.',
  'page-autumn-grid-refused': () => 'Ces lignes n’ont pas été gardées :',
  'page-autumn-grid-keep': () => 'Garder les lignes',
  'page-autumn-entries': () => 'Inscriptions du terrain',
  'page-autumn-phone': () => 'Sur le téléphone',
  'page-autumn-earlier': () => 'Saisons passées',
  'autumn-permit-ends': ({ number }) => `Le permis ${number} prend fin`,
  'autumn-permit-report': ({ number }) => `Rapport attendu sur le permis ${number}`,
  'autumn-permit-about': ({ from, to, authority }) =>
    `Valable du ${from} au ${to}${authority === '' ? '' : `, ${authority}`}. L’autorité décide.`,
  'page-site-cards': () => 'Fiches des sites',
  'page-site-title': ({ site }) => `Fiche du site : ${site}`,
  'page-site-answer': ({ boxes }) =>
    `${whole('fr', boxes)} ${boxes > 1 ? 'incubateurs' : 'incubateur'} cette saison; rien n’est connu ici des saisons passées.`,
  'page-site-answer-past': ({ boxes, seasons, least, most }) =>
    `${whole('fr', boxes)} ${boxes > 1 ? 'incubateurs' : 'incubateur'} cette saison. ${seasons === 1 ? 'Dans une saison passée' : `Dans ${whole('fr', seasons)} saisons passées`}, ${least === most ? least : `de ${least} à ${most}`} des œufs ont quitté leur incubateur : une limite supérieure.`,
  'page-site-boxes': () => 'Comment retrouver chaque incubateur',
  'page-site-position': () => 'position',
  'page-site-depth': () => 'profondeur',
  'page-site-velocity': () => 'vitesse de l’eau',
  'page-site-past': () => 'Saisons passées à ce site',
  'page-site-interval': () => 'Intervalle à 95 %',
  'page-site-from-to': ({ from, to }) => `de ${from} à ${to}`,
  'page-site-past-note': () =>
    'Un compartiment vide contenait un œuf parti ou disparu : les parts sont des limites supérieures. Les hivers et les lots diffèrent : une seule saison ne fait pas un bon ou un mauvais site.',
  'page-site-edit': () => 'Modifier ce site',
  'cli-sites': () =>
    'chaque site : comment s’y rendre, retrouver ses incubateurs, et ce qui en est sorti par le passé',
  'cli-sites-site': () => 'ce site seulement',
  'page-earlier-answer': ({ tables }) =>
    tables === 0
      ? 'Rien des saisons passées n’est encore gardé. Un tableau d’une ligne par incubateur suffit : CSV ou .xlsx.'
      : `${whole('fr', tables)} ${tables === 1 ? 'tableau est gardé' : 'tableaux sont gardés'}.`,
  'page-earlier-file': () => 'Tableau (CSV ou .xlsx)',
  'page-earlier-read': () => 'Voir ce qu’il dit',
  'page-earlier-take': () => 'Le garder',
  'page-earlier-withdraw': () => 'Le retirer',
  'page-earlier-season': () => 'saison',
  'page-earlier-site': () => 'site',
  'page-earlier-box': () => 'incubateur',
  'page-earlier-lot': () => 'lot',
  'page-earlier-planted': () => 'mis en place',
  'page-earlier-lifted': () => 'levé',
  'page-earlier-eggs': () => 'œufs',
  'page-earlier-empty': () => 'vides',
  'page-earlier-dead': () => 'morts',
  'page-earlier-note': () => 'remarque',
  'page-earlier-one': ({ file, boxes }) => `${file} : ${whole('fr', boxes)} incubateurs`,
};
