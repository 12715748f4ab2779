import type { LayoutsWords } from '../../cli/layouts-words.js';

export const layouts: { [Code in keyof LayoutsWords]: (words: LayoutsWords[Code]) => string } = {
  'cli-layouts': () =>
    'dispositions de relevés que le groupe conserve, pour que les fichiers de l’an prochain ne posent plus de questions',
  'cli-layouts-list': () =>
    'énumérer les dispositions conservées; avec --json, chacune telle que « layouts keep » la prend',
  'cli-layouts-keep': () => 'conserver une disposition d’un fichier JSON, à la place de celle du même nom',
  'cli-layouts-file': () =>
    'fichier qui contient une disposition : un nom (name), un repère (match) et ce qui est fixé (settled)',
  'cli-layouts-remove': () => 'retirer une disposition; ce qui a été chargé avec elle reste tel quel',
  'cli-layouts-name': () => 'nom de la disposition',
  'cli-layouts-none': () =>
    'Aucune disposition n’est conservée. Quand un relevé a été compris comme il faut, chargez-le avec --keep-layout NOM.',
  'cli-layouts-kept': ({ layout }) =>
    `La disposition « ${layout} » est conservée : les fichiers qui lui correspondent sont lus selon elle.`,
  'cli-layouts-removed': ({ layout }) => `La disposition « ${layout} » a été retirée.`,
  'cli-layouts-header': ({ headers }) =>
    `fichiers avec les colonnes ${headers.map((one) => `« ${one} »`).join(', ')}`,
  'cli-layouts-opening': ({ opening }) => `fichiers qui commencent par « ${opening} »`,
  'cli-layouts-file-name': ({ part }) => `fichiers dont le nom contient « ${part} »`,
  'cli-load-keep-layout': () =>
    'conserver la façon dont ce fichier a été compris, et vos réponses, pour les fichiers de l’an prochain',
  'cli-load-one-layout': () =>
    '--keep-layout va avec un seul fichier à la fois : chargez les autres sans cette option.',
};
