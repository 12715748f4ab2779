import type { DownloadsPageWords } from '../../pages/downloads-words.js';
import { daysFromTo, longDay, whole } from '../format.js';
import { de } from './elision.js';

const n = (count: number) => whole('fr', count);
const day = (at: number) => longDay('fr', at);

/** Downloads in French (fr-CA). */
export const pagesDownloads: {
  [Code in keyof DownloadsPageWords]: (words: DownloadsPageWords[Code]) => string;
} = {
  'page-downloads-title': () => 'Relevés',
  'page-downloads-answer': ({ waiting, loads }) =>
    waiting > 0
      ? waiting === 1
        ? 'Un fichier attend d’être regardé et accepté. Rien n’en compte encore.'
        : `${n(waiting)} fichiers attendent d’être regardés et acceptés. Rien n’en compte encore.`
      : loads === 0
        ? 'Rien n’a encore été chargé : déposez le premier fichier sorti d’un enregistreur.'
        : `Rien n’attend ; ${loads === 1 ? 'un chargement est en place' : `${n(loads)} chargements sont en place`}.`,
  'page-downloads-drop': () => 'Déposez des fichiers ici, ou choisissez-les',
  'page-downloads-pick': () => 'Fichiers',
  'page-downloads-kinds': () =>
    'Du texte de toute disposition (csv, txt, rdb, xml), des classeurs (xlsx), aussi en archive zip. Rien n’est conservé avant que vous l’acceptiez.',
  'page-downloads-sheet': () => 'Feuille d’un classeur (la première si rien n’est écrit)',
  'page-downloads-send': () => 'Envoyer et regarder',
  'page-downloads-sending': () => 'Envoi en cours…',
  'page-downloads-paste': () => 'Ou collez le texte d’un relevé',
  'page-downloads-paste-name': () => 'Comment l’appeler',
  'page-downloads-pasted': () => 'colle.csv',
  'page-downloads-waiting': () => 'En attente',
  'page-downloads-look': () => 'Le regarder',
  'page-downloads-loads': () => 'Chargements',
  'page-downloads-no-loads': () => 'Il n’y a encore aucun chargement.',
  'page-downloads-withdraw': () => 'Retirer',
  'page-downloads-withdraw-what': ({ load }) => `Retirer le chargement ${load}`,
  'page-downloads-withdrawn': ({ day: at }) => `retiré le ${day(at)}`,
  'page-downloads-refused': ({ file }) => `${file} ne peut pas servir`,
  'page-file-json': () => 'Ce qui a été compris, en JSON',
  'page-file-csv': () => 'Ce que le fichier apporte, en CSV',
  'page-file-title': ({ file }) => `Le relevé ${file}`,
  'page-file-ready': ({ readings, stations, from, to }) =>
    `Il contient ${readings === 1 ? 'une lecture' : `${n(readings)} lectures`} ${de(stations)}, ${daysFromTo('fr', from, to)}. Rien n’est conservé avant que vous l’acceptiez.`,
  'page-file-already': ({ load }) =>
    `Ce fichier est déjà chargé (chargement ${load}) : l’accepter ne changerait rien.`,
  'page-file-question': () => 'Il faut répondre à une question avant que ce fichier puisse être lu.',
  'page-file-refused': () => 'Ce fichier ne peut pas servir tel quel.',
  'page-file-understood': () => 'Ce qui a été compris',
  'page-file-assumed': () => 'Ce qui a été supposé',
  'page-file-unusable': ({ count }) =>
    count === 1 ? '1 ligne n’a pas pu servir' : `${n(count)} lignes n’ont pas pu servir`,
  'page-file-unusable-line': ({ line, reason }) => `Ligne ${n(line)} : ${reason}.`,
  'page-file-differing': ({ count, largest }) =>
    `${count === 1 ? 'Une lecture diffère' : `${n(count)} lectures diffèrent`} de ce qui est déjà là, de ${largest} °C${count === 1 ? '' : ' au plus'} ; le fichier le plus récent est celui qu’on verra.`,
  'page-file-over': ({ station }) => `Ce que le fichier apporte à ${station}, par-dessus ce qui est là`,
  'page-file-over-key': () => 'Tirets : ce fichier. Ligne continue : ce qui est déjà là.',
  'page-file-accept': () => 'L’accepter',
  'page-file-leave': () => 'Le laisser : jeter le fichier',
  'page-file-again': () => 'Le lire ainsi',
  'page-file-change': () => 'Quelque chose ne va pas : préciser ce que le fichier ne dit pas',
  'page-ask-column': () => 'Quelle colonne est la température ?',
  'page-ask-date': ({ text }) => `Quel jour est « ${text} » ?`,
  'page-ask-zone': () => 'Dans quel fuseau horaire l’horloge de l’enregistreur tournait-elle ?',
  'page-ask-zone-what': () =>
    'Le nom d’un fuseau, comme America/Halifax, ou un décalage, comme UTC-04:00 pour une horloge qui ne change jamais.',
  'page-ask-unit': () => 'Dans quelle unité sont ses températures ?',
  'page-ask-station': () => 'De quelle station vient-il ?',
  'page-ask-station-new': () => 'ou une nouvelle, appelée',
  'page-ask-unnamed-made': ({ station }) => `La saison n’a pas encore de station « ${station} » : la créer`,
  'page-ask-order': () => 'Dans quel ordre ses dates sont-elles écrites ?',
  'page-understood-encoding': () => 'encodage',
  'page-understood-delimiter': () => 'colonnes séparées par',
  'page-understood-decimal': () => 'signe décimal',
  'page-understood-unit': () => 'unité',
  'page-understood-zone': () => 'horloge',
  'page-understood-order': () => 'dates',
  'page-understood-time': () => 'date et heure d’après',
  'page-understood-value': () => 'température d’après',
  'page-understood-tab': () => 'tabulation',
  'page-order-ymd': () => 'année, mois, jour',
  'page-order-dmy': () => 'jour, mois, année',
  'page-order-mdy': () => 'mois, jour, année',
  'page-accepted-title': ({ file }) => `${file} est chargé`,
  'page-accepted-answer': ({ load, readings, stations }) =>
    `Le chargement ${load} est en place, avec ${readings === 1 ? 'une lecture' : `${n(readings)} lectures`} ${de(stations)}.`,
  'page-accepted-windows': () => 'Ce qu’il a fait aux fenêtres',
  'page-accepted-moved': ({ boxes }) =>
    boxes === 0
      ? 'Il n’a déplacé aucune fenêtre.'
      : `Il a déplacé des fenêtres ${boxes === 1 ? 'd’un incubateur' : `de ${n(boxes)} incubateurs`}.`,
  'page-accepted-before': () => 'avant',
  'page-accepted-now': () => 'maintenant',
  'page-accepted-narrower': ({ days }) => `plus étroite de ${n(days)} ${days < 2 ? 'jour' : 'jours'}`,
  'page-accepted-wider': ({ days }) => `plus large de ${n(days)} ${days < 2 ? 'jour' : 'jours'}`,
  'page-accepted-more': () => 'D’autres relevés',
  'page-accepted-layout': ({ layout }) =>
    `La disposition « ${layout} » est conservée : les fichiers qui lui correspondent seront lus selon elle.`,
  'page-accepted-layout-not': ({ reason }) =>
    `Le chargement est en place, mais sa disposition n’a pas été conservée. ${reason}`,
  'page-file-keep-layout': () =>
    'Conserver la façon de le lire, et mes réponses, pour les fichiers de l’an prochain',
  'page-file-keep-layout-name': () => 'Nom de la disposition',
  'page-file-keep-layout-what': () =>
    'Une disposition du même nom est remplacée. Sans nom, seules les lectures sont conservées.',
  'page-layouts-title': () => 'Dispositions conservées',
  'page-layouts-answer': ({ count }) =>
    count === 0
      ? 'Aucune disposition n’est conservée : chaque fichier est compris d’après ce qu’il dit.'
      : count === 1
        ? 'Une disposition est conservée : les fichiers qui lui correspondent ne posent plus de questions.'
        : `${n(count)} dispositions sont conservées : les fichiers qui leur correspondent ne posent plus de questions.`,
  'page-layouts-link': ({ count }) => `Dispositions conservées (${n(count)})`,
  'page-layouts-how': () =>
    'Une disposition se conserve quand un relevé est accepté : donnez-lui un nom à ce moment. Ce qu’elle fixe passe avant ce que le fichier semble dire.',
  'page-layouts-known-by': ({ files }) => `Sert à lire les ${files}.`,
  'page-layouts-column': ({ number }) => `colonne ${n(number)}`,
  'page-layouts-level': () => 'niveau tiré de',
  'page-layouts-discharge': () => 'débit tiré de',
  'page-layouts-station': () => 'station tirée de',
  'page-layouts-header-line': () => 'ligne des en-têtes',
  'page-layouts-no-header': () => 'aucune : les colonnes sont comptées',
  'page-layouts-missing': () => 'valeur manquante',
  'page-layouts-remove': () => 'Retirer',
  'page-layouts-remove-what': ({ layout }) => `Retirer la disposition « ${layout} »`,
  'page-layouts-remove-note': () => 'Ce qui a été chargé avec elle reste tel quel.',
  'page-quoted': ({ text }) => `« ${text} »`,
  'page-column-load': () => 'chargement',
  'page-column-file': () => 'fichier',
  'page-column-stations': () => 'stations',
  'page-column-readings': () => 'lectures',
  'page-column-when': () => 'quand',
  'page-column-change': () => 'changer',
  'page-box': () => 'incubateur',
  'page-station': () => 'station',
  'page-value': () => 'valeur',
};
