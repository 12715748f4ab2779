import type { WaterWords } from '../../../forecasting/water.js';
import { decimal, whole } from '../format.js';
import { de, que } from './elision.js';

const days = (count: number) => (count < 2 ? `${whole('fr', count)} jour` : `${whole('fr', count)} jours`);
const winters = (count: number) =>
  count < 2 ? `${whole('fr', count)} hiver passé` : `${whole('fr', count)} hivers passés`;
const degrees = (celsius: number) => `${decimal('fr', celsius, 1)} °C`;

/** What the water of a forecast rests on, in French (fr-CA). */
export const water: { [K in keyof WaterWords]: (w: WaterWords[K]) => string } = {
  'own-history': ({ winters: count }) =>
    count === 0
      ? 'Les jours à venir suivent ce qui est habituel à cette station ; aucun hiver complet n’y est encore connu, les fenêtres sont donc larges.'
      : `Les jours à venir suivent ${winters(count)} à cette station, à partir de l’écart d’aujourd’hui par rapport à la normale.`,
  'neighbour-history': ({ winters: count, stations }) =>
    `Les jours à venir suivent ${winters(count)} ${de(stations)}, ramenés à l’eau de cette station.`,
  'stated-curve': () =>
    'Les jours à venir suivent la courbe saisonnière du fichier de saison : aucun hiver passé n’est connu ici, les fenêtres sont donc larges.',
  'no-water': ({ station }) =>
    `On ne peut rien dire des jours à venir à ${station} : il faut un hiver passé, une station qui transmet ou une courbe saisonnière dans le fichier de saison.`,
  'history-not-shared': ({ station, other, shared, least }) =>
    `${other} a un plus long relevé, mais ${shared === 0 ? 'aucun jour' : `${days(shared)} seulement`} en commun avec ${station} ; il en faut ${whole('fr', least)} pour apprendre comment l’une suit l’autre. Chargez ce ${que(other)} a lu pendant que ${station} lisait.`,
  'filled-from': ({ stations, days: count, error }) =>
    count < 2
      ? `${days(count)} sans lectures a été comblé à partir ${de(stations)}, à ${degrees(error)} près.`
      : `${days(count)} sans lectures ont été comblés à partir ${de(stations)}, à ${degrees(error)} près chaque jour.`,
  'same-logger': ({ station, as }) =>
    `${as} indique la même chose ${que(station)} à quelques centièmes de degré près. S’il s’agit du même enregistreur sous un autre nom, retirez-en un : ensemble, ils paraissent plus sûrs qu’ils ne le sont.`,
  'neighbour-doubted': ({ station, days: count }) =>
    `${station} n’a pas été crue pendant ${days(count)} cette saison : elle s’écartait beaucoup des autres stations. Vérifiez son enregistreur, son unité et son horloge.`,
  'as-it-stands': ({ stations, error }) =>
    `Cette station n’a aucun jour en commun avec une autre ; on prend donc l’eau ${de(stations)}, à ${degrees(error)} près. Quelques semaines de ses propres lectures montreraient en quoi elles diffèrent.`,
  'this-season-only': ({ stations }) =>
    `La façon dont cette station suit ${stations} n’a été apprise que cette saison ; les lectures des hivers passés la rendraient plus sûre.`,
  'sightings-used': ({ count }) =>
    count < 2
      ? 'Une observation de visite (lecture à la main ou glace) a servi d’indice sur l’eau.'
      : `${whole('fr', count)} observations de visites (lectures à la main, glace) ont servi d’indices sur l’eau.`,
  'ice-doubted': ({ station }) =>
    `De la glace a été signalée à ${station}, mais ses relevés montrent une eau qui ne gèle pas : l’observation a été mise de côté. Vérifiez de quelle station il s’agit.`,
};
