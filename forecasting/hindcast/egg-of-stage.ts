import { stageRow } from '../needs.js';
import type { DevelopmentTable, StageName } from '../table.js';

/** Which egg's coming to a stage is asked for: of a thousand the fiftieth, the middle one, or the nine hundred and fiftieth. */
export interface EggOfStage {
  readonly stage: StageName;
  readonly egg: 'first' | 'median' | 'last';
}

/**
 * What is asked by a name: a stage of the table, or "first-…" or "last-…" of one, as lifting needs the last hatch and the
 * first emergence. Null for what the table does not name.
 *
 * @example eggOfStage(atlanticSalmon, 'last-hatch') // { stage: 'hatch', egg: 'last' }
 */
export function eggOfStage(table: DevelopmentTable, name: string): EggOfStage | null {
  if (stageRow(table, name) !== undefined) return { stage: name, egg: 'median' };
  for (const egg of ['first', 'last'] as const) {
    const stage = name.startsWith(`${egg}-`) ? name.slice(egg.length + 1) : '';
    if (stageRow(table, stage) !== undefined) return { stage, egg };
  }
  return null;
}
