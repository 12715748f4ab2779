import type { LoadingWords } from '../../loading/index.js';
import type { StoreWords } from '../../store/index.js';
import { decimal, list, longDay, whole } from '../format.js';

/** The data folder and its store. */
/** An instant to the second: 2026-01-03T05:00:00Z. */
const moment = (at: string): string => at.replace('.000Z', 'Z');

export const store: { [Code in keyof StoreWords]: (words: StoreWords[Code]) => string } = {
  'folder-held': ({ folder, pid, since, address }) =>
    `The folder ${folder} is in use by another Underice${pid === null ? '' : ` (process ${pid})`}${
      since === '' ? '' : `, running since ${since}`
    }${address === '' ? '. End that one first, or wait until it is done.' : `: use it at ${address}, or end it first.`}`,
  'folder-read-only': ({ folder }) =>
    `Nothing can be written to ${folder}: choose a folder of your own with --data, or ask for permission to write there.`,
  'folder-not-a-folder': ({ folder }) =>
    `${folder} is a file, not a folder: give --data a folder, or the name of one to be made.`,
  'folder-of-others': ({ folder, found }) =>
    `The folder ${folder} already holds other things (${found}): give --data an empty folder, or the name of a new one.`,
  'disk-full': ({ folder }) =>
    `The disk that holds ${folder} is full: nothing was stored. Make room there and try again.`,
  'store-newer': ({ folder, found, known }) =>
    `The season in ${folder} was written by a newer Underice (format ${found}, this one knows up to ${known}): install the newer version. Nothing was changed.`,
  'store-format-newer': ({ folder }) =>
    `The season in ${folder} was written by a newer Underice than this one: install the newer version. Nothing was changed.`,
  'store-cut-short': ({ folder, bytes, expected }) =>
    `The file underice.duckdb in ${folder} is incomplete${
      expected === 0 ? '' : ` (${whole('en', bytes)} of ${whole('en', expected)} bytes)`
    }, as after a broken copy: put a whole backup in its place. Nothing was changed.`,
  'store-unreadable': ({ folder, why }) =>
    `The file underice.duckdb in ${folder} is not a season of Underice${
      why === '' ? '' : ' or is damaged'
    }: move it away, or put a backup in its place. Nothing was changed.`,
  'store-failed': ({ folder, why }) => `The folder ${folder} could not be used: ${why}`,
  'unknown-load': ({ load }) => `There is no load ${load}: "underice loads" lists them.`,
  'folder-unknown-station': ({ station }) => `There is no station "${station}" in this folder.`,
  'already-withdrawn': ({ load, at }) =>
    `Load ${load} was withdrawn already, on ${longDay('en', Date.parse(at) / 86_400_000)}.`,
  'backup-exists': ({ file }) => `There is a file ${file} already: give the backup a name of its own.`,
  'backup-unwritable': ({ file, why }) =>
    `The backup ${file} cannot be written (${why}): choose a place where you may write.`,
  'backup-missing': ({ file }) => `There is no backup ${file}: check its name.`,
  'backup-newer': ({ file }) =>
    `${file} was written by a newer Underice than this one: install the newer version. Nothing was changed.`,
  'backup-cut-short': ({ file }) =>
    `The backup ${file} is incomplete, as after a broken copy: use another one. Nothing was changed.`,
  'backup-unreadable': ({ file }) =>
    `${file} is not a backup of Underice, or is damaged: use another one. Nothing was changed.`,
  'restore-not-empty': ({ folder }) =>
    `The folder ${folder} already holds a season: restore into an empty folder, or the name of a new one.`,
  'export-not-empty': ({ folder }) => `The folder ${folder} is not empty: export into a new one.`,
  'export-incomplete': ({ folder, file }) =>
    `The export in ${folder} is not whole: ${file} is missing or damaged. Nothing was changed.`,
  'store-elsewhere': ({ folder, stands, wanted }) =>
    `The readings of ${folder} are in the store "${stands}", the settings say "${wanted}": write "store: ${stands}", or move them with "underice copy-store --to ${wanted}". Nothing was changed.`,
  'server-not-named': ({ folder, url, database }) =>
    `The settings name no InfluxDB server for ${folder}${url === '' ? '' : ` (its readings are at ${url}, database ${database})`}: write influxUrl and influxDatabase into settings.yaml.`,
  'server-unreachable': ({ url, why }) =>
    `The InfluxDB server at ${url} does not answer (${why}): start it, or check the address. Nothing was changed.`,
  'server-other-kind': ({ url }) =>
    `What answers at ${url} is not an InfluxDB server: check influxUrl in the settings. Nothing was changed.`,
  'server-denied': ({ url }) =>
    `The InfluxDB server at ${url} does not accept the user, password or token: check them in the settings. Nothing was changed.`,
  'server-database-missing': ({ url, database }) =>
    `The InfluxDB server at ${url} has no database or bucket "${database}" with this group's readings: check influxDatabase, or have it restored there. Nothing was changed.`,
  'server-database-taken': ({ url, database }) =>
    `The database "${database}" at ${url} belongs to another group: give each group a database of its own. Nothing was changed.`,
  'server-forgets': ({ url, database, policy, duration }) =>
    `The database "${database}" at ${url} forgets: its retention "${policy}" drops readings after ${duration}, and old winters with them. Make it keep for ever, then try again. Nothing was changed.`,
  'server-full': ({ url }) =>
    `The disk of the InfluxDB server at ${url} is full: nothing was stored. Make room there and try again.`,
  'server-failed': ({ url, why }) =>
    `The InfluxDB server at ${url} did not do what it was asked (${why}): nothing was stored.`,
  'copy-there-already': ({ store }) =>
    `The readings are in the store "${store}" already: there is nothing to copy.`,
  'copy-differs': ({ load }) =>
    `Load ${load} did not come out the same in the other store: nothing was switched, the readings stand where they stood.`,
  'copy-unsettled': ({ setting, place }) =>
    `The setting ${setting} is given by ${place}, which a command cannot change: take it away there first, or give the new value afterwards. Nothing was copied.`,
};

