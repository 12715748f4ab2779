import {
  type AdapterRemark,
  type Asked,
  DownloadRefused,
  type Known,
  type TemperatureUnit,
} from '../download.js';
import type { ValueColumn } from '../reading/plan.js';
import { fold } from './fold.js';
import { type HeaderSays, isWeather } from './header.js';
import type { SampleRow } from './table.js';
import { columnName } from './time-columns.js';

/** A column that could be taken for a temperature. */
interface Candidate {
  readonly index: number;
  readonly name: string;
  readonly says: HeaderSays;
}

export interface ValuesFound {
  readonly values: readonly ValueColumn[];
  /** The unit was not stated anywhere. */
  readonly unitAssumed: boolean;
  readonly assumed: readonly AdapterRemark[];
}

export interface ValueContext {
  readonly rows: readonly SampleRow[];
  readonly headers: readonly string[] | null;
  readonly says: readonly HeaderSays[];
  /** Positions that are spoken for: time, station, unit. */
  readonly taken: ReadonlySet<number>;
  readonly asked: Asked;
  readonly known: Known;
  readonly preambleUnit: TemperatureUnit | null;
  readonly preambleMedium: 'water' | 'air' | null;
  readonly hasUnitColumn: boolean;
  readonly hasStationColumn: boolean;
  /** The first reading as it stands in the file, for questions. */
  readonly firstLine: string;
}

const sensorWords =
  /\b(?:int(?:ernal|erne)?|ext(?:ernal|erne)?|probe|sonde|sensor|capteur|channel|canal|ch|surface|bottom|fond|top|haut|bas|no|temp(?:erature)?|t|c|f|k|deg|celsius|\d+)\b/g;
const bareValue =
  /^(value|values|valeur|valeurs|val|reading|readings|lecture|lectures|mesure|measurement|result|resultat|donnee|t|ta|tw|data)$/;

function numbersIn(rows: readonly SampleRow[], column: number): number[] {
  const found: number[] = [];
  for (const { cells, kinds } of rows)
    if (kinds[column] === 'number')
      found.push(Number.parseFloat(cells[column].replace(',', '.').replace(/^[\u2212]/, '-')));
  return found;
}

/** 1, 2, 3, … : a counter of records. */
function isCounter(values: readonly number[]): boolean {
  return values.length > 1 && values.every((v, i) => Number.isInteger(v) && (i === 0 || v > values[i - 1]));
}

function candidatesOf(context: ValueContext): Candidate[] {
  const { rows, headers, says, taken } = context;
  const width = Math.max(headers?.length ?? 0, ...rows.map(({ cells }) => cells.length));
  const found: Candidate[] = [];
  for (let index = 0; index < width; index++) {
    if (taken.has(index)) continue;
    const said = says[index];
    const values = numbersIn(rows, index);
    const written = rows.filter(({ kinds }) => kinds[index] === 'text' || kinds[index] === 'clock');
    if (said !== undefined && said.role !== 'value' && said.role !== 'unknown') continue;
    if (values.length === 0 && (said?.strength ?? 0) < 7) continue;
    if (
      (said === undefined || said.role === 'unknown') &&
      (values.length < written.length || isCounter(values))
    )
      continue;
    found.push({ index, name: columnName(headers, index), says: said ?? unexplained });
  }
  return found;
}

const unexplained: HeaderSays = {
  role: 'unknown',
  quantity: 'temperature',
  medium: null,
  statistic: null,
  unit: null,
  factor: null,
  strength: 0,
};

/** Finds the columns to take, or refuses with the question which one. */
export function findValues(context: ValueContext): ValuesFound {
  const candidates = candidatesOf(context);
  const assumed: AdapterRemark[] = [];
  const others = candidates.filter(({ says }) => says.role === 'value' && says.quantity !== 'temperature');
  const measured = others.flatMap((candidate) => otherQuantity(candidate, assumed));
  const temperatures = temperatureColumns(context, candidates, measured.length > 0, assumed);
  const values = [...asAir(context, temperatures.values, assumed), ...measured];
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
): { values: ValueColumn[]; unitAssumed: boolean } {
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
): { values: ValueColumn[]; unitAssumed: boolean } {
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

/** The column a person named: by header as people write it, by its number, or by a part only one header has. */
function columnAsked(context: ValueContext, asked: string): Candidate {
  const { headers, rows, says } = context;
  const width = Math.max(headers?.length ?? 0, ...rows.map(({ cells }) => cells.length));
  const at = (index: number): Candidate => ({
    index,
    name: columnName(headers, index),
    says: says[index] ?? unexplained,
  });
  const all = Array.from({ length: width }, (_, i) => at(i));
  const number = /^#?(\d+)$/.exec(asked.trim());
  const exact = all.filter(({ name }) => name === asked.trim());
  const same = exact.length === 1 ? exact : all.filter(({ name }) => fold(name) === fold(asked));
  const part = same.length === 1 ? same : all.filter(({ name }) => fold(name).includes(fold(asked)));
  if (part.length === 1) return part[0];
  if (number !== null && Number(number[1]) >= 1 && Number(number[1]) <= width)
    return at(Number(number[1]) - 1);
  const columns = all.map(({ name }) => name);
  throw new DownloadRefused(
    { code: 'unknown-column', with: { asked, headers: columns } },
    { code: 'which-column', with: { columns } },
  );
}

/** Columns each headed by a station's name; null where the headers could as well be sensors of one logger. */
function asStations(
  context: ValueContext,
  candidates: readonly Candidate[],
  assumed: AdapterRemark[],
): { values: ValueColumn[]; unitAssumed: boolean } | null {
  const { headers, asked, known, hasStationColumn } = context;
  if (headers === null || asked.station !== undefined || hasStationColumn || candidates.length === 0)
    return null;
  const names = candidates.map(({ name }) => stationIn(name));
  const rests = names.map((name) => fold(name).replace(sensorWords, '').trim());
  const areKnown = names.every((name) => known.zoneOf(name) !== null);
  if (
    !areKnown &&
    (candidates.length < 2 || new Set(names).size < names.length || rests.some((rest) => rest === ''))
  )
    return null;
  if (candidates.some(({ says }) => says.statistic !== null)) return null;
  const found = withUnits(context, candidates, assumed);
  if (!areKnown) assumed.push({ code: 'columns-taken-for-stations', with: { stations: names } });
  return { ...found, values: found.values.map((value, i) => ({ ...value, station: names[i] })) };
}

/** "Temp. pont bleu (°C)" names the station "pont bleu". */
function stationIn(header: string): string {
  const name = header
    .replace(/[\s,]*[([]?\s*(?:[°º˚]|deg\.?)\s*[CFK]\s*[)\]]?\s*$/i, '')
    .replace(/\s*[([]\s*[CFK]\s*[)\]]\s*$/i, '')
    .replace(/^temp(?:erature|érature|\.)?\s*(?:[-:_]|\bde\b|\bdu\b)?\s+/i, '')
    .trim();
  return name === '' ? header : name;
}

function withUnits(
  context: ValueContext,
  chosen: readonly Candidate[],
  assumed: AdapterRemark[],
): { values: ValueColumn[]; unitAssumed: boolean } {
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
