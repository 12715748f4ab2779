import type { CountProblemWords } from '../../season/counts.js';
import { whole } from '../format.js';

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

/** Ce qui peut clocher dans un décompte, ou dans un incubateur vérifié et remis en place. */
export const counts: { [Code in keyof CountProblemWords]: (words: CountProblemWords[Code]) => string } = {
  'season.bad-entry': ({ given }) =>
    `« ${given} » ne peut pas désigner une saisie : de 4 à 80 lettres ou chiffres, - _ . ou :.`,
  'season.same-entry': ({ entry }) => `La saisie « ${entry} » figure deux fois : gardez-en une.`,
  'season.counted-more': ({ box, counted, planted }) =>
    `On a compté ${whole('fr', counted)} dans l’incubateur « ${box} », garni de ${whole('fr', planted)} œufs : c’est ${whole('fr', counted - planted)} de trop. Recomptez; si c’est exact, dites que le compte est maintenu.`,
  'season.counted-before-planted': ({ box, counted, planted }) =>
    `L’incubateur « ${box} » a été compté le ${clock(counted)}, avant d’être garni le ${clock(planted)} : l’une des dates est fausse.`,
  'season.kinds-more-than-dead': ({ kinds, dead }) =>
    `Les sortes de morts font ${whole('fr', kinds)} en tout, alors que ${whole('fr', dead)} morts ont été comptés : les sortes font partie des morts.`,
  'season.eggs-more-than-alive': ({ box, eggs, alive }) =>
    `${whole('fr', eggs)} œufs vivants ont été comptés dans l’incubateur « ${box} », et ${whole('fr', alive)} vivants en tout : les œufs font partie des vivants.`,
  'season.no-such-part': ({ box, part, known }) =>
    `L’incubateur « ${box} » n’a pas de partie « ${part} ». Il a : ${known}.`,
  'season.nothing-counted': ({ box }) =>
    `Rien n’a été compté dans l’incubateur « ${box} » : écrivez combien sont vides, morts et vivants, ou qu’il est introuvable ou emporté.`,
  'season.counted-though-gone': ({ box }) =>
    `L’incubateur « ${box} » est introuvable ou emporté, et pourtant quelque chose y a été compté : gardez l’un des deux.`,
  'season.gauge-has-no': ({ station, quantity }) =>
    `La station « ${station} » n’enregistre pas ${quantity === 'level' ? 'le niveau' : 'le débit'} : nommez-en une autre, ou ajoutez la grandeur à ses quantities.`,
};
