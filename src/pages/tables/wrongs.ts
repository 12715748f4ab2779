import type { SeasonProblem } from '../../season/index.js';
import type { FormField } from '../parts/refused-form.js';
import type { View } from '../view.js';

type Field = 'id' | 'name' | 'species' | 'source' | 'rows' | 'eye' | 'button';

/** The field of the form for a table of one's own that a problem lies in. */
export const tableField =
  (view: View) =>
  (problem: SeasonProblem): FormField | null => {
    if (problem.path[0] !== 'tables') return null;
    const at = fieldAt(problem);
    return at === null ? null : { at, label: view.say(`page-table-${at}`, {}) };
  };

/** The rows give a stage its days and the span it is known to hold for; the factors follow from hatch. */
function fieldAt({ path }: SeasonProblem): Field | null {
  const [, , key, stage, part] = path;
  if (key === 'id' || key === 'name' || key === 'species') return key;
  if (key === 'sources' || part === 'sources') return 'source';
  if (key !== 'stages') return null;
  if (path.includes('factor')) return stage === 0 ? 'eye' : 'button';
  return 'rows';
}
