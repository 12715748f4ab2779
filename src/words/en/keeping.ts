import type { KeepingWords } from '../../cli/keeping-words.js';
import { whole } from '../format.js';

/** Backups, checks, exports, and moving between stores. */
export const keeping: { [Code in keyof KeepingWords]: (words: KeepingWords[Code]) => string } = {
  'cli-backup': () =>
    'write everything of the group into one file, also while the service runs: record, seasons, photographs, accounts, people who are told',
  'cli-backup-file': () => 'file to write; there must be none of that name',
  'cli-backup-made': ({ file, bytes }) =>
    `The backup is in ${file} (${whole('en', bytes / 1024)} kB). Keep a copy on another disk, where only you may read it: photographs, accounts and the people who are told are in it, the settings of this computer are not.`,
  'cli-restore': () => 'make a data folder from a backup, or from a folder that "export --all" wrote',
  'cli-restore-from': () => 'the backup file, or the exported folder',
  'cli-restored': ({ folder, loads }) =>
    `The season is in ${folder} again, with ${whole('en', loads)} loads.`,
  'cli-verify': () => 'check that nothing in the data folder is missing, changed or loose',
  'cli-verified': ({ loads, readings }) =>
    `${whole('en', loads)} loads with ${whole('en', readings)} readings: everything is whole.`,
  'cli-verify-found': ({ count }) =>
    `${count === 1 ? 'One thing is' : `${whole('en', count)} things are`} not as they should be. Keep this folder as it is, and restore a backup into a new one:`,
  'cli-export': () => 'write the record in open formats: CSV, the season file, JSON',
  'cli-export-folder': () => 'folder to make; "underice restore" reads it back',
  'cli-export-all': () =>
    'everything: every load with all its readings, every version of the season, photographs; not the accounts',
  'cli-exported': ({ folder, loads, readings }) =>
    `${whole('en', loads)} loads with ${whole('en', readings)} readings are in ${folder}.`,
  'cli-copy-store': () => 'move the readings to the other store, compared before anything is switched',
  'cli-copy-store-to': () =>
    'where they are to lie: embedded (in the data folder) or influx (the server of the settings)',
  'cli-copied-store': ({ from, to, loads, readings }) =>
    `${whole('en', loads)} loads with ${whole('en', readings)} readings moved from "${from}" to "${to}"; counts and checksums agree.`,
  'verify-load-readings': ({ load, station, expected, found }) =>
    `load ${load}, station ${station}: ${whole('en', expected)} readings were accepted, ${whole('en', found)} are there`,
  'verify-load-changed': ({ load, station }) =>
    `load ${load}, station ${station}: its readings are not those that were accepted`,
  'verify-orphans': ({ load, readings }) =>
    `${whole('en', readings)} readings of load ${load}, which does not stand`,
  'verify-twice': ({ readings }) => `${whole('en', readings)} readings shown twice at one instant`,
  'verify-covered': ({ readings }) =>
    `${whole('en', readings)} readings hidden though nothing newer covers them`,
  'verify-gap': ({ table, number }) => `number ${number} of "${table}" is missing`,
  'verify-reference': ({ table, rows }) =>
    `${whole('en', rows)} rows of "${table}" name something that is not there`,
  'verify-closed': ({ season }) => `closed season ${season}: what was kept of it has changed`,
  'verify-days': ({ station }) => `station ${station}: the kept daily means are not those of its readings`,
};
