type Nothing = Record<never, never>;

/** Backups, open formats, checking the folder, the settings in force. */
export interface KeepingPageWords {
  'page-keeping-title': Nothing;
  'page-keeping-answer': { readonly loads: number };
  'page-keeping-link': Nothing;
  'page-keeping-backup': Nothing;
  'page-keeping-backup-what': Nothing;
  'page-keeping-backup-do': Nothing;
  'page-keeping-open': Nothing;
  'page-keeping-open-what': Nothing;
  'page-keeping-open-do': Nothing;
  'page-keeping-check': Nothing;
  'page-keeping-check-what': Nothing;
  'page-keeping-check-do': Nothing;
  'page-keeping-settings': Nothing;
  'page-keeping-settings-what': Nothing;
}
