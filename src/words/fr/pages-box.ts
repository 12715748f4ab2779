import type { BoxPageWords } from '../../pages/box-words.js';
import { decimal, longDay, whole } from '../format.js';
import { stageInFrench } from '../stages.js';

const day = (at: number) => longDay('fr', at);
const n = (count: number) => whole('fr', count);
const days = (count: number) => (count < 2 ? `${n(count)} jour` : `${n(count)} jours`);

/** A box's page in French (fr-CA). */
export const pagesBox: { [Code in keyof BoxPageWords]: (words: BoxPageWords[Code]) => string } = {
  'page-box-title': ({ box, day: at }) => `Incubateur ${box}, ${day(at)}`,
  'page-box-answer': ({ eggs, now, next, median, from, to }) =>
    [
      eggs === 0
        ? 'Cet incubateur ne contient pas d’œufs.'
        : now === null
          ? `On ne peut encore rien dire des ${n(eggs)} œufs.`
          : `${n(eggs)} œufs : ${now}.`,
      ...(next === null || median === null
        ? []
        : [
            `La moitié devraient atteindre ${stageInFrench(next).the} vers le ${day(median)}${
              from === null || to === null ? '' : `, entre le ${day(from)} et le ${day(to)}, 8 fois sur 10`
            }.`,
          ]),
    ].join(' '),
  'page-box-windows': () => 'Fenêtres',
  'page-box-windows-whole': () => 'Tous les œufs de l’incubateur',
  'page-box-windows-lot': ({ lot, eggs }) => `Lot ${lot}, ${n(eggs)} œufs`,
  'page-box-first': () => 'premiers (5 %)',
  'page-box-median': () => 'médiane',
  'page-box-last': () => 'derniers (95 %)',
  'page-box-passed': () => 'probablement passé',
  'page-box-outside': () => 's’appuie sur une eau hors de l’intervalle de la table',
  'page-box-windows-note': () =>
    'Entre parenthèses : les jours entre lesquels chaque date tombe 8 fois sur 10.',
  'page-box-old-rule': () => 'L’ancienne règle, à côté',
  'page-box-old-rule-date': ({ units, day: at }) =>
    `${n(units)} degrés-jours donneraient l’éclosion le ${day(at)}.`,
  'page-box-progress': () => 'Avancement',
  'page-box-progress-finding': ({ lot, share, stage }) => `Lot ${lot} : ${share} du chemin (${stage})`,
  'page-box-progress-unit': ({ stage }) => `avancement (${stage})`,
  'page-box-units-finding': ({ lot, units }) => `Lot ${lot} : ${n(units)} degrés-jours accumulés`,
  'page-box-units-unit': () => 'degrés-jours (°C·jour)',
  'page-box-water': () => 'L’eau',
  'page-box-water-finding': ({ station, measured, filled, projected }) =>
    `Eau à ${station} : ${days(measured)} mesurés, ${n(filled)} comblés, ${n(projected)} projetés`,
  'page-box-water-none': () => 'On ne sait encore rien de l’eau de cet incubateur.',
  'page-box-water-unit': () => 'moyenne du jour (°C)',
  'page-box-water-key': () =>
    'Ligne continue : mesuré. Tirets : comblé d’après d’autres stations. Points : projeté d’après des hivers passés. La bande pâle tient 8 fois sur 10.',
  'page-box-filled': () => 'D’où viennent les jours comblés',
  'page-box-filled-none': () => 'Aucun jour de cet hiver n’a dû être comblé.',
  'page-box-filled-days': () => 'jours',
  'page-box-filled-from': () => 'd’après la station',
  'page-box-weight': () => 'poids',
  'page-box-slope': () => 'pente',
  'page-box-intercept': () => 'ordonnée à l’origine (°C)',
  'page-box-n': () => 'jours comparés',
  'page-box-error': () => 'erreur (°C)',
  'page-box-scatter-link': () => 'Voir les stations l’une contre l’autre',
  'page-box-scatter-title': ({ box }) => `Incubateur ${box} : d’où viennent les jours comblés`,
  'page-box-scatter-answer': ({ count }) =>
    count === 1
      ? 'Une station a aidé à combler les lacunes de cet incubateur.'
      : `${n(count)} stations ont aidé à combler les lacunes de cet incubateur.`,
  'page-box-scatter-finding': ({ station, from, n: count, error }) =>
    `${station} suit ${from} à ${decimal('fr', error, 2)} °C près sur ${days(count)}`,
  'page-box-scatter-note': () =>
    'Chaque point est un jour mesuré aux deux stations. La ligne est la relation utilisée ; elle peut changer avec la saison, et l’erreur est ce dont elle s’est trompée sur des jours qu’elle n’avait pas vus.',
  'page-box-method': () => 'Comment les dates sont obtenues',
  'page-box-assumes': () => 'Ce qu’elles tiennent pour acquis',
  'page-box-sharpen': () => 'Ce qui les préciserait',
  'page-box-observed': () => 'Stades observés',
  'page-box-observed-none': () => 'Personne n’a encore noté de stade pour cet incubateur.',
  'page-box-observed-row': ({ day: at, stage, seen, of, lot, note }) =>
    `${day(at)} : ${stage}${seen === null ? '' : `, ${n(seen)}${of === null ? '' : ` sur ${n(of)}`} œufs`}${lot === null ? '' : `, lot ${lot}`}${note === null ? '' : `. ${note}`}`,
  'page-box-observed-add': () => 'Noter un stade observé',
  'page-box-observed-caution': () =>
    'N’ouvrez jamais un incubateur pour regarder : les œufs qui ne sont pas œillés meurent d’être manipulés. Notez ce qui a été vu chez le témoin en écloserie ou lors d’une visite prévue de toute façon.',
  'page-box-observed-seen': () => 'combien y étaient rendus',
  'page-box-observed-of': () => 'sur combien d’œufs regardés',
  'page-box-observed-kept': () => 'L’observation est notée.',
  'page-box-lots': () => 'Ce qu’il contient',
  'page-box-lot': ({ lot, eggs, fertilised, planted, table, part }) =>
    `${n(eggs)} œufs du lot ${lot}${part === null ? '' : ` (${part})`}, fécondés le ${fertilised}, mis en place le ${planted} ; table : ${table}.`,
  'page-box-place': ({ site }) => `Site : ${site}.`,
  'page-box-stations': () => 'Stations, par ordre de confiance :',
  'page-day': () => 'jour',
  'page-note': () => 'note',
  'page-lot': () => 'lot',
  'page-stage': () => 'stade',
  'page-keep': () => 'Conserver',
  'page-week-of': () => 'semaine du',
  'page-origin-measured': () => 'mesuré',
  'page-origin-filled': () => 'comblé',
  'page-origin-projected': () => 'projeté',
  'page-origin': () => 'origine',
  'page-mean-c': () => 'moyenne (°C)',
  'page-low-c': () => 'moyenne la plus basse (°C)',
  'page-high-c': () => 'moyenne la plus haute (°C)',
  'page-low': () => 'bas (1 sur 10 au-dessous)',
  'page-middle': () => 'meilleur',
  'page-high': () => 'haut (1 sur 10 au-dessus)',
};
