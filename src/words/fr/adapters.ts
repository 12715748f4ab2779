import type { EngineWords, LineRemark, LineWords } from '../../../adapters/words.js';
import { decimal, list, percent, whole } from '../format.js';
import { de } from './elision.js';

const count = (n: number) => whole('fr', n);
const degrees = (value: number) => decimal('fr', value, 1);
/** Des noms tirés d’un fichier, jamais au point de noyer la phrase. */
const SHOWN = 12;
const names = (items: readonly string[]) => {
  const first = items.slice(0, SHOWN).map((item) => `« ${item.slice(0, 60)} »`);
  return list('fr', items.length > SHOWN ? [...first, `${whole('fr', items.length - SHOWN)} autres`] : first);
};
const ofStation = (station: string | null) => (station === null ? 'la station' : `la station ${station}`);
const orders: Record<string, string> = {
  ymd: 'année, mois, jour',
  dmy: 'jour, mois, année',
  mdy: 'mois, jour, année',
};
const order = (code: string) => orders[code] ?? code;
const zoneForm =
  'un nom de fuseau comme America/Halifax, UTC, ou UTC suivi des heures et des minutes comme UTC-03:30';

const lines: { [K in keyof LineWords]: (w: LineWords[K]) => string } = {
  'line-too-long': ({ limitKiB }) => `la ligne dépasse ${count(limitKiB)} Kio`,
  'line-too-many-columns': ({ limit }) => `la ligne a plus de ${count(limit)} colonnes`,
  'line-too-few-columns': ({ found, needed }) =>
    `la ligne a ${count(found)} colonnes; il en faut ${count(needed)}`,
  'line-no-time': ({ text }) => `aucune date là où se trouvent les dates : « ${text} »`,
  'line-bad-time': ({ text }) =>
    `« ${text} » n’est pas une date et une heure de la forme employée dans le fichier`,
  'line-skipped-hour': ({ text, zone }) =>
    `« ${text} » n’a jamais existé : les horloges ${de(zone)} ont sauté cette heure au printemps`,
  'line-after-now': ({ text }) => `« ${text} » est dans le futur`,
  'line-not-a-number': ({ text }) => `« ${text} » n’est pas un nombre`,
  'line-impossible-value': ({ text }) =>
    `« ${text} » est une température qu’aucune eau ni aucun air n’atteint`,
  'line-unknown-unit': ({ text }) =>
    `« ${text} » n’est pas une unité de température : °C, °F ou K conviendrait`,
  'line-unknown-zone': ({ text }) => `« ${text} » n’est pas un décalage connu par rapport à UTC`,
  'line-no-station': () => 'la ligne ne nomme aucune station',
  'line-same-instant': ({ firstLine, kept, dropped }) =>
    `une deuxième valeur, ${dropped}, au même instant que la ligne ${count(firstLine)}, qui donne ${kept}; la première a été gardée`,
  'line-cut-short': ({ text }) => `la dernière ligne semble coupée : « ${text} »`,
  'line-other-delimiter': ({ text }) => `les colonnes sont séparées par un autre signe : « ${text} »`,
  'line-columns-moved': ({ text }) => `les colonnes sont dans un autre ordre : « ${text} »`,
};

/** La raison d’une ligne, à l’intérieur d’une autre phrase. */
function reasonOf(reason: LineRemark): string {
  const say = <Code extends keyof LineWords>(code: Code, figures: LineWords[Code]) => lines[code](figures);
  return say<keyof LineWords>(reason.code, reason.with);
}

