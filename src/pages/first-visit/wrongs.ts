import type { SeasonProblem } from '../../season/index.js';
import type { FormField } from '../parts/refused-form.js';
import type { View } from '../view.js';

/** Where the form's fields go in the season it makes, and what they are called. */
const FIELDS = {
  'group.name': ['group', 'page-first-group-name'],
  'group.zone': ['zone', 'page-first-zone'],
  'stations.id': ['station', 'page-field-id'],
  'stations.latitude': ['latitude', 'page-field-latitude'],
  'stations.longitude': ['longitude', 'page-field-longitude'],
  'sites.id': ['site', 'page-field-site'],
  'lots.id': ['lot', 'page-field-lot'],
  'lots.fertilised': ['fertilised', 'page-field-fertilised'],
  'lots.eggs': ['eggs', 'page-field-eggs'],
  'lots.table': ['table', 'page-field-table'],
  'boxes.id': ['box', 'page-field-box'],
  'boxes.site': ['site', 'page-field-site'],
  'boxes.fills.lot': ['lot', 'page-field-lot'],
  'boxes.fills.eggs': ['eggs', 'page-field-eggs'],
  'boxes.fills.planted': ['planted', 'page-field-planted'],
  'seasonalCurve.monthly': ['curve', 'page-first-curve-monthly'],
} as const;

const isPlace = (path: string): path is keyof typeof FIELDS => path in FIELDS;

/** The field of the first season's form that a problem lies in. */
export const firstField =
  (view: View) =>
  ({ path }: SeasonProblem): FormField | null => {
    const place = path.filter((step) => typeof step === 'string').join('.');
    if (!isPlace(place)) return null;
    const [at, word] = FIELDS[place];
    return { at, label: view.say(word, {}) };
  };
