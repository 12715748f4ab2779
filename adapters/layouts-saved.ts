import { IANAZone } from 'luxon';
import { z } from 'zod';
import type { Asked, DownloadReport } from './download.js';
import { type LayoutRemark, type LayoutRule, layoutRules as rules } from './formats/remark.js';
import type { SavedLayout } from './layout-for.js';

export { type LayoutMark, layoutFor, type SavedLayout } from './layout-for.js';

/** A saved layout that cannot be used; `remark` names the path, the value and what would do. */
export class LayoutRefused extends Error {
  readonly exit = 2;
  constructor(readonly remark: LayoutRemark) {
    super(remark.code);
    this.name = 'LayoutRefused';
  }
}

const label = z.string().trim().min(1).max(200);
const columnName = z.union([label, z.int().min(1).max(10_000)]);

/** `UTC`, `UTC±HH:MM` or an IANA name. */
function isZone(zone: string): boolean {
  const offset = /^UTC[+-](\d\d):(\d\d)$/.exec(zone);
  if (offset !== null) return Number(offset[1]) * 60 + Number(offset[2]) <= 14 * 60 && Number(offset[2]) < 60;
  return zone === 'UTC' || IANAZone.isValidZone(zone);
}

const settled = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'cp850']).optional(),
  delimiter: z.enum([',', ';', '\t', '|']).optional(),
  decimal: z.enum(['.', ',']).optional(),
  headerLine: z.int().min(0).max(10_000).optional(),
  dateOrder: z.enum(['ymd', 'dmy', 'mdy']).optional(),
  time: z.array(columnName).min(1).max(2).optional(),
  temperature: columnName.optional(),
  level: columnName.optional(),
  discharge: columnName.optional(),
  station: columnName.optional(),
  unit: z.enum(['C', 'F', 'K']).optional(),
  zone: label.refine(isZone, { params: { rule: 'zone' } }).optional(),
  missing: z.array(z.string().max(40)).max(50).optional(),
});

const schema: z.ZodType<SavedLayout> = z.strictObject({
  name: label,
  match: z.union([
    z.strictObject({ header: z.array(label).min(1).max(200) }),
    z.strictObject({ opening: label }),
    z.strictObject({ fileName: label }),
  ]),
  settled,
});

/** Where a part of a saved layout is wrong, which of the rules in src/words says what would do there. */
function wouldDo(path: readonly PropertyKey[]): LayoutRule {
  const part = path[0] === 'settled' ? path[1] : path[0];
  return rules.find((rule) => rule === part) ?? 'layout';
}

const pathText = (path: readonly PropertyKey[]): string => path.map(String).join('.');

function valueAt(whole: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) => (typeof inner === 'object' && inner !== null ? Reflect.get(inner, key) : undefined),
    whole,
  );
}

const shown = (value: unknown): string => (JSON.stringify(value) ?? 'undefined').slice(0, 80);

function refusalOf(issue: z.core.$ZodIssue, whole: unknown): LayoutRefused {
  const { path } = issue;
  if (issue.code === 'unrecognized_keys') {
    const known = path[0] === 'settled' ? Object.keys(settled.shape) : ['name', 'match', 'settled'];
    return new LayoutRefused({
      code: 'layout.unknown-part',
      with: { path: pathText([...path, issue.keys[0] ?? '']), known },
    });
  }
  const given = valueAt(whole, path);
  const where = { path: pathText(path), rule: wouldDo(path) };
  if (given === undefined) return new LayoutRefused({ code: 'layout.missing-part', with: where });
  return new LayoutRefused({ code: 'layout.wrong-part', with: { ...where, given: shown(given) } });
}

/** A column can be one thing only. */
function refuseTwice({ settled: parts }: SavedLayout): void {
  const seen = new Set<string | number>();
  const { time = [], temperature, level, discharge, station } = parts;
  for (const column of [...time, temperature, level, discharge, station]) {
    if (column === undefined) continue;
    if (seen.has(column))
      throw new LayoutRefused({ code: 'layout.column-twice', with: { column: String(column) } });
    seen.add(column);
  }
}

/**
 * Reads a saved layout.
 *
 * @param text JSON as `writeLayout` wrote it, or as a person edited it
 * @throws LayoutRefused with the path, the value and what would do
 */
export function readLayout(text: string): SavedLayout {
  let whole: unknown;
  try {
    whole = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw new LayoutRefused({ code: 'layout.not-json', with: {} });
  }
  return checkedLayout(whole);
}

/**
 * The layout that a plain value states, as a season file or a form holds it.
 *
 * @throws LayoutRefused with the path, the value and what would do
 */
export function checkedLayout(whole: unknown): SavedLayout {
  const checked = schema.safeParse(whole);
  if (!checked.success) throw refusalOf(checked.error.issues[0]!, whole);
  refuseTwice(checked.data);
  return checked.data;
}

/** A saved layout as JSON; what `readLayout` takes. */
export const writeLayout = (layout: SavedLayout): string => `${JSON.stringify(layout, null, 2)}\n`;

/** `#3` is the third column of a file without headers. */
const columnOf = (understood: string): string | number =>
  /^#\d+$/.test(understood) ? Number(understood.slice(1)) : understood;

/** The part of a file's name that stays when dates and numbers in it change. */
const lastingName = (fileName: string): string => /^\D{3,}/.exec(fileName)?.[0] ?? fileName;

/**
 * Makes a saved layout of a download that was understood, so that next year's need no questions. What the file
 * states itself (unit, zone, which column is a temperature) is left for next year's file to state again; what a
 * person answered is kept, and where columns stand in a file without headers.
 *
 * @returns null for an exchange format, which explains itself
 */
export function layoutFrom(
  name: string,
  report: Pick<DownloadReport, 'understood'>,
  answered: Pick<Asked, 'zone' | 'unit' | 'column'>,
  fileName: string,
): SavedLayout | null {
  const { delimiter, decimal, dateOrder, timeColumns, valueColumn } = report.understood;
  if (delimiter === null) return null;
  const columns = valueColumn === null ? timeColumns : [...timeColumns, valueColumn];
  const header = columns.filter((column) => typeof columnOf(column) === 'string');
  const fixedColumn = valueColumn !== null && (header.length === 0 || answered.column !== undefined);
  return {
    name,
    match: header.length > 0 ? { header } : { fileName: lastingName(fileName) },
    settled: {
      delimiter,
      decimal,
      time: timeColumns.map(columnOf),
      ...(dateOrder === null ? {} : { dateOrder }),
      ...(fixedColumn ? { temperature: columnOf(valueColumn) } : {}),
      ...(answered.unit === undefined ? {} : { unit: answered.unit }),
      ...(answered.zone === undefined ? {} : { zone: answered.zone }),
    },
  };
}
