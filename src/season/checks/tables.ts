import type { DevelopmentTable } from '../../../forecasting/table.js';
import type { Season } from '../season.js';
import { shippedTableIds } from '../shipped.js';
import type { Found } from './index.js';
import { loopFrom } from './loops.js';

/** The group's own tables: names that do not hide a shipped one, stages that lead back to a law. */
export function tables({ tables }: Season): Found[] {
  return tables.flatMap((table, i): Found[] => [
    ...(shippedTableIds.includes(table.id)
      ? [
          {
            path: ['tables', i, 'id'],
            trouble: { code: 'season.shipped-table-id', with: { id: table.id } },
          } as const,
        ]
      : []),
    ...stages(table, i),
  ]);
}

function stages(table: DevelopmentTable, i: number): Found[] {
  const leansOn = new Map(
    table.stages.map(({ stage, needs }) => [
      stage,
      'multipleOf' in needs
        ? needs.multipleOf
        : 'sameAs' in needs
          ? needs.sameAs
          : 'after' in needs
            ? needs.after
            : undefined,
    ]),
  );
  return table.stages.flatMap(({ stage }, j): Found[] => {
    const path = ['tables', i, 'stages', j, 'needs'];
    const other = leansOn.get(stage);
    if (other !== undefined && !leansOn.has(other)) {
      const known = [...leansOn.keys()].join(', ');
      return [
        { path, trouble: { code: 'season.no-such-stage', with: { stage: other, table: table.id, known } } },
      ];
    }
    const loop = loopFrom(stage, (name) => leansOn.get(name));
    return loop === null
      ? []
      : [{ path, trouble: { code: 'season.stage-loop', with: { table: table.id, loop: loop.join(' → ') } } }];
  });
}
