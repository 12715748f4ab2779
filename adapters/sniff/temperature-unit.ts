import { type AdapterRemark, DownloadRefused, type TemperatureUnit } from '../download.js';
import type { ValueColumn } from '../reading/plan.js';
import { type Candidate, numbersIn, type ValueContext } from './candidates.js';
import type { SampleRow } from './table.js';

export interface Temperatures {
  readonly values: readonly ValueColumn[];
  /** The unit was not stated anywhere. */
  readonly unitAssumed: boolean;
}

/** Gives each chosen column its unit: the layout's, the header's, the preamble's, the cells', the person's, or °C where the numbers allow nothing else. */
export function withUnits(
  context: ValueContext,
  chosen: readonly Candidate[],
  assumed: AdapterRemark[],
): Temperatures {
  const { asked, preambleUnit, preambleMedium, hasUnitColumn } = context;
  const settled = asked.layout?.unit;
  let unitAssumed = false;
  const values = chosen.map(({ index, name, says }): ValueColumn => {
    const stated = settled ?? says.unit ?? preambleUnit ?? unitOfCells(context.rows, index);
    if (stated !== null && asked.unit !== undefined && asked.unit !== stated && settled === undefined)
      assumed.push({ code: 'unit-asked-not-used', with: { asked: asked.unit, stated } });
    const medium = says.medium ?? preambleMedium;
    let unit = stated ?? asked.unit ?? null;
    if (unit === null && !hasUnitColumn) {
      unitAssumed = true;
      unit = celsiusIfAllowed(context, index, medium, assumed);
    }
    return { index, name, quantity: 'temperature', medium, unit: unit ?? 'C', factor: 1, station: null };
  });
  return { values, unitAssumed };
}

/** "3.2 °C" in the cells themselves. */
function unitOfCells(rows: readonly SampleRow[], column: number): TemperatureUnit | null {
  for (const { cells, kinds } of rows) {
    if (kinds[column] !== 'number') continue;
    const letter = /[CFK]$/i.exec(cells[column])?.[0].toUpperCase();
    return letter === 'C' || letter === 'F' || letter === 'K' ? letter : null;
  }
  return null;
}

/**
 * °C where the numbers could not be °F or K: rivers lie between -5 and 35 °C, which in °F begins at 23 and in °F
 * under ice at 32. Numbers that never fall below 25 may be °F, so they are asked about.
 */
function celsiusIfAllowed(
  { rows, asked, known }: ValueContext,
  column: number,
  medium: 'water' | 'air' | null,
  assumed: AdapterRemark[],
): TemperatureUnit {
  const values = numbersIn(rows, column).filter((value) => value > -90 && value < 900);
  const smallest = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const largest = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const air = medium === 'air' || known.isAir?.(asked.station ?? null) === true;
  const coldest = air || medium === null ? -55 : -5;
  const outside = values.filter((value) => value < coldest || value > (air ? 45 : 35)).length;
  if (values.length > 0 && (outside > 0.01 * values.length || smallest >= 25))
    throw new DownloadRefused(
      { code: 'no-unit', with: { smallest, largest } },
      { code: 'which-unit', with: {} },
    );
  if (!assumed.some(({ code }) => code === 'unit-assumed') && values.length > 0)
    assumed.push({ code: 'unit-assumed', with: { unit: '°C', smallest, largest } });
  return 'C';
}