/** From a file to a load. */
export const loading: { [Code in keyof LoadingWords]: (words: LoadingWords[Code]) => string } = {
  'no-station': ({ known }) =>
    `The file does not say which station it comes from: add --station${
      known.length === 0
        ? ' and a name, with --create-stations for a new one'
        : known.length === 1
          ? ` ${known[0]}, or another name with --create-stations`
          : ` and one of ${list('en', known)}, or another name with --create-stations`
    }.`,
  'station-not-in-season': ({ station, known }) =>
    `The season has no station "${station}"${
      known.length === 0 ? '' : ` (it has ${list('en', known)})`
    }: check the name or say with --station which of them it is, write it into the season file, or add --create-stations to make it.`,
  'station-twice': ({ first, second, station }) =>
    `The file has two columns of readings, "${first}" and "${second}", for the one station ${station}: load them apart, or give each station a name of its own.`,
  'no-such-file': ({ file }) => `There is no file ${file}: check its name and the folder.`,
  'not-a-file': ({ file }) => `${file} is not a file: name the downloads themselves.`,
  'file-unreadable': ({ file, why }) => `The file ${file} could not be read to its end (${why}).`,
  'changed-while-read': ({ file }) =>
    `The file ${file} changed while it was being read: wait until it is written whole, then load it again.`,
  'air-left': ({ station, readings }) =>
    `The air temperatures in the file (${whole('en', readings)}) were left: to keep them, write a station ${station} into the season file, or add --create-stations.`,
  'air-to-station': ({ station }) => `The air temperatures of the file went to the station ${station}.`,
  'layout-used': ({ layout }) => `Read by the group’s saved layout “${layout}”.`,
  'stations-made': ({ count, stations }) =>
    `${whole('en', count)} stations were made: ${stations.join(', ')} …`,
  'station-made': ({ station, named }) =>
    station === named
      ? `The station ${station} was made.`
      : `The station ${station} was made for what the file calls "${named}".`,
  'instant-twice': ({ at, kept, left }) =>
    kept === left
      ? `the reading of ${moment(at)} a second time`
      : `a second reading for ${moment(at)}: ${decimal('en', kept, 2)} was kept, ${decimal('en', left, 2)} left`,
};
