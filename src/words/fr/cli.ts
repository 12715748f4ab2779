import type { CliWords } from '../../cli/words.js';
import { list, significant, whole } from '../format.js';
import { stageInFrench } from '../stages.js';

type Harm = CliWords['table-harm'];
const harmFr: Record<Harm['kind'], string> = {
  warm: 'trop chaud',
  freezing: 'gel',
  'sudden-change': 'changement brusque',
  'cold-start': 'froid juste après la fécondation',
  cold: 'froid pour les jeunes proches de l’émergence',
};
const severityFr: Record<Harm['severity'], string> = {
  lethal: 'mortel',
  'lowers-survival': 'réduit la survie',
  advice: 'conseil avant la mise en place',
};

/** The command line in French (fr-CA). */
export const cli: { [Code in keyof CliWords]: (words: CliWords[Code]) => string } = {
  'cli-about': () =>
    'Underice : quand les œufs de chaque incubateur sont œillés, éclosent, résorbent leur sac vitellin et émergent, d’après ce que les enregistreurs ont relevé.',
  'cli-usage': () => 'Emploi :',
  'cli-arguments': () => 'Arguments :',
  'cli-options': () => 'Options :',
  'cli-global-options': () => 'Options de toute commande :',
  'cli-commands': () => 'Commandes :',
  'cli-example': ({ command }) => `Exemple :\n  ${command}`,
  'cli-help': () => 'dire comment une commande s’emploie',
  'cli-version': () => 'dire de quelle version il s’agit',
  'cli-option-data': () =>
    'dossier qui contient la saison (par défaut : UNDERICE_DATA, sinon un dossier parmi vos données personnelles)',
  'cli-one-folder': () =>
    'Cette commande travaille dans un seul dossier de données : nommez-en un avec --data. Seule « serve » en prend plusieurs.',
  'cli-option-lang': () => 'en ou fr (par défaut : UNDERICE_LANG, sinon la langue du terminal)',
  'cli-option-json': () => 'répondre en JSON, pour les programmes',
  'cli-unknown-command': ({ command }) =>
    `La commande « ${command} » n’existe pas : « underice --help » les énumère toutes.`,
  'cli-unknown-option': ({ option }) =>
    `L’option ${option} n’est pas connue ici : ajoutez --help à la commande pour voir celles qu’elle accepte.`,
  'cli-missing-argument': ({ argument }) =>
    `Il manque à cette commande : ${argument}. Ajoutez --help pour voir un exemple.`,
  'cli-missing-value': ({ option }) => `L’option ${option} doit être suivie d’une valeur.`,
  'cli-too-many': () => 'Cette commande a reçu plus qu’elle n’accepte : ajoutez --help pour voir un exemple.',
  'cli-bad-value': ({ option, value, allowed }) =>
    `${option} a reçu « ${value} » : cette option accepte ${allowed}.`,
  'cli-not-a-date': ({ option, value }) =>
    `${option} a reçu « ${value} » : écrivez la date année-mois-jour, par exemple 2026-02-15.`,
  'cli-failed': ({ message }) => `Le travail s’est arrêté : ${message}. Rien n’a été conservé à moitié.`,
  'cli-file-unreadable': ({ file }) =>
    `Le fichier ${file} ne peut pas être lu : vérifiez son nom et que vous avez le droit de l’ouvrir.`,

  'cli-demo': () => 'charger la saison inventée dans un dossier temporaire et en montrer la prévision',
  'cli-demo-exit': () => 'imprimer la prévision et terminer',
  'cli-demo-as-of': () =>
    'voir la saison telle qu’elle était à une date (2026-02-15 et 2026-06-20 valent le coup d’œil)',
  'cli-demo-intro': ({ loads, readings, folder }) =>
    `Une saison inventée : ${whole('fr', loads)} relevés, ${whole('fr', readings)} lectures, dans ${folder}.`,
  'cli-demo-throwaway': () =>
    'Le dossier est maintenant effacé. Pour le garder, ajoutez --data avec un dossier à vous.',
  'cli-season': () => 'le fichier de saison : ce qui se trouve où, et depuis quand',
  'cli-season-apply': () => 'adopter un fichier de saison, après avoir montré ce qu’il change',
  'cli-season-export': () => 'imprimer le fichier de saison en vigueur',
  'cli-season-file': () => 'fichier de saison (YAML)',
  'cli-season-dry-run': () => 'montrer ce qui changerait sans rien changer',
  'cli-season-changes': ({ count }) => `Changements : ${whole('fr', count)}.`,
  'cli-season-same': () => 'La saison est déjà celle du fichier : rien à changer.',
  'cli-season-applied': () => 'Le fichier de saison est adopté.',
  'cli-season-not-applied': () => 'Rien n’a été changé : retirez --dry-run pour l’adopter.',
  'cli-load': () => 'charger des relevés d’enregistreurs et de stations',
  'cli-load-file': () => 'fichiers à charger, de toute disposition, comprimés (gzip) ou non',
  'cli-load-station': () => 'station à laquelle appartiennent les lectures, quand le fichier ne le dit pas',
  'cli-load-zone': () => 'fuseau de son horloge : un nom comme America/Halifax, UTC ou UTC-04:00',
  'cli-load-unit': () => 'unité de ses températures : C, F ou K',
  'cli-load-column': () => 'en-tête de la colonne de température à prendre',
  'cli-load-date-order': () =>
    'ordre de ses dates : ymd (année-mois-jour), dmy (jour-mois-année) ou mdy (mois-jour-année)',
  'cli-load-create': () => 'créer les stations que nomment --station ou le fichier',
  'cli-load-dry-run': () => 'dire ce qui serait compris et ne rien conserver',
  'cli-load-reading': () => 'lecture',
  'cli-loads': () => 'énumérer tous les chargements',
  'cli-loads-none': () => 'Rien n’a encore été chargé : « underice load FICHIER » pour commencer.',
  'column-load': () => 'chargement',
  'column-when': () => 'quand (UTC)',
  'column-readings': () => 'lectures',
  'column-stations': () => 'stations',
  'column-file': () => 'fichier',
  'cli-loads-withdrawn': ({ at }) => `retiré ${at}`,
  'cli-withdraw': () => 'retirer un chargement : ce qu’il couvrait redevient visible',
  'cli-withdraw-load': () => 'le chargement, tel que « underice loads » le nomme',
  'cli-withdrawn': ({ load, file }) =>
    `Le chargement ${load} (${file}) est retiré : ce qu’il couvrait redevient visible.`,
  'cli-forecast': () =>
    'quand les œufs de chaque incubateur sont œillés, éclosent, résorbent leur sac vitellin, et quand les alevins émergent',
  'cli-forecast-box': () => 'cet incubateur seulement, avec tout ce sur quoi repose la prévision',
  'cli-forecast-as-of': () => 'telle qu’elle était ce jour-là (par défaut : aujourd’hui)',
  'cli-record': () => 'les lectures d’une station, en CSV',
  'cli-record-station': () => 'la station',
  'cli-record-from': () => 'premier jour',
  'cli-record-to': () => 'dernier jour',
  'cli-record-daily': () =>
    'une ligne par jour, jours comblés et projetés compris, avec leur origine et leur dispersion',
  'cli-tables': () => 'les tables de développement et leurs sources',
  'cli-tables-table': () => 'montrer cette table en entier',

  'cli-file-stored': ({ file, readings, load }) =>
    `${file} : ${whole('fr', readings)} lectures conservées, chargement ${load}.`,
  'cli-file-understood': ({ file, readings }) =>
    `${file} : ${whole('fr', readings)} lectures comprises, rien n’est conservé (--dry-run).`,
  'cli-file-already': ({ file, load }) => `${file} : déjà chargé (chargement ${load}) ; rien ne change.`,
  'cli-file-refused': ({ file, reason }) => `${file} : non chargé. ${reason}`,
  'cli-file-station': ({ station, quantity, readings, first, last, range }) =>
    `${station}${quantity} : ${whole('fr', readings)} lectures, du ${first} au ${last}${range}`,
  'quantity-level': () => 'niveau',
  'quantity-discharge': () => 'débit',
  'cli-file-layout': ({ zone, unit, columns }) =>
    `compris : ${list('fr', [...(unit ? [`valeurs en ${unit}`] : []), ...(zone ? [`horloge en ${zone}`] : []), `temps d’après ${columns}`])}`,
  'cli-file-assumed': ({ sentence }) => `supposé : ${sentence}`,
  'cli-file-differing': ({ count, largest }) =>
    `${whole('fr', count)} lectures diffèrent de ce qui était là, de ${largest} °C au plus ; le fichier le plus récent est celui qu’on voit.`,
  'cli-file-unusable': ({ count }) =>
    count > 1
      ? `${whole('fr', count)} lignes n’ont pas pu servir :`
      : `${whole('fr', count)} ligne n’a pas pu servir :`,
  'cli-file-unusable-line': ({ line, reason }) => `ligne ${whole('fr', line)} : ${reason}`,

  'cli-forecast-title': ({ date }) =>
    `Prévision en date du ${date}. Une prévision est une estimation : voir les mises en garde plus bas.`,
  'cli-forecast-none': () =>
    'La saison n’a encore aucun incubateur : écrivez le fichier de saison, puis « underice season apply FICHIER ».',
  'column-box': () => 'incubateur',
  'column-now': () => 'maintenant',
  'column-water': () => 'eau',
  'column-stage': () => 'stade',
  'column-first': () => 'premiers 5 %',
  'column-median': () => 'médiane',
  'column-last': () => 'derniers 95 %',
  'cli-forecast-legend': () =>
    'Chaque date est celle de l’œuf médian, avec les jours entre lesquels elle tombe 8 fois sur 10. Une coche marque ce qui est probablement passé. « eau » donne le dernier jour mesuré et les jours mesurés / comblés / projetés.',
  'cli-forecast-cautions': () => 'Mises en garde :',
  'cli-forecast-lot': ({ lot, eggs, share }) => `Lot ${lot}, ${whole('fr', eggs)} œufs : ${share}`,
  'cli-forecast-passed': () => 'passé',
  'cli-forecast-outside': () => 's’appuie sur une eau hors de l’intervalle de la table',
  'cli-forecast-water': ({ through, measured, filled, projected }) =>
    `Eau mesurée jusqu’au ${through} : ${whole('fr', measured)} jours mesurés, ${whole('fr', filled)} comblés, ${whole('fr', projected)} projetés.`,
  'cli-forecast-no-water': () => 'Aucune eau n’a été mesurée pour cet incubateur.',
  'cli-forecast-method': () => 'Comment :',
  'cli-forecast-assumptions': () => 'Ce qui est supposé :',
  'cli-forecast-sharpen': () => 'Ce qui la préciserait :',
  'cli-forecast-old-rule': () => 'L’ancienne règle :',

  'column-table': () => 'table',
  'column-name': () => 'nom',
  'column-stages': () => 'stades',
  'table-stage': ({ stage, needs, spread, min, max }) =>
    `${stage} : ${needs} ; dispersion entre œufs ${spread} du chemin ; valable, à ce qu’on sait, de ${min} à ${max} °C`,
  'table-after': ({ stage, law }) => `à partir de ${stage} : ${law}`,
  'law-thermal-units': ({ units, base }) => `${units} degrés-jours au-dessus de ${base} °C`,
  'law-days-at': ({ rows }) => `jours à température constante ${rows} (entre elles selon ln D)`,
  'table-do-not-handle': ({ from, to }) =>
    `les œufs ne doivent pas être manipulés de ${from} à ${to} du chemin vers l’éclosion`,
  'table-row-temper': ({ limit }) =>
    `les œufs sont acclimatés si le transport et le site diffèrent de plus de ${significant('fr', limit)} °C`,
  'table-row-leaves-box': ({ days, min, max }) =>
    `les alevins vésiculés quittent l’incubateur ${days} jours après l’éclosion (${min} à ${max})`,
  'table-spreads': ({ lots, own }) =>
    `dispersion entre lots et souches ${lots} du chemin, de la table elle-même ${own}`,
  'table-harm': ({ kind, severity, limit, hours, from, to }) =>
    `${harmFr[kind]}, ${severityFr[severity]} : ${limit} ${kind === 'sudden-change' ? '°C par heure' : '°C'}${hours > 0 ? ` pendant ${hours} h` : ''}, de ${from} à ${to} du chemin vers l’éclosion`,
  'mark-memory': () => 'de mémoire',
  'mark-abstract': () => 'résumé seulement',
  'mark-common practice': () => 'pratique courante',
  'mark-ours': () => 'notre estimation',
  'mark-computed': () => 'calculé',

  'now-not-fertilised': () => 'pas encore fécondé',
  'now-unknown': () => 'impossible à dire',
  'now-fertilised': ({ next, share }) => `${share} du chemin vers ${stageInFrench(next).the}`,
  'now-stage': ({ stage, next, share }) =>
    `${stageInFrench(stage).past}${next === null ? '' : `, ${share} du chemin vers ${stageInFrench(next).the}`}`,
  'caution-estimate': () =>
    'Toute date est une estimation. La température n’est pas seule à tuer des œufs : le limon, l’oxygène, la glace et l’eau acide en tuent aussi.',
  'caution-ice': () =>
    'Ne traversez jamais la glace et n’entrez jamais dans l’eau haute pour respecter une date.',
  'caution-decide': () =>
    'Les permis, les règles de santé du poisson, la personne biologiste responsable et l’autorité locale décident, pas ce programme.',
};
