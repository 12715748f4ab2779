import type { z } from 'zod';
import { checkSeason } from './checks/index.js';
import { readDocument, type SeasonDocument } from './document.js';
import { short } from './fields.js';
import { thingAt } from './lists.js';
import { type SeasonPath, type SeasonProblem, SeasonRefused, type Trouble } from './problem.js';
import { type Season, seasonSchema } from './season.js';
import { withUsual } from './usual.js';
import { zoneNamed } from './zones.js';

/**
 * The season a YAML text states. `file` is its name, for messages only. Throws SeasonRefused (exit 2) with every
 * problem found: line, column, path, what stood there.
 */
export function readSeason(text: string, file: string): Season {
  const document = readDocument(text.replace(/^\uFEFF/, ''), file);
  return seasonOf(document, file);
}

/** The season a plain value in the file's shape states, as JSON from a form or another program. Throws SeasonRefused. */
export function seasonFrom(plain: unknown, name: string): Season {
  return seasonOf({ plain, at: () => ({ line: null, column: null, value: null }) }, name);
}

interface Placed {
  readonly plain: unknown;
  at(path: SeasonPath): { line: number | null; column: number | null; value: string | null };
}

function seasonOf(document: SeasonDocument | Placed, file: string): Season {
  const read = seasonSchema(zoneOf(document.plain)).safeParse(document.plain);
  const place = ({ path, trouble }: Found): SeasonProblem => ({
    ...trouble,
    ...document.at(path),
    path,
    of: thingAt(document.plain, path),
  });
  if (!read.success) {
    const found = read.error.issues.flatMap((issue) => foundIn(issue, document.plain));
    throw new SeasonRefused(file, found.map(place));
  }
  const season = withUsual(read.data);
  const found = checkSeason(season);
  if (found.length > 0) throw new SeasonRefused(file, found.map(place));
  return season;
}

interface Found {
  readonly path: SeasonPath;
  readonly trouble: Trouble;
}

/** The group's zone, before anything is checked: moments are read in it. UTC where it is missing or unknown. */
function zoneOf(plain: unknown): string {
  const zone = valueAt(plain, ['group', 'zone']);
  return typeof zone === 'string' && zoneNamed(zone.trim()) !== null ? zone.trim() : 'UTC';
}

function valueAt(plain: unknown, path: SeasonPath): unknown {
  let value: unknown = plain;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.getOwnPropertyDescriptor(value, step)?.value;
  }
  return value;
}

/** A zod issue as what is wrong, in our own codes. */
function foundIn(issue: z.core.$ZodIssue, plain: unknown): Found[] {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  if (issue.code === 'custom' && isTrouble(issue.params?.trouble)) {
    const trouble = issue.params.trouble;
    return [{ path, trouble: trouble.code === 'season.missing' ? missing(path) : trouble }];
  }
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      path: [...path, key],
      trouble: { code: 'season.unknown-key', with: { key: short(key), known: issue.message } },
    }));
  const given = valueAt(plain, path);
  if (given === undefined || given === null) return [{ path, trouble: missing(path) }];
  if (issue.code === 'invalid_union')
    return [
      {
        path,
        trouble: { code: 'season.not-one-of', with: { given: short(String(given)), choices: LAW_FORMS } },
      },
    ];
  if (issue.code === 'invalid_type' && issue.expected === 'array')
    return [{ path, trouble: { code: 'season.not-a-list', with: {} } }];
  return [{ path, trouble: { code: 'season.not-a-map', with: {} } }];
}

/** The only choice by form in the file: how a table's law is written. */
const LAW_FORMS = 'thermal-units, power, log-quadratic, days-at';

const missing = (path: SeasonPath): Trouble => ({
  code: 'season.missing',
  with: { key: String(path.at(-1) ?? '') },
});

/** Params of a custom issue come only from `refuse`. */
function isTrouble(value: unknown): value is Trouble {
  return typeof value === 'object' && value !== null && 'code' in value && 'with' in value;
}
