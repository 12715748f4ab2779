import type { ForecastingWords } from '../en/forecasting.js';
import { decimal, longDay, percent, significant, whole } from '../format.js';
import { stageInFrench } from '../stages.js';
import { de } from './elision.js';

const ofStage = (name: string) => stageInFrench(name).of;
const theStage = (name: string) => stageInFrench(name).the;
const day = (at: number) => longDay('fr', at);
const days = (count: number) =>
  Math.round(count) < 2 ? `${whole('fr', count)} jour` : `${whole('fr', count)} jours`;
const degrees = (celsius: number) => `${figure(celsius)} °C`;
const units = (count: number) => `${whole('fr', count)} degrés-jours`;
const narrower = (by: number, name: string) =>
  by < 0.5
    ? `ne resserrerait guère la fenêtre ${ofStage(name)}`
    : `resserrerait la fenêtre ${ofStage(name)} d’environ ${days(by)}`;
/** Devant ce qui s’y oppose : « guère, et », « de deux jours, mais ». */
const but = (by: number) => (by < 0.5 ? ', et' : ', mais');
const outstanding = (station: string, count: number) =>
  `L’enregistreur ${de(station)} contient ${days(count)} à relever`;
const notNow = {
  handling: 'toute manipulation tue ces œufs en ce moment.',
  ice: 'l’eau est peut-être sous la glace.',
  blocked: 'aucun incubateur ne peut être ouvert ici aujourd’hui.',
};
interface Seen {
  readonly lot: string;
  readonly stage: string;
  readonly day: number;
  readonly seen: number;
  readonly of: number;
  readonly moved: number;
}
const seenStage = ({ lot, stage, day: at, seen, of }: Seen) =>
  `Lot ${lot}, ${day(at)} : sur ${whole('fr', of)} œufs regardés, ${whole('fr', seen)} ${seen < 2 ? 'avait' : 'avaient'} atteint ${theStage(stage)}.`;
const movedBy = ({ stage, moved }: Seen) =>
  Math.abs(moved) < 0.5
    ? `La fenêtre ${ofStage(stage)} reste où elle était.`
    : `La fenêtre ${ofStage(stage)} est ${moved > 0 ? 'retardée' : 'avancée'} de ${days(Math.abs(moved))}.`;
const row = (name: string) => `Ligne « ${name} »`;
const figure = (value: number) => significant('fr', value);

