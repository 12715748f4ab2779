import type { LoadingWords } from '../../loading/index.js';
import type { StoreWords } from '../../store/index.js';
import { decimal, list, longDay, whole } from '../format.js';

/** Le dossier de données et sa base. */
/** An instant to the second: 2026-01-03T05:00:00Z. */
const moment = (at: string): string => at.replace('.000Z', 'Z');

export const store: { [Code in keyof StoreWords]: (words: StoreWords[Code]) => string } = {
  'folder-held': ({ folder, pid, since, address }) =>
    `Le dossier ${folder} est déjà utilisé par Underice${pid === null ? '' : ` (processus ${pid})`}${
      since === '' ? '' : `, en marche depuis ${since}`
    }${address === '' ? '. Arrêtez-le d’abord, ou attendez qu’il ait terminé.' : ` : utilisez-le à l’adresse ${address}, ou arrêtez-le d’abord.`}`,
  'folder-read-only': ({ folder }) =>
    `Impossible d’écrire dans ${folder} : choisissez un dossier à vous avec --data, ou demandez le droit d’y écrire.`,
  'folder-not-a-folder': ({ folder }) =>
    `${folder} est un fichier et non un dossier : donnez à --data un dossier, ou le nom d’un dossier à créer.`,
  'folder-of-others': ({ folder, found }) =>
    `Le dossier ${folder} contient déjà autre chose (${found}) : donnez à --data un dossier vide, ou le nom d’un nouveau dossier.`,
  'disk-full': ({ folder }) =>
    `Le disque où se trouve ${folder} est plein : rien n’a été enregistré. Libérez de la place, puis recommencez.`,
  'store-newer': ({ folder, found, known }) =>
    `La saison dans ${folder} vient d’une version plus récente d’Underice (format ${found}; celle-ci va jusqu’à ${known}) : installez la version récente. Rien n’a été modifié.`,
  'store-format-newer': ({ folder }) =>
    `La saison dans ${folder} vient d’une version plus récente d’Underice : installez la version récente. Rien n’a été modifié.`,
  'store-cut-short': ({ folder, bytes, expected }) =>
    `Le fichier underice.duckdb dans ${folder} est incomplet${
      expected === 0 ? '' : ` (${whole('fr', bytes)} octets sur ${whole('fr', expected)})`
    }, comme après une copie interrompue : remplacez-le par une sauvegarde entière. Rien n’a été modifié.`,
  'store-unreadable': ({ folder, why }) =>
    `Le fichier underice.duckdb dans ${folder} n’est pas une saison d’Underice${
      why === '' ? '' : ' ou est endommagé'
    } : déplacez-le, ou remplacez-le par une sauvegarde. Rien n’a été modifié.`,
  'store-failed': ({ folder, why }) => `Le dossier ${folder} n’a pas pu être utilisé : ${why}`,
  'unknown-load': ({ load }) => `Il n’y a pas de chargement ${load} : « underice loads » en donne la liste.`,
  'folder-unknown-station': ({ station }) => `Il n’y a pas de station « ${station} » dans ce dossier.`,
  'already-withdrawn': ({ load, at }) =>
    `Le chargement ${load} a déjà été retiré, le ${longDay('fr', Date.parse(at) / 86_400_000)}.`,
  'backup-exists': ({ file }) => `Il y a déjà un fichier ${file} : donnez à la sauvegarde un nom à elle.`,
  'backup-unwritable': ({ file, why }) =>
    `La sauvegarde ${file} ne peut pas être écrite (${why}) : choisissez un endroit où vous pouvez écrire.`,
  'backup-missing': ({ file }) => `Il n’y a pas de sauvegarde ${file} : vérifiez son nom.`,
  'backup-newer': ({ file }) =>
    `${file} vient d’une version plus récente d’Underice : installez la version récente. Rien n’a été modifié.`,
  'backup-cut-short': ({ file }) =>
    `La sauvegarde ${file} est incomplète, comme après une copie interrompue : prenez-en une autre. Rien n’a été modifié.`,
  'backup-unreadable': ({ file }) =>
    `${file} n’est pas une sauvegarde d’Underice, ou est endommagé : prenez-en une autre. Rien n’a été modifié.`,
  'restore-not-empty': ({ folder }) =>
    `Le dossier ${folder} contient déjà une saison : restaurez dans un dossier vide, ou donnez le nom d’un nouveau dossier.`,
  'export-not-empty': ({ folder }) =>
    `Le dossier ${folder} n’est pas vide : exportez dans un nouveau dossier.`,
  'export-incomplete': ({ folder, file }) =>
    `L’exportation dans ${folder} n’est pas entière : ${file} manque ou est endommagé. Rien n’a été modifié.`,
  'store-elsewhere': ({ folder, stands, wanted }) =>
    `Les lectures de ${folder} sont dans la base « ${stands} », les réglages disent « ${wanted} » : écrivez « store: ${stands} », ou déplacez-les avec « underice copy-store --to ${wanted} ». Rien n’a été modifié.`,
  'server-not-named': ({ folder, url, database }) =>
    `Les réglages ne nomment aucun serveur InfluxDB pour ${folder}${url === '' ? '' : ` (ses lectures sont à ${url}, base ${database})`} : écrivez influxUrl et influxDatabase dans settings.yaml.`,
  'server-unreachable': ({ url, why }) =>
    `Le serveur InfluxDB à ${url} ne répond pas (${why}) : démarrez-le, ou vérifiez l’adresse. Rien n’a été modifié.`,
  'server-other-kind': ({ url }) =>
    `Ce qui répond à ${url} n’est pas un serveur InfluxDB : vérifiez influxUrl dans les réglages. Rien n’a été modifié.`,
  'server-denied': ({ url }) =>
    `Le serveur InfluxDB à ${url} n’accepte pas l’utilisateur, le mot de passe ou le jeton : vérifiez-les dans les réglages. Rien n’a été modifié.`,
  'server-database-missing': ({ url, database }) =>
    `Le serveur InfluxDB à ${url} n’a pas de base « ${database} » avec les lectures de ce groupe : vérifiez influxDatabase, ou faites-la rétablir. Rien n’a été modifié.`,
  'server-database-taken': ({ url, database }) =>
    `La base « ${database} » à ${url} appartient à un autre groupe : donnez à chaque groupe sa propre base. Rien n’a été modifié.`,
  'server-forgets': ({ url, database, policy, duration }) =>
    `La base « ${database} » à ${url} oublie : sa rétention « ${policy} » efface les lectures après ${duration}, et les anciens hivers avec elles. Faites-la garder pour toujours, puis recommencez. Rien n’a été modifié.`,
  'server-full': ({ url }) =>
    `Le disque du serveur InfluxDB à ${url} est plein : rien n’a été enregistré. Libérez de la place, puis recommencez.`,
  'server-failed': ({ url, why }) =>
    `Le serveur InfluxDB à ${url} n’a pas fait ce qui lui était demandé (${why}) : rien n’a été enregistré.`,
  'copy-there-already': ({ store }) =>
    `Les lectures sont déjà dans la base « ${store} » : il n’y a rien à copier.`,
  'copy-differs': ({ load }) =>
    `Le chargement ${load} n’est pas ressorti pareil dans l’autre base : rien n’a changé de place, les lectures sont où elles étaient.`,
  'copy-unsettled': ({ setting, place }) =>
    `Le réglage ${setting} est donné par ${place}, qu’une commande ne peut pas changer : enlevez-le d’abord, ou donnez la nouvelle valeur ensuite. Rien n’a été copié.`,
};

