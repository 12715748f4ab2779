import { type AdapterRemark, DownloadRefused } from '../download.js';
import type { ValueColumn } from '../reading/plan.js';
import { type Candidate, candidatesOf, columnAsked, type ValueContext } from './candidates.js';
import { fold } from './fold.js';
import { isWeather } from './header.js';
import { type Temperatures, withUnits } from './temperature-unit.js';
import { asStations } from './wide-table.js';

export interface ValuesFound {
  readonly values: readonly ValueColumn[];
  /** The unit was not stated anywhere. */
  readonly unitAssumed: boolean;
  readonly assumed: readonly AdapterRemark[];
}

const bareValue =
  /^(value|values|valeur|valeurs|val|reading|readings|lecture|lectures|mesure|measurement|result|resultat|donnee|t|ta|tw|data)$/;

/** Finds the columns to take, or refuses with the question which one. */
export function findValues(context: ValueContext): ValuesFound {
  const candidates = candidatesOf(context);
  const assumed: AdapterRemark[] = [];
  const others = candidates.filter(({ says }) => says.role === 'value' && says.quantity !== 'temperature');
  const measured = others.flatMap((candidate) => otherQuantity(candidate, assumed));
  const temperatures = temperatureColumns(context, candidates, measured.length > 0, assumed);
  // Where each temperature column is a station's, nothing says whose level stands beside them.
  const wide = temperatures.values.some(({ station }) => station !== null);
  const values = [...asAir(context, temperatures.values, assumed), ...(wide ? [] : measured)];
  return { values, unitAssumed: temperatures.unitAssumed, assumed };
}

/** A lone temperature beside dew point, wind or snow is a weather station's, so the air's. */
function asAir(
  { headers }: ValueContext,
  values: readonly ValueColumn[],
  assumed: AdapterRemark[],
): readonly ValueColumn[] {
  const columns = (headers ?? []).filter(isWeather);
  if (columns.length < 2 || values.length !== 1 || values[0].medium !== null) return values;
  assumed.push({ code: 'air-beside-weather', with: { columns: columns.slice(0, 3) } });
  return [{ ...values[0], medium: 'air' }];
}

function otherQuantity({ index, name, says }: Candidate, assumed: AdapterRemark[]): ValueColumn[] {
  if (says.factor === null) {
    assumed.push({ code: 'column-without-unit-left', with: { column: name } });
    return [];
  }
  const { quantity, factor } = says;
  return [{ index, name, quantity, medium: null, unit: 'C', factor, station: null }];
}

function temperatureColumns(
  context: ValueContext,
  candidates: readonly Candidate[],
  hasOthers: boolean,
  assumed: AdapterRemark[],
): Temperatures {
  const { asked, headers } = context;
  const named = candidates.filter(({ says }) => says.role === 'value' && says.quantity === 'temperature');
  const bare = candidates.filter(({ says }) => says.role === 'unknown');
  if (asked.column !== undefined) return withUnits(context, [columnAsked(context, asked.column)], assumed);
  if (named.length > 0) {
    const chosen = choose(named);
    if (chosen !== null) {
      const left = named.filter((candidate) => !chosen.includes(candidate)).map(({ name }) => name);
      if (left.length > 0)
        assumed.push({
          code: 'column-taken',
          with: { column: chosen.map(({ name }) => name).join(', '), left },
        });
      return withUnits(context, chosen, assumed);
    }
    const wide = asStations(context, named, assumed);
    if (wide !== null) return wide;
    throw severalColumns(named);
  }
  if (headers === null) return unnamed(context, bare, hasOthers, assumed);
  const values = bare.filter(({ name }) => bareValue.test(fold(name)));
  if (values.length === 1) return withUnits(context, values, assumed);
  if (hasOthers) return { values: [], unitAssumed: false };
  const wide = asStations(context, bare, assumed);
  if (wide !== null) return wide;
  const columns = bare.map(({ name }) => name);
  throw new DownloadRefused(
    { code: 'no-temperature-column', with: { headers: headers.filter((header) => header !== '') } },
    columns.length > 0 ? { code: 'which-column', with: { columns } } : null,
  );
}

function unnamed(
  context: ValueContext,
  bare: readonly Candidate[],
  hasOthers: boolean,
  assumed: AdapterRemark[],
): Temperatures {
  if (bare.length === 1) return withUnits(context, bare, assumed);
  if (bare.length === 0 && hasOthers) return { values: [], unitAssumed: false };
  const columns = bare.map(({ name }) => name);
  throw new DownloadRefused(
    { code: 'unexplained-columns', with: { columns, firstLine: context.firstLine.slice(0, 120) } },
    { code: 'which-column', with: { columns } },
  );
}

function severalColumns(candidates: readonly Candidate[]): DownloadRefused {
  const columns = candidates.map(({ name }) => name);
  return new DownloadRefused(
    { code: 'several-columns', with: { columns } },
    { code: 'which-column', with: { columns } },
  );
}

/** The one temperature there is, or the water's and the air's; null where nothing tells the columns apart. */
function choose(named: readonly Candidate[]): readonly Candidate[] | null {
  if (named.length === 1) return named;
  const means = named.filter(({ says }) => says.statistic === 'mean');
  const pool = means.length > 0 ? means : named;
  const unique = oneUnit(pool);
  if (unique.length === 1) return unique;
  const water = unique.filter(({ says }) => says.medium === 'water');
  const air = unique.filter(({ says }) => says.medium === 'air');
  return water.length === 1 && air.length === 1 && unique.length === 2 ? unique : null;
}

/** The same column in °C and in °F is one column. */
function oneUnit(pool: readonly Candidate[]): readonly Candidate[] {
  const bare = ({ name }: Candidate) =>
    fold(name)
      .replace(/\b(?:deg|celsius|fahrenheit|[cfk])\b/g, '')
      .trim();
  return pool.filter(({ says, ...candidate }, i) => {
    const twins = pool.filter(
      (other, j) => j !== i && bare(other) === bare({ says, ...candidate }) && other.says.unit !== says.unit,
    );
    return says.unit === 'C' || !twins.some((twin) => twin.says.unit === 'C');
  });
}