/** The forecast's remarks and what is wrong with a development table, in French (fr-CA). */
export const forecasting: {
  [Code in keyof ForecastingWords]: (words: ForecastingWords[Code]) => string;
} = {
  'cannot-say': ({ needs, station }) =>
    needs === 'station'
      ? 'Impossible à dire : cet incubateur ne nomme aucune station. Il en faut une, ou une courbe saisonnière dans le fichier de saison.'
      : needs === 'later-water'
        ? `Impossible à dire : l’eau ${de(station)} n’est pas connue après son dernier jour. Il faut un hiver passé à cette station, une station qui transmet, ou une courbe saisonnière dans le fichier de saison.`
        : `Impossible à dire : on ne sait rien de l’eau ${de(station)}. Il faut des lectures, une station voisine qui en a, ou une courbe saisonnière dans le fichier de saison.`,
  'water-ends': ({ stage, station, from }) =>
    `Impossible à dire pour tous les œufs quand ils atteignent ${theStage(stage)} : aucun hiver passé à ${station} n’a de lectures à partir du ${day(from)}. Il faut une station voisine qui en a, ou une courbe saisonnière dans le fichier de saison.`,
  'not-reached': ({ stage, through, share }) =>
    `Dans ${percent('fr', share)} des hivers possibles, les derniers œufs n’atteignent pas ${theStage(stage)} au ${day(through)}, où la prévision s’arrête.`,
  'rate-summation': ({ table }) =>
    `Le développement est additionné jour par jour avec la table « ${table.fr} », jamais à partir de la moyenne d’une saison.`,

  'logger-accuracy': ({ station, accuracy }) =>
    `L’enregistreur ${de(station)} est tenu pour juste à ${degrees(accuracy)} près, avec la même erreur tout l’hiver.`,
  'accuracy-not-stated': ({ station, assumed }) =>
    `Aucune exactitude n’est indiquée pour ${station} : on suppose ${degrees(assumed)}.`,
  'gravel-offset': ({ station, spread }) =>
    `La station ${station} lit le cours d’eau, les œufs peuvent être dans le gravier : on suppose la même eau, à ${degrees(spread)} près tout l’hiver.`,
  'leads-instead': ({ station, first, spread }) =>
    `La station ${first} a trop peu de lectures : ${station} tient lieu de l’eau de cet incubateur, à ${degrees(spread)} près.`,
  'unknown-station': ({ station }) =>
    `L’incubateur nomme la station ${station}, dont on ne sait rien : vérifiez le fichier de saison.`,
  'few-winters': ({ winters }) =>
    winters === 1
      ? 'Un seul hiver passé appuie les jours à venir : les fenêtres sont élargies en conséquence.'
      : `Seulement ${whole('fr', winters)} hivers passés appuient les jours à venir : les fenêtres sont élargies en conséquence.`,
  'before-stated': ({ lot, celsius, days: count }) =>
    `Le lot ${lot} a passé ${days(count)} à ${degrees(celsius)}, selon ce qui est indiqué, avant d’être mis en place.`,
  'before-station': ({ lot, station, days: count, missing }) =>
    missing === 0
      ? `Le lot ${lot} a passé ${days(count)} dans l’eau ${de(station)} avant d’être mis en place.`
      : `Le lot ${lot} a passé ${days(count)} dans l’eau ${de(station)} avant d’être mis en place ; ${days(missing)} sans lecture y sont comblés en ligne droite.`,
  'before-station-silent': ({ lot, station, days: count }) =>
    `Le lot ${lot} a passé ${days(count)} à ${station} avant d’être mis en place, mais on n’en a aucune lecture : on prend l’eau de l’incubateur. Chargez ses lectures ou indiquez une température.`,
  'before-as-stream': ({ lot, days: count }) =>
    `Rien n’est indiqué pour les ${days(count)} avant la mise en place du lot ${lot} : on prend l’eau de l’incubateur dès la fécondation.`,
  'planted-before-fertilised': ({ lot }) =>
    `Selon le fichier de saison, le lot ${lot} a été mis en place avant sa fécondation : on le compte dès la fécondation.`,
  'not-fertilised': ({ lot, day: at }) =>
    `Le lot ${lot} n’est fécondé que le ${day(at)} : tout ce qui suit est à venir.`,
  'not-planted': ({ day: at }) => `Les œufs ne sont mis en place que le ${day(at)}.`,
  'lifted-already': ({ day: at }) =>
    `L’incubateur a été levé le ${day(at)} : l’avancement est celui de ce jour-là.`,
  'no-fills': () => 'Cet incubateur ne contient pas d’œufs : ajoutez un remplissage au fichier de saison.',
  'unknown-lot': ({ lot }) =>
    `L’incubateur nomme le lot ${lot}, absent du fichier de saison : ses œufs ne sont pas comptés.`,
  'table-from-memory': ({ table }) =>
    `Certains nombres de la table « ${table.fr} » ont été notés de mémoire, sans avoir été vus dans leur source.`,
  'table-spread-ours': ({ table }) =>
    `La dispersion des œufs dans la table « ${table.fr} » est en partie une estimation de ce projet.`,
  'stage-equated': ({ stage, with: other }) =>
    `On suppose que ${theStage(stage)} vient en même temps que ${theStage(other)}, avec une dispersion plus large.`,
  'outside-validity': ({ stage, min, max }) =>
    `La fenêtre ${ofStage(stage)} s’appuie sur de l’eau hors de l’intervalle de ${figure(min)} à ${figure(max)} °C, où ses nombres sont établis.`,
  'stage-not-in-every-table': ({ stage, lots }) =>
    `La fenêtre ${ofStage(stage)} laisse de côté les lots dont la table n’a pas ce stade : ${lots}.`,

  'old-rule-agrees': ({ days: count }) =>
    count < 0.5
      ? 'La règle fixe donne le même jour.'
      : `La règle fixe et la fenêtre sont à ${days(count)} l’une de l’autre : elles concordent.`,
  'old-rule-late-cold': ({ days: count, coldDays, share, units: gathered }) =>
    `La règle fixe arrive ${days(count)} plus tard : en ${days(coldDays)} à 1 °C ou moins, les œufs font ${percent('fr', share)} du chemin vers l’éclosion, alors que la règle n’y accumule que ${units(gathered)}.`,
  'old-rule-late': ({ days: count, needed, rule }) =>
    `La règle fixe arrive ${days(count)} plus tard : dans cette eau, la moitié des œufs éclosent après ${units(needed)}, et non ${whole('fr', rule)}.`,
  'old-rule-early': ({ days: count, needed, rule }) =>
    `La règle fixe arrive ${days(count)} plus tôt : dans cette eau, la moitié des œufs n’éclosent qu’après ${units(needed)}, et non ${whole('fr', rule)}.`,
  'old-rule-never': ({ gathered, rule, through }) =>
    `La règle fixe n’a pas de date pour l’éclosion : l’eau connue, jusqu’au ${day(through)}, n’accumule que ${units(gathered)} sur ${whole('fr', rule)}.`,
  'old-rule-alone': ({ rule }) =>
    `Seule la règle fixe de ${units(rule)} donne ici une date ; il n’y a pas de fenêtre d’éclosion à lui comparer.`,
  'old-rule-no-water': ({ rule }) =>
    `La règle fixe de ${units(rule)} ne donne pas de date non plus : l’eau n’est pas connue.`,

  'read-logger': ({ station, days: count, narrower: by, stage }) =>
    `${outstanding(station, count)} : ce relevé ${narrower(by, stage)}.`,
  'read-logger-after-ice': ({ station, days: count, narrower: by, stage }) =>
    `${outstanding(station, count)} : ce relevé ${narrower(by, stage)}${but(by)} l’eau est peut-être sous la glace. Faites-le après le départ de la glace.`,
  'read-logger-after-eggs': ({ station, days: count, narrower: by, stage, until }) =>
    `${outstanding(station, count)} : ce relevé ${narrower(by, stage)}${but(by)} l’enregistreur est avec des œufs que toute manipulation tue en ce moment. ${until === null ? 'Laissez-le jusqu’à ce qu’ils soient œillés.' : `Laissez-le jusque vers le ${day(until)}, quand ils seront œillés.`}`,
  'read-logger-other-day': ({ station, days: count, narrower: by, stage }) =>
    `${outstanding(station, count)} : ce relevé ${narrower(by, stage)}${but(by)} l’enregistreur est avec des œufs et aucun incubateur ne peut être ouvert aujourd’hui. Faites-le un jour qui n’est pas bloqué.`,
  'one-more-station': ({ narrower: by, stage }) =>
    `Une station de plus qui transmet, dans cette eau ou tout près, ${narrower(by, stage)}.`,
  'observe-stage': ({ eggs, seen, narrower: by, stage }) =>
    `Regarder ${whole('fr', eggs)} œufs pour ${theStage(seen)} ${narrower(by, stage)}. N’ouvrez l’incubateur que là où le permis et la personne biologiste responsable l’autorisent.`,
  'observe-not-now': ({ seen, narrower: by, stage, why }) =>
    `Regarder des œufs pour ${theStage(seen)} ${narrower(by, stage)}, mais pas maintenant : ${notNow[why]} D’ici là, ce sont les relevés et les stations qui aident.`,
  'observation-used': (seen) => `${seenStage(seen)} ${movedBy(seen)}`,
  'observation-surprises': (seen) =>
    `${seenStage(seen)} Presque aucun hiver possible ne s’accorde avec cela : on n’y croit qu’en partie. Vérifiez le lot, l’incubateur et la date. ${movedBy(seen)}`,
  'read-logger-to-lead': ({ station, days: count }) =>
    `${outstanding(station, count)} : une fois le relevé fait, cette station représente elle-même l’incubateur.`,
  'name-a-station': () => 'Nommez une station pour cet incubateur dans le fichier de saison.',
  'history-or-curve': () =>
    'Chargez des hivers passés de cette station, ou ceux d’une voisine qui a quelques semaines en commun avec elle, ou indiquez une courbe saisonnière dans le fichier de saison.',

  'table-not-a-number': ({ row: name, field, value }) =>
    `${row(name)} : ${field} vaut « ${value} », qui n’est pas un nombre.`,
  'table-no-stages': () => 'La table n’a pas de stades : il en faut au moins un.',
  'table-stage-twice': ({ row: name }) =>
    `${row(name)} : ce stade figure deux fois dans la table ; il faut une ligne par stade.`,
  'table-days-rise': ({ row: name, celsius, days: count, before }) =>
    `${row(name)} : ${figure(count)} jours à ${degrees(celsius)} après ${figure(before)} jours en eau plus froide. Les œufs demandent moins de jours en eau plus chaude : les jours doivent diminuer quand la température monte.`,
  'table-temperatures-unsorted': ({ row: name, celsius, before }) =>
    `${row(name)} : ${degrees(celsius)} vient après ${degrees(before)}. Énumérez les températures de la plus froide à la plus chaude, chacune une fois.`,
  'table-too-few-rows': ({ row: name, rows }) =>
    `${row(name)} : nombre de températures énumérées : ${whole('fr', rows)} ; il en faut au moins deux pour aller de l’une à l’autre.`,
  'table-not-positive': ({ row: name, field, value }) =>
    `${row(name)} : ${field} vaut ${figure(value)} ; il doit dépasser 0.`,
  'table-law-slows': ({ row: name, field, value, celsius }) =>
    `${row(name)} : avec ${field} = ${figure(value)}, les jours augmentent avec la température à ${degrees(celsius)}. Ils doivent diminuer dans tout l’intervalle de validité.`,
  'table-power-undefined': ({ row: name, alpha, min }) =>
    `${row(name)} : la loi de puissance n’a pas de valeur à son alpha de ${degrees(alpha)} ni au-dessous, mais la ligne se dit valable dès ${degrees(min)}. Alpha doit être plus bas.`,
  'table-units-never': ({ row: name, base, max }) =>
    `${row(name)} : rien ne s’accumule au-dessous de sa base de ${degrees(base)}, mais la ligne ne se dit valable que jusqu’à ${degrees(max)}. La base doit être plus basse.`,
  'table-rows-outside-validity': ({ row: name, min, max }) =>
    `${row(name)} : les températures énumérées vont de ${degrees(min)} à ${degrees(max)}, et l’intervalle de validité les dépasse. Indiquez un intervalle compris entre elles.`,
  'table-refers-to-itself': ({ row: name }) =>
    `${row(name)} : elle s’appuie sur elle-même ; donnez-lui une loi ou nommez un autre stade.`,
  'table-refers-to-unknown': ({ row: name, to }) =>
    `${row(name)} : elle s’appuie sur « ${to} », qui n’est pas dans la table.`,
  'table-after-later': ({ row: name, to }) =>
    `${row(name)} : elle se compte après « ${to} », qui vient plus loin. Énumérez les stades dans l’ordre où les œufs les passent.`,
  'table-loop': ({ row: name, loop }) =>
    `${row(name)} : elle s’appuie sur elle-même en passant par d’autres : ${loop}. L’une d’elles doit avoir sa propre loi.`,
  'table-multiple-of-counted': ({ row: name, to }) =>
    `${row(name)} : c’est un multiple de « ${to} », qui se compte après un autre stade. Prenez un multiple d’un stade compté depuis la fécondation.`,
  'table-out-of-order': ({ row: name, before, celsius, days: count, daysBefore }) =>
    `${row(name)} : à ${degrees(celsius)}, ce stade vient après ${decimal('fr', count, 1)} jours, avant « ${before} » à ${decimal('fr', daysBefore, 1)} jours, qui est énuméré d’abord. Énumérez les stades dans l’ordre où les œufs les passent.`,
  'table-negative-spread': ({ row: name, field, value }) =>
    `${row(name)} : ${field} vaut ${figure(value)} ; une dispersion ne peut pas être inférieure à 0.`,
  'table-wide-spread': ({ row: name, field, value }) =>
    `${row(name)} : ${field} vaut ${figure(value)} ; une dispersion est une fraction du chemin, au plus ${figure(0.3)} (${figure(0.03)} est courant).`,
  'table-span-empty': ({ row: name, field, from, to }) =>
    `${row(name)} : ${field} va de ${figure(from)} à ${figure(to)} ; il doit commencer à 0 ou plus et finir après son début.`,
  'table-leaves-box': ({ row: name, days: count, min, max }) =>
    `${row(name)} : les alevins vésiculés quittent l’incubateur après ${figure(count)} jours, entre ${figure(min)} et ${figure(max)} ; ces nombres doivent être dans l’ordre et au moins 0.`,
  'table-hours-negative': ({ row: name, value }) =>
    `${row(name)} : les heures valent ${figure(value)} ; il en faut 0 ou plus.`,
};
