import type { StationPageWords } from '../../pages/station-words.js';
import { daysFromTo, longDay, whole } from '../format.js';

const n = (count: number) => whole('fr', count);
const day = (at: number) => longDay('fr', at);

const of: Readonly<Record<string, string>> = {
  stream: ' de l’eau du cours d’eau',
  gravel: ' de l’eau dans le gravier',
  air: ' de l’air',
  tank: ' de l’eau du bassin',
};

/** Stations and their records in French (fr-CA). */
export const pagesStation: { [Code in keyof StationPageWords]: (words: StationPageWords[Code]) => string } = {
  'page-stations-title': () => 'Stations',
  'page-stations-answer': ({ stations, silent }) =>
    stations === 1 && silent === 1
      ? 'Une station, encore sans lecture.'
      : `${stations === 1 ? 'Une station' : `${n(stations)} stations`}${silent === 0 ? (stations === 1 ? ', avec des lectures.' : ', toutes avec des lectures.') : ` ; ${silent === 1 ? 'une n’a' : `${n(silent)} n’ont`} encore aucune lecture.`}`,
  'page-stations-none': () =>
    'Il n’y a encore aucune station : créez la première, puis chargez ce que son enregistreur a lu.',
  'page-station-last': () => 'dernière lecture',
  'page-station-first': () => 'première lecture',
  'page-station-kind': () => 'genre',
  'page-station-reports': () => 'transmet tout l’hiver',
  'page-station-title': ({ station }) => `Station ${station}`,
  'page-station-answer': ({ station, kind, readings, from, to }) =>
    `${station} a ${readings === 1 ? 'une lecture' : `${n(readings)} lectures`}${of[kind] ?? ''}, ${daysFromTo('fr', from, to)}.`,
  'page-station-empty': ({ station }) => `${station} n’a encore aucune lecture.`,
  'page-station-load': () => 'Charger un relevé',
  'page-station-not-in-season': () =>
    'La saison ne nomme pas cette station : seuls des chargements la connaissent. Ajoutez-la sous Modifier pour qu’elle serve à un incubateur.',
  'page-station-later-readings': ({ day: at }) =>
    `Les pages montrent la situation au ${day(at)} : les lectures d’après ce jour figurent ici, mais la prévision ne les connaît pas.`,
  'page-station-record': ({ from, to, low, high, unit }) =>
    `Entre ${low} et ${high} ${unit}, ${daysFromTo('fr', from, to)}`,
  'page-station-lowest': () => 'plus basse',
  'page-station-highest': () => 'plus haute',
  'page-station-doubted': () => 'mises en doute',
  'page-station-key': () =>
    'Ligne continue : mesuré. Tirets : jours comblés d’après d’autres stations ou projetés d’après des hivers passés.',
  'page-station-zoom': () =>
    'Glissez sur le graphique pour voir de plus près, double-cliquez pour tout voir ; ou servez-vous des boutons et des dates.',
  'page-station-from': () => 'Du',
  'page-station-to': () => 'Au',
  'page-station-show': () => 'Montrer',
  'page-station-whole': () => 'Tout',
  'page-station-closer': () => 'Plus près',
  'page-station-wider': () => 'Plus large',
  'page-station-earlier': () => 'Plus tôt',
  'page-station-later': () => 'Plus tard',
  'page-station-flagged': ({ steps, of }) =>
    `${n(steps)} des ${n(of)} pas dessinés contiennent une lecture que les contrôles mettent en doute ; ils sont marqués.`,
  'page-station-unflagged': () => 'Les contrôles ne mettent en doute aucune des lectures dessinées.',
  'page-station-deployments': () => 'Enregistreurs mis à l’eau ici',
  'page-station-no-deployments': () => 'La saison ne nomme aucun enregistreur mis à l’eau ici.',
  'page-station-deployment': ({ logger, from, to, lay, lost }) =>
    `${logger}, ${lay}, depuis le ${day(from)}${to === null ? (lost ? ' ; perdu' : ', encore là') : ` jusqu’au ${day(to)}`}`,
  'page-station-loads': () => 'Chargements qui ont fait ces lectures',
  'page-station-readings-csv': () => 'Lectures en CSV',
  'page-station-days-csv': () => 'Jours en CSV, avec leur origine',
  'page-station-days-json': () => 'Jours en JSON',
  'page-station-record-json': () => 'Ce qui est dessiné, en JSON',
  'page-station-findings-json': () => 'Ce que disent les contrôles, en JSON',
  'page-station-filled-days': () => 'jours comblés ou projetés',
  'page-lay-in-box': () => 'dans l’incubateur',
  'page-lay-tied-to-box': () => 'attaché à l’incubateur',
  'page-lay-gravel': () => 'dans le gravier',
  'page-lay-stream': () => 'dans le cours d’eau',
  'page-lay-bank': () => 'sur la berge',
  'page-lay-tank': () => 'dans un bassin',
  'page-lay-air': () => 'à l’air',
  'page-kind-stream': () => 'eau du cours d’eau',
  'page-kind-gravel': () => 'eau dans le gravier',
  'page-kind-air': () => 'air',
  'page-kind-tank': () => 'bassin d’écloserie',
  'page-kind-gauge': () => 'station hydrométrique',
  'page-yes': () => 'oui',
  'page-no': () => 'non',
};