export const adapters: { [K in keyof EngineWords]: (w: EngineWords[K]) => string } = {
  ...lines,
  'empty-file': () =>
    'Ce fichier est vide. Téléchargez de nouveau les lectures de l’enregistreur ou vérifiez que la copie est terminée.',
  'damaged-gzip': () =>
    'Ce fichier compressé est endommagé ou a été coupé. Copiez-le de nouveau ou chargez le fichier d’origine.',
  'no-readings-found': ({ firstLine }) =>
    `Aucune ligne de ce fichier ne contient une date et une valeur. Il commence par « ${firstLine} ». Choisissez le fichier de l’enregistreur, exporté en CSV ou en texte.`,
  'headers-without-readings': ({ headers }) =>
    headers.length === 0
      ? 'Ce fichier ne contient aucune lecture. Vérifiez que l’enregistreur avait enregistré avant d’être lu.'
      : `Ce fichier a des en-têtes (${names(headers)}), mais aucune lecture en dessous. Vérifiez que l’enregistreur avait enregistré avant d’être lu.`,
  'unknown-zone': ({ zone }) => `« ${zone} » n’est pas un fuseau horaire connu.`,
  'no-temperature-column': ({ headers }) =>
    `Aucune colonne n’indique qu’elle contient une température : ${names(headers)}.`,
  'unknown-column': ({ asked, headers }) =>
    `Il n’y a pas de colonne « ${asked} » dans ce fichier. Il contient ${names(headers)}.`,
  'several-columns': ({ columns }) =>
    `Plusieurs colonnes contiennent des températures et rien ne dit laquelle choisir : ${names(columns)}.`,
  'unexplained-columns': ({ columns, firstLine }) =>
    `Le fichier n’a pas d’en-têtes et ${columns.length === 0 ? 'aucune colonne de nombres' : `plusieurs colonnes de nombres (${names(columns)})`} : impossible de savoir ce qu’elles contiennent. Sa première ligne est « ${firstLine} ».`,
  'ambiguous-dates': ({ text }) =>
    `Les dates de ce fichier peuvent se lire dans plus d’un ordre; la première est « ${text} ».`,
  'no-zone': ({ station }) =>
    `Le fichier ne dit pas dans quel fuseau horaire marchait son horloge, et aucun n’est connu pour ${ofStation(station)}.`,
  'no-unit': ({ smallest, largest }) =>
    `Le fichier ne dit pas en quelle unité sont ses températures, et des valeurs de ${degrees(smallest)} à ${degrees(largest)} ne sont pas forcément en °C.`,
  'mostly-unusable': ({ unusable, lines: all, line, reason }) =>
    `${count(unusable)} lignes sur ${count(all)} sont inutilisables; rien n’a donc été retenu. Ligne ${count(line)} : ${reasonOf(reason)}.`,
  'layout-changes': ({ line, reason }) =>
    `À partir de la ligne ${count(line)}, le fichier est disposé autrement : ${reasonOf(reason)}. Il semble contenir deux relevés; coupez-le à cet endroit et chargez les deux parties.`,
  'several-loggers': ({ line, first, second }) =>
    `Le fichier commence par ${first} et continue par ${second} à la ligne ${count(line)}. Coupez-le à cet endroit et chargez les deux parties.`,
  'too-many-stations': ({ limit, example }) =>
    `La colonne des stations contient plus de ${count(limit)} noms, comme « ${example} ». Elle semble contenir autre chose.`,
  'several-stations': ({ asked, stations }) =>
    `Le fichier contient plusieurs stations (${names(stations)}); il ne peut pas être chargé sous ${asked}.`,
  'not-a-river': ({ outside, readings, smallest, largest }) =>
    `${percent('fr', outside / readings)} des valeurs ne sont celles d’aucune rivière : elles vont de ${degrees(smallest)} à ${degrees(largest)} °C. Vérifiez la colonne et son unité.`,
  'dates-without-clock': ({ date }) =>
    `Plusieurs lectures portent la date ${date} et aucune n’indique l’heure. Exportez le fichier avec les heures.`,
  'which-column': ({ columns }) =>
    `Quelle colonne contient la température? Nommez-la avec --column : ${names(columns)}.`,
  'which-date-order': ({ text, readings }) =>
    `« ${text} » est-il le ${readings.map(({ order: code, iso }) => `${iso} (--date-order ${code})`).join(' ou le ')}?`,
  'which-zone': () =>
    `Dans quel fuseau marchait l’horloge de l’enregistreur? Indiquez-le (en ligne de commande, avec --zone) : ${zoneForm}.`,
  'which-unit': () => 'De quelle unité s’agit-il? Indiquez-la avec --unit C, --unit F ou --unit K.',
  'leave-station-out': () => 'Retirez --station : le fichier nomme lui-même la station de chaque lecture.',
  'unit-assumed': ({ unit, smallest, largest }) =>
    `Le fichier n’indique pas d’unité; ${unit} a été supposé, car ses valeurs vont de ${degrees(smallest)} à ${degrees(largest)}.`,
  'unit-asked-not-used': ({ asked, stated }) =>
    `Le fichier indique son unité (${stated}); --unit ${asked} n’a donc pas servi.`,
  'zone-asked': ({ zone }) =>
    `Le fichier n’indique pas de fuseau horaire; il a été lu dans ${zone}, comme vous l’avez demandé.`,
  'zone-asked-not-used': ({ asked, stated }) =>
    `Le fichier indique son décalage, ${stated}; ${asked} n’a donc pas servi.`,
  'zone-stated-unknown': ({ stated }) =>
    `Le fichier nomme un fuseau horaire inconnu, « ${stated} », qui n’a donc pas servi.`,
  'zone-from-deployment': ({ zone, station }) =>
    `Le fichier n’indique pas de fuseau horaire; il a été lu dans ${zone}, d’après la mise à l’eau à ${ofStation(station)}.`,
  'zone-from-station': ({ zone, station }) =>
    `Le fichier n’indique pas de fuseau horaire; il a été lu dans ${zone}, d’après ${ofStation(station)}.`,
  'zone-from-longitude': ({ zone, longitude }) =>
    `Le fichier n’indique pas de fuseau horaire; ses jours ont été comptés à partir de minuit ${zone}, d’après la longitude indiquée de ${degrees(longitude)}°.`,
  'zone-home-for-days': ({ zone }) =>
    `Le fichier n’indique ni fuseau horaire ni lieu ; ses jours ont été comptés à partir de minuit ${zone}, l’heure normale de l’organisation.`,
  'zone-utc-for-days': () =>
    'Le fichier n’indique ni fuseau horaire ni lieu; ses jours ont été comptés à partir de minuit UTC.',
  'standard-time-of-zone': ({ zone, offset }) =>
    `Le fichier est en heure normale locale : ${offset}, l’heure normale ${de(zone)}.`,
  'offset-in-each-value': () => 'Chaque lecture indique son propre décalage par rapport à UTC.',
  'kept-one-offset': ({ zone, offset }) =>
    `L’heure a changé dans ${zone} pendant ce fichier, qui ne montre ni heure répétée ni heure manquante : son horloge est réputée avoir gardé ${offset}.`,
  'fixed-offset-shown': ({ zone, offset }) =>
    `L’heure a changé dans ${zone} pendant ce fichier, mais pas celle de l’enregistreur : il a gardé ${offset}.`,
  'wall-time-shown': ({ zone }) => `L’horloge de l’enregistreur a suivi l’heure avancée ${de(zone)}.`,
  'no-header': ({ timeColumns, valueColumn }) =>
    `Le fichier n’a pas d’en-têtes : ${names(timeColumns)} a été pris pour l’heure et « ${valueColumn} » pour la température.`,
  'date-order-by-steps': ({ order: code }) =>
    `Les dates ont été lues dans l’ordre ${order(code)} : c’est le seul où les lectures se suivent régulièrement.`,
  'date-order-asked-not-used': ({ asked, found }) =>
    `Les dates ne peuvent se lire que dans l’ordre ${order(found)}; --date-order ${asked} n’a donc pas servi.`,
  'columns-taken-for-stations': ({ stations }) =>
    `Chaque colonne a été prise pour une station : ${names(stations)}.`,
  'station-by-serial': ({ station, serial }) =>
    `Le fichier porte le numéro de série ${serial}, celui d’un enregistreur mis à l’eau à ${ofStation(station)} : ses lectures y vont.`,
  'station-asked-not-file': ({ asked, stated }) =>
    `Le fichier nomme sa station « ${stated} »; ses lectures vont à ${asked}, comme vous l’avez demandé.`,
  'daily-means-assumed': () =>
    'Le fichier a une valeur par jour, sans heure : les valeurs ont été prises pour des moyennes journalières.',
  'extremes-not-means': ({ column }) =>
    `« ${column} » contient la valeur la plus haute ou la plus basse de chaque jour; elle a été prise à la place de la moyenne journalière.`,
  'air-beside-weather': ({ columns }) =>
    `La température a été prise pour celle de l’air, car elle est à côté de ${names(columns)}.`,
  'column-taken': ({ column, left }) => `« ${column} » a été retenue; ${names(left)} a été laissée de côté.`,
  'column-without-unit-left': ({ column }) =>
    `« ${column} » a été laissée de côté, car elle n’indique pas d’unité.`,
  'repeated-readings': ({ count: n }) =>
    n === 1
      ? 'Une lecture figure plus d’une fois dans le fichier et a été retenue une seule fois.'
      : `${count(n)} lectures figurent plus d’une fois dans le fichier et ont été retenues une seule fois.`,
  'missing-values': ({ count: n }) =>
    n === 1 ? 'Une ligne ne contient aucune valeur.' : `${count(n)} lignes ne contiennent aucune valeur.`,
  'time-goes-back': ({ line, times }) =>
    times === 1
      ? `L’heure recule à la ligne ${count(line)}. Vérifiez si l’horloge de l’enregistreur a été réglée à ce moment.`
      : `L’heure recule ${count(times)} fois, d’abord à la ligne ${count(line)}. Vérifiez si l’horloge de l’enregistreur a été réglée à ce moment.`,
};
