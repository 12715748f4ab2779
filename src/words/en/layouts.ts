import type { LayoutsWords } from '../../cli/layouts-words.js';

export const layouts: { [Code in keyof LayoutsWords]: (words: LayoutsWords[Code]) => string } = {
  'cli-layouts': () =>
    'layouts of downloads that the group keeps, so that next year’s files need no questions',
  'cli-layouts-list': () => 'list the layouts kept; with --json, each as “layouts keep” takes it',
  'cli-layouts-keep': () => 'keep a layout from a JSON file, in place of one of the same name',
  'cli-layouts-file': () => 'file with one layout: a name, a match, and what is settled',
  'cli-layouts-remove': () => 'remove a layout; what was loaded with it stays as it is',
  'cli-layouts-name': () => 'name of the layout',
  'cli-layouts-none': () =>
    'No layout is kept. When a download has been understood as it should be, load it with --keep-layout NAME.',
  'cli-layouts-kept': ({ layout }) => `The layout “${layout}” is kept: files it matches are read by it.`,
  'cli-layouts-removed': ({ layout }) => `The layout “${layout}” was removed.`,
  'cli-layouts-header': ({ headers }) =>
    `files with the columns ${headers.map((one) => `“${one}”`).join(', ')}`,
  'cli-layouts-opening': ({ opening }) => `files that begin with “${opening}”`,
  'cli-layouts-file-name': ({ part }) => `files with “${part}” in their name`,
  'cli-load-keep-layout': () =>
    'keep how this file was understood, and what you answered, for next year’s files',
  'cli-load-one-layout': () => '--keep-layout goes with one file at a time: load the others without it.',
};
