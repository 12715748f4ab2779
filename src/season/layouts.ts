import { z } from 'zod';
import { settledParts } from '../../adapters/formats/remark.js';
import { checkedLayout, LayoutRefused, type SavedLayout } from '../../adapters/layouts-saved.js';
import { type Field, refuse } from './fields.js';

/** A column by its number, as people and the season file write it; a header may be a bare number. */
const NUMBERED = /^#(\d{1,5})$/;

function columnRead(given: unknown): unknown {
  const number = typeof given === 'string' ? NUMBERED.exec(given.trim())?.[1] : undefined;
  return number === undefined ? given : Number(number);
}

const columnWritten = (column: string | number): string =>
  typeof column === 'number' ? `#${column}` : column;

const COLUMNS = ['temperature', 'level', 'discharge', 'station'] as const;

/** The season file holds texts only: numbers are taken out of them before a layout is checked by its own rules. */
function typed(given: unknown): unknown {
  if (!isObject(given) || !isObject(given.settled)) return given;
  const settled: Record<string, unknown> = { ...given.settled };
  for (const key of COLUMNS) if (key in settled) settled[key] = columnRead(settled[key]);
  if (Array.isArray(settled.time)) settled.time = settled.time.map(columnRead);
  const { headerLine } = settled;
  if (typeof headerLine === 'string' && /^\d{1,6}$/.test(headerLine)) settled.headerLine = Number(headerLine);
  return { ...given, settled };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A layout of downloads that the group keeps, so that next year's files need no questions. */
export const layoutSchema: Field<SavedLayout> = z.unknown().transform((given, ctx): SavedLayout => {
  try {
    return checkedLayout(typed(given));
  } catch (error) {
    if (!(error instanceof LayoutRefused)) throw error;
    refuse(ctx, { code: 'season.bad-layout', with: { problem: error.remark } });
    return z.NEVER;
  }
});

/** A layout in the shape of the season file. */
export function writtenLayout({ name, match, settled }: SavedLayout): Record<string, unknown> {
  const { time, temperature, level, discharge, station, ...rest } = settled;
  const columns = { temperature, level, discharge, station };
  const written = {
    ...rest,
    ...(time === undefined ? {} : { time: time.map(columnWritten) }),
    ...Object.fromEntries(
      Object.entries(columns).flatMap(([key, column]) =>
        column === undefined ? [] : [[key, columnWritten(column)]],
      ),
    ),
  };
  return { name, match, settled: Object.fromEntries(settledParts.flatMap((key) => entryOf(written, key))) };
}

function entryOf(written: Record<string, unknown>, key: string): [string, unknown][] {
  return written[key] === undefined ? [] : [[key, written[key]]];
}
