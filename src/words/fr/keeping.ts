import type { KeepingWords } from '../../cli/keeping-words.js';
import { whole } from '../format.js';

/** Sauvegardes, vérifications, exportations, et passage d’une base à l’autre. */
export const keeping: { [Code in keyof KeepingWords]: (words: KeepingWords[Code]) => string } = {
  'cli-backup': () =>
    'écrire tout ce qui est au groupe dans un seul fichier, même pendant que le service tourne : données, saisons, photographies, comptes, personnes averties',
  'cli-backup-file': () => 'fichier à écrire; il ne doit pas y en avoir de ce nom',
  'cli-backup-made': ({ file, bytes }) =>
    `La sauvegarde est dans ${file} (${whole('fr', bytes / 1024)} ko). Gardez-en une copie sur un autre disque, où personne d’autre ne peut la lire; les photographies, les comptes et les personnes averties y sont, les réglages de cet ordinateur n’y sont pas.`,
  'cli-restore': () =>
    'faire un dossier de données à partir d’une sauvegarde, ou d’un dossier écrit par « export --all »',
  'cli-restore-from': () => 'le fichier de sauvegarde, ou le dossier exporté',
  'cli-restored': ({ folder, loads }) =>
    `La saison est de nouveau dans ${folder}, avec ${whole('fr', loads)} chargements.`,
  'cli-verify': () => 'vérifier que rien ne manque, n’a changé ou ne traîne dans le dossier de données',
  'cli-verified': ({ loads, readings }) =>
    `${whole('fr', loads)} chargements avec ${whole('fr', readings)} lectures : tout est entier.`,
  'cli-verify-found': ({ count }) =>
    `${count === 1 ? 'Une chose n’est pas' : `${whole('fr', count)} choses ne sont pas`} comme il faut. Gardez ce dossier tel quel, et restaurez une sauvegarde dans un nouveau dossier :`,
  'cli-export': () => 'écrire les données en formats ouverts : CSV, fichier de saison, JSON',
  'cli-export-folder': () => 'dossier à créer; « underice restore » le relit',
  'cli-export-all': () =>
    'tout : chaque chargement avec toutes ses lectures, chaque version de la saison, les photographies; pas les comptes',
  'cli-exported': ({ folder, loads, readings }) =>
    `${whole('fr', loads)} chargements avec ${whole('fr', readings)} lectures sont dans ${folder}.`,
  'cli-copy-store': () => 'déplacer les lectures vers l’autre base, comparées avant tout changement',
  'cli-copy-store-to': () =>
    'où elles doivent être : embedded (dans le dossier de données) ou influx (le serveur des réglages)',
  'cli-copied-store': ({ from, to, loads, readings }) =>
    `${whole('fr', loads)} chargements avec ${whole('fr', readings)} lectures sont passés de « ${from} » à « ${to} »; les nombres et les sommes de contrôle concordent.`,
  'verify-load-readings': ({ load, station, expected, found }) =>
    `chargement ${load}, station ${station} : ${whole('fr', expected)} lectures avaient été acceptées, il y en a ${whole('fr', found)}`,
  'verify-load-changed': ({ load, station }) =>
    `chargement ${load}, station ${station} : ses lectures ne sont pas celles qui avaient été acceptées`,
  'verify-orphans': ({ load, readings }) =>
    `${whole('fr', readings)} lectures du chargement ${load}, qui n’est pas en vigueur`,
  'verify-twice': ({ readings }) => `${whole('fr', readings)} lectures montrées deux fois au même instant`,
  'verify-covered': ({ readings }) =>
    `${whole('fr', readings)} lectures cachées que rien de plus récent ne couvre`,
  'verify-gap': ({ table, number }) => `le numéro ${number} de « ${table} » manque`,
  'verify-reference': ({ table, rows }) =>
    `${whole('fr', rows)} lignes de « ${table} » nomment quelque chose qui n’existe pas`,
  'verify-closed': ({ season }) => `saison close ${season} : ce qui en était conservé a changé`,
  'verify-days': ({ station }) =>
    `station ${station} : les moyennes journalières gardées ne sont pas celles de ses lectures`,
};
