import type { DevelopmentTable, Law, StageName, StageRow } from './table.js';

/**
 * What a stage comes down to once multiples and equals are followed: progress is the sum of 1 / (factor * D),
 * from fertilisation or, with `after`, from the median egg of that other stage.
 */
export interface Way {
  readonly law: Law;
  readonly factor: number;
  readonly after: Way | null;
}

/** The row of a stage, or undefined where the table does not name it. */
export function stageRow(table: DevelopmentTable, stage: StageName): StageRow | undefined {
  return table.stages.find((row) => row.stage === stage);
}

/**
 * Follows a stage to the law behind it. The table has passed `checkTable`: no loop, no unknown stage.
 *
 * @example wayTo(atlanticSalmon, 'button-up') // { law: Crisp's, factor: 1.7, after: null }
 */
export function wayTo(table: DevelopmentTable, stage: StageName): Way {
  const row = stageRow(table, stage);
  if (row === undefined) throw new RangeError(`stage ${stage} is not in table ${table.id}`);
  const { needs } = row;
  if ('sameAs' in needs) return wayTo(table, needs.sameAs);
  if ('multipleOf' in needs) {
    const root = wayTo(table, needs.multipleOf);
    return { ...root, factor: root.factor * needs.factor };
  }
  return { law: needs.law, factor: 1, after: 'after' in needs ? wayTo(table, needs.after) : null };
}
