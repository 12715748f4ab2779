import type { KeepingPageWords } from '../../pages/keeping-words.js';
import { whole } from '../format.js';

/** Backups, open formats, checking the folder, the settings in force. */
export const pagesKeeping: { [Code in keyof KeepingPageWords]: (words: KeepingPageWords[Code]) => string } = {
  'page-keeping-title': () => 'Keeping the record safe',
  'page-keeping-answer': ({ loads }) =>
    loads === 0
      ? 'There is no load yet; the season and its versions can be kept all the same.'
      : `${loads === 1 ? 'One load' : `${whole('en', loads)} loads`} of readings and every version of the season lie in one place. A copy elsewhere, after every visit, is what saves them when that place is lost.`,
  'page-keeping-link': () => 'Backup and settings',
  'page-keeping-backup': () => 'A backup',
  'page-keeping-backup-what': () =>
    'One file with everything: record, seasons, photographs, accounts, the people who are told. Keep it on another disk, where only you can read it. “underice restore” makes a folder of it.',
  'page-keeping-backup-do': () => 'Download a backup',
  'page-keeping-open': () => 'Open formats',
  'page-keeping-open-what': () =>
    'An archive of CSV, JSON and the season file that any program reads, without the accounts. Unpacked, “underice restore” reads it back.',
  'page-keeping-open-do': () => 'Download the archive',
  'page-keeping-check': () => 'Is everything whole?',
  'page-keeping-check-what': () =>
    'Every load is read again and compared with what was accepted. With years of readings this takes a minute.',
  'page-keeping-check-do': () => 'Check now',
  'page-keeping-settings': () => 'Settings in force',
  'page-keeping-settings-what': () =>
    'They are changed in settings.yaml of the data folder, by variables or when the service is started; it reads them as it starts.',
};
