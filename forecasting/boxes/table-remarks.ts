import type { ForecastRemark } from '../forecast.js';
import type { DevelopmentTable, Source } from '../table.js';

/** What a table takes for granted: numbers from memory, spreads that are estimates, stages made equal. */
export function tableRemarks(table: DevelopmentTable): ForecastRemark[] {
  const sources: Source[] = [...table.sources, ...table.stages.flatMap((row) => row.sources)];
  const remarks: ForecastRemark[] = [];
  if (sources.some(({ mark }) => mark === 'memory'))
    remarks.push({ code: 'table-from-memory', with: { table: table.name } });
  if (sources.some(({ mark, of }) => mark === 'ours' && (of ?? '').includes('Spread')))
    remarks.push({ code: 'table-spread-ours', with: { table: table.name } });
  for (const { stage, needs } of table.stages) {
    if ('sameAs' in needs) remarks.push({ code: 'stage-equated', with: { stage, with: needs.sameAs } });
  }
  return remarks;
}