/** Du fichier au chargement. */
export const loading: { [Code in keyof LoadingWords]: (words: LoadingWords[Code]) => string } = {
  'no-station': ({ known }) =>
    `Le fichier ne dit pas de quelle station il vient : ajoutez --station${
      known.length === 0
        ? ' et un nom, avec --create-stations pour une nouvelle station'
        : known.length === 1
          ? ` ${known[0]}, ou un autre nom avec --create-stations`
          : ` et l’une de celles-ci : ${list('fr', known)}, ou un autre nom avec --create-stations`
    }.`,
  'station-not-in-season': ({ station, known }) =>
    `La saison n’a pas de station « ${station} »${
      known.length === 0 ? '' : ` (elle a ${list('fr', known)})`
    } : vérifiez le nom ou dites avec --station laquelle c’est, inscrivez-la dans le fichier de saison, ou ajoutez --create-stations pour la créer.`,
  'station-twice': ({ first, second, station }) =>
    `Le fichier a deux colonnes de lectures, « ${first} » et « ${second} », pour la seule station ${station} : chargez-les séparément, ou donnez un nom à chaque station.`,
  'no-such-file': ({ file }) => `Il n’y a pas de fichier ${file} : vérifiez son nom et le dossier.`,
  'not-a-file': ({ file }) => `${file} n’est pas un fichier : nommez les relevés eux-mêmes.`,
  'file-unreadable': ({ file, why }) => `Le fichier ${file} n’a pas pu être lu jusqu’au bout (${why}).`,
  'changed-while-read': ({ file }) =>
    `Le fichier ${file} a changé pendant la lecture : attendez qu’il soit entier, puis chargez-le de nouveau.`,
  'air-left': ({ station, readings }) =>
    `Les températures de l’air du fichier (${whole('fr', readings)}) ont été laissées de côté : pour les garder, inscrivez une station ${station} dans le fichier de saison, ou ajoutez --create-stations.`,
  'air-to-station': ({ station }) =>
    `Les températures de l’air du fichier sont allées à la station ${station}.`,
  'layout-used': ({ layout }) => `Lu selon la disposition enregistrée par le groupe, « ${layout} ».`,
  'stations-made': ({ count, stations }) =>
    `${whole('fr', count)} stations ont été créées : ${stations.join(', ')} …`,
  'station-made': ({ station, named }) =>
    station === named
      ? `La station ${station} a été créée.`
      : `La station ${station} a été créée pour ce que le fichier appelle « ${named} ».`,
  'instant-twice': ({ at, kept, left }) =>
    kept === left
      ? `la lecture de ${moment(at)} une deuxième fois`
      : `une deuxième lecture pour ${moment(at)} : ${decimal('fr', kept, 2)} a été gardée, ${decimal('fr', left, 2)} laissée`,
};
