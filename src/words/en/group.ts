import type { NameWords } from '../../group/unknown-name.js';
import { fewOf } from '../format.js';

export const group: { [Code in keyof NameWords]: (words: NameWords[Code]) => string } = {
  'unknown-box': ({ box, boxes }) =>
    `There is no box "${box}" in the season: it has ${boxes.length > 0 ? fewOf('en', boxes) : 'none yet'}.`,
  'unknown-station-name': ({ station, stations }) =>
    `There is no station "${station}" in the season: it has ${stations.length > 0 ? fewOf('en', stations) : 'none yet'}.`,
  'unknown-table': ({ table, tables }) =>
    `There is no development table "${table}": there are ${fewOf('en', tables)}.`,
  'unknown-thing': ({ id, ids }) =>
    `The season has nothing called "${id}" in this list: ${ids.length > 0 ? `there is ${fewOf('en', ids)}` : 'it is empty'}.`,
  'unknown-layout': ({ layout, layouts }) =>
    `There is no saved layout "${layout}": there ${layouts.length > 0 ? `is ${fewOf('en', layouts)}` : 'are none yet'}.`,
  'no-layout-needed': ({ file }) =>
    `No layout was kept of ${file}: either it was not understood, or its format explains itself and needs none.`,
  'not-a-load': ({ load }) =>
    `"${load}" is not a load: "underice loads" lists them by number, for example 3.`,
  'folder-taken': ({ folder }) =>
    `The folder ${folder} already holds a season: name an empty or absent one for the sample season.`,
  'season-moved': ({ expected, version, by }) =>
    `The season has changed since you opened it: you changed version ${expected}, and version ${version} by ${by} stands now. Nothing was overwritten: look at theirs, then make your change again.`,
  'unknown-version': ({ version }) => `There is no version ${version} of the season.`,
  'nothing-to-undo': () => 'The season has no earlier version to go back to.',
};
