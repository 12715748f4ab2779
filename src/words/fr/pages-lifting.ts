import type { LiftingPageWords } from '../../lifting/words.js';
import { list, longDay, percent, shortDay, whole } from '../format.js';

const share = (of: number) => (of > 0 && of < 0.1 ? percent('fr', of, 1) : percent('fr', of));

export const pagesLifting: { [Code in keyof LiftingPageWords]: (words: LiftingPageWords[Code]) => string } = {
  'page-nav-lifting': () => 'Levée',
  'page-lifting-title': ({ day }) => `Levée des incubateurs, telle que connue le ${longDay('fr', day)}`,
  'page-lifting-approve': () => 'Approuver ce plan',
  'page-lifting-approve-note': () =>
    'Votre nom et l’heure y sont conservés. D’ici là, chaque fiche dit « ébauche ».',
  'page-lifting-calendar': () => 'Calendrier de l’équipe',
  'page-lifting-calendar-open': ({ day }) => `Fiches de terrain du ${shortDay('fr', day)}`,
  'page-lifting-sheet': ({ site, day }) => `${site} : fiche de terrain du ${shortDay('fr', day)}`,
  'page-lifting-curve-season': ({ day, stillInBox, emerged }) =>
    `Tous les incubateurs ensemble : le ${shortDay('fr', day)}, ${share(stillInBox)} des alevins vésiculés encore dans les incubateurs et ${share(emerged)} des jeunes sortis du gravier`,
  'page-lifting-curve-box': ({ box, day, chance }) =>
    `${box} : le ${shortDay('fr', day)}, les deux seuils sont respectés avec une probabilité de ${percent('fr', chance)}`,
  'page-lifting-curve-box-none': ({ box }) => `${box} : il ne lui reste aucun jour`,
  'page-lifting-line-still': () => 'Encore dans l’incubateur',
  'page-lifting-line-out': () => 'Sortis du gravier',
  'page-lifting-line-chance': () => 'Probabilité des deux seuils',
  'page-lifting-shift-still': () => 'Alevins vésiculés encore en incubateur',
  'page-lifting-shift-out': () => 'Jeunes sortis du gravier',
  'page-lifting-calendar-note': () =>
    'Le chiffre d’un jour : la probabilité que chaque incubateur restant respecte les deux seuils s’il était levé ce jour-là.',
  'page-lifting-axis': () => 'Part',
  'page-lifting-recommended': () => 'Jour prévu',
  'page-lifting-boxes': () => 'Chaque incubateur',
  'page-lifting-shifts': () => 'Ce que coûtent les autres jours',
  'page-lifting-shift': () => 'Le plan entier',
  'page-lifting-shift-days': ({ by }) =>
    by === 0
      ? 'tel que prévu'
      : `${Math.abs(by) === 1 ? 'un jour' : `${whole('fr', Math.abs(by))} jours`} plus ${by < 0 ? 'tôt' : 'tard'}`,
  'page-lifting-rule': ({ after, stillInBox, emerged }) =>
    after
      ? `La règle : lever après la fin de l’émergence, avec au plus ${share(stillInBox)} d’alevins vésiculés encore dans l’incubateur et ${share(emerged)} de jeunes encore dans le gravier.`
      : `La règle : lever avant l’émergence, avec au plus ${share(stillInBox)} d’alevins vésiculés encore dans l’incubateur et ${share(emerged)} de jeunes déjà sortis du gravier. Tous ou aucun sur mille œufs est un extrême qu’aucun jour ne respecte.`,
  'page-lifting-rule-change': () => 'Changer la règle, les seuils ou les limites de l’équipe',
  'page-lifting-change': () => 'Conserver',
  'page-lifting-field-rule': () => 'Règle (celle de la personne biologiste)',
  'page-lifting-rule-before': () => 'avant l’émergence',
  'page-lifting-rule-after': () => 'après la fin de l’émergence',
  'page-lifting-field-still': () => 'Alevins vésiculés encore dans l’incubateur, au plus (%)',
  'page-lifting-field-emerged': () => 'Jeunes du mauvais côté de l’émergence, au plus (%)',
  'page-lifting-field-boxes': () => 'Incubateurs par jour, au plus',
  'page-lifting-field-trips': () =>
    'Sites d’une même sortie (une sortie par ligne, sites séparés par des virgules)',
  'page-lifting-field-gauge': () => 'Station avec une limite de niveau ou de débit',
  'page-lifting-field-quantity': () => 'Limite de',
  'page-lifting-level': () => 'niveau (m)',
  'page-lifting-discharge': () => 'débit (m³/s)',
  'page-lifting-field-most': () => 'Personne n’entre dans l’eau au-dessus de',
  'page-lifting-field-stop': () => 'Règle d’arrêt : remettre au-delà de tant d’alevins vésiculés vivants',
  'page-lifting-blocked-link': () => 'Exclure des jours : glace, crue, pas de permis, pas d’équipe',
  'page-lifting-tallies': () => 'Décomptes',
  'page-lifting-outcome': () => 'Justesse de la prévision',
  'page-lifting-outcome-answer': ({ said, within }) =>
    `Ce qu’on a trouvé était dans l’intervalle de 80 % de ${whole('fr', within)} prévisions sur ${whole('fr', said)} faites auparavant.`,
  'page-tally-eggs': ({ eggs }) => `${whole('fr', eggs)} œufs`,
  'page-lifting-would': () => 'Ce qui rendrait un meilleur jour possible',
  'page-sheet-title': ({ site, day }) => `${site} : levée du ${longDay('fr', day)}`,
  'page-sheet-draft': () => 'ÉBAUCHE : ce plan n’est pas approuvé. Ne levez rien d’après lui.',
  'page-sheet-stop': () => 'Avant tout',
  'page-sheet-stop-rule': ({ box, most, boxes }) =>
    `N’ouvrez que l’incubateur ${box}. S’il contient plus de ${whole('fr', most)} alevins vésiculés vivants, refermez-le, remettez-le où il était et laissez ${boxes === 2 ? 'l’autre' : `les ${whole('fr', boxes - 1)} autres`} en place.`,
  'page-sheet-stop-alone': ({ box, most }) =>
    `Ouvrez l’incubateur ${box}. S’il contient plus de ${whole('fr', most)} alevins vésiculés vivants, refermez-le et remettez-le où il était.`,
  'page-sheet-stop-enter': () =>
    'Notez-le « vérifié et remis en place » : ce n’est pas une levée, et le plan en change aussitôt.',
  'page-sheet-water': () => 'Avant d’entrer dans l’eau',
  'page-sheet-where': () => 'Où ils se trouvent et comment ils sont attachés',
  'page-sheet-bring': () => 'À apporter',
  'page-sheet-bring-list': () =>
    'Permis; cette fiche et un crayon; couteau ou pinces pour les attaches; seau ou bac d’eau de la rivière; cuillère et compteur; plateau blanc et loupe; sacs et étiquettes pour les échantillons; règle pour le limon; thermomètre; bottes-pantalons, gilets de sauvetage, corde; jamais seul.',
  'page-sheet-boxes': () => 'Incubateurs',
  'page-sheet-box': ({ box, eggs, still, out }) =>
    `${box} : ${whole('fr', eggs)} œufs mis; on attend ${share(still)} encore dedans, ${share(out)} sortis du gravier.`,
  'page-sheet-form': () => 'Décompte',
  'page-sheet-print': () => 'Imprimez cette page pour la rivière; elle tient sur une feuille par site.',
  'page-sheet-not-planned': () =>
    'Le plan ne lève rien ici ce jour-là : voici les incubateurs qui se trouvent au site.',
  'page-sheet-signed': () => 'Compté par, date, heure',
  'page-tally-title': () => 'Décomptes',
  'page-tally-answer': ({ tallied, boxes }) =>
    `${whole('fr', tallied)} incubateur${tallied > 1 ? 's' : ''} sur ${whole('fr', boxes)} compté${tallied > 1 ? 's' : ''}.`,
  'page-tally-box-title': ({ box }) => `Décompte de l’incubateur ${box}`,
  'page-tally-box-answer': ({ box, eggs, mayCount }) =>
    `${whole('fr', eggs)} œufs ont été mis dans ${box}.${mayCount ? ' Trois nombres suffisent; le reste peut attendre.' : ''}`,
  'page-tally-empty': () => 'Vides',
  'page-tally-dead': () => 'Morts',
  'page-tally-alive': () => 'Vivants',
  'page-tally-alive-eggs': () => 'Des vivants, œufs non éclos',
  'page-tally-more': () => 'Plus : partie, œufs vivants, sortes de morts, limon, dommages',
  'page-tally-part': () => 'Partie de l’incubateur',
  'page-tally-part-whole': () => 'l’incubateur entier',
  'page-tally-counter': () => 'Compté par',
  'page-tally-found': () => 'L’incubateur était',
  'page-tally-found-at': () => 'Retrouvé où',
  'page-tally-kinds': () => 'Parmi les morts, pour autant qu’on puisse le dire',
  'page-tally-kind-neverFertilised': () => 'jamais fécondés',
  'page-tally-kind-beforeEyeUp': () => 'morts avant le stade œillé',
  'page-tally-kind-eyedDied': () => 'œillés puis morts',
  'page-tally-kind-hatchedDied': () => 'éclos puis morts',
  'page-tally-kind-fungus': () => 'champignon',
  'page-tally-kind-silted': () => 'ensevelis de limon',
  'page-tally-kind-cannotTell': () => 'morts, impossible à dire',
  'page-tally-silt': () => 'Limon, épaisseur en mm',
  'page-tally-damage': () => 'Dommages',
  'page-tally-stands': () => 'Il en sort plus qu’il n’en avait été noté : le compte est maintenu',
  'page-tally-keep': () => 'Conserver le décompte',
  'page-tally-next': () => 'Incubateur suivant',
  'page-tally-yet': () => 'Incubateurs à compter',
  'page-tally-done': () => 'Comptés',
  'page-tally-none': () => 'Aucun incubateur n’a encore été décompté.',
  'page-put-back-title': () => 'Vérifié et remis en place',
  'page-put-back-note': () =>
    'L’incubateur a été ouvert, il en contenait encore trop, et il a été remis : ce n’est pas une levée. Ses fenêtres et le plan sont recalculés aussitôt.',
  'page-put-back-alive': () => 'Vivants dedans',
  'page-put-back-keep': () => 'Conserver : remis en place',
  'http-calendar-lifting': ({ sites, draft }) =>
    `Lever les incubateurs, ${list('fr', sites)} (${draft ? 'ébauche' : 'estimation'})`,
  'http-calendar-lifting-about': ({ boxes, chance, draft }) =>
    `${draft ? 'Une ébauche : personne ne l’a approuvée. ' : ''}Incubateurs ${list('fr', boxes)}. Probabilité des deux seuils : ${percent('fr', chance)}. L’eau du matin décide.`,
};
