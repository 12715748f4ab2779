import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type YAMLError } from 'yaml';
import { short } from './fields.js';
import { thingAt } from './lists.js';
import { type SeasonPath, type SeasonProblem, SeasonRefused, type Trouble } from './problem.js';

/** 200 boxes with five years of visits come to a tenth of this. */
const LARGEST = 8_000_000;
/** The season's own lists nest eight deep at most. */
const DEEPEST = 24;

/** A YAML file as plain objects, lists and strings; numbers stay as written, so that 13.000 eggs can be asked about. */
export interface SeasonDocument {
  readonly plain: unknown;
  /** Where a path stands (or, where nothing stands there, what would hold it), and what stood there. */
  at(path: SeasonPath): { line: number; column: number; value: string | null };
}

interface Place {
  readonly offset: number;
  readonly value: string | null;
}

/** Reads YAML text without giving its scalars a type. Throws SeasonRefused with every fault found in the text. */
export function readDocument(text: string, file: string): SeasonDocument {
  if (text.length > LARGEST)
    refuseAll(file, { code: 'season.too-large', with: { bytes: text.length, most: LARGEST } });
  if (text.includes('\u0000')) refuseAll(file, { code: 'season.not-text', with: {} });
  const broken = text.indexOf('\uFFFD');
  if (broken >= 0) refuseAll(file, { code: 'season.not-utf8', with: {} }, lineOf(text, broken));
  const lines = new LineCounter();
  const parsed = parseDocument(text, {
    schema: 'failsafe',
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
  });
  const placed = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  // The library's word for a nesting that no stack holds.
  if (parsed.errors.some(({ code }) => code === 'RESOURCE_EXHAUSTION'))
    refuseAll(file, { code: 'season.too-deep', with: { most: DEEPEST } });
  const faults = parsed.errors.map((error): SeasonProblem => {
    const [from, to] = error.pos;
    return {
      ...troubleOf(error, text),
      ...placed(from),
      path: [],
      of: null,
      value: short(text.slice(from, to)) || null,
    };
  });
  if (faults.length > 0) throw new SeasonRefused(file, faults);
  if (!isMap(parsed.contents)) refuseAll(file, { code: 'season.not-a-season', with: {} });

  const walk = new Walk();
  const plain = walk.plain(parsed.contents, []);
  const wrong = walk.troubles.map(
    ({ trouble, path, offset }): SeasonProblem => ({
      ...trouble,
      ...placed(offset),
      path,
      of: thingAt(plain, path),
      value: null,
    }),
  );
  if (wrong.length > 0) throw new SeasonRefused(file, wrong);
  return {
    plain,
    at(path) {
      const place = walk.places.get(keyOf(path));
      if (place) return { ...placed(place.offset), value: place.value };
      for (let length = path.length - 1; length >= 0; length--) {
        const holder = walk.places.get(keyOf(path.slice(0, length)));
        if (holder) return { ...placed(holder.offset), value: null };
      }
      return { line: 1, column: 1, value: null };
    },
  };
}

const keyOf = (path: SeasonPath): string => JSON.stringify(path);

/** One trouble with the whole file. */
function refuseAll(file: string, trouble: Trouble, line: number | null = null): never {
  throw new SeasonRefused(file, [{ ...trouble, line, column: null, path: [], of: null, value: null }]);
}

const lineOf = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

function troubleOf(error: YAMLError, text: string): Trouble {
  const [from] = error.pos;
  switch (error.code) {
    case 'DUPLICATE_KEY':
      return {
        code: 'season.repeated-key',
        with: { key: short(/^[^:\n]*/.exec(text.slice(from, from + 200))?.[0] ?? '') },
      };
    case 'TAB_AS_INDENT':
      return { code: 'season.tab-indent', with: {} };
    case 'MULTIPLE_DOCS':
      return { code: 'season.several-documents', with: {} };
    case 'BAD_ALIAS':
      return {
        code: 'season.alias-used',
        with: { name: short(text.slice(from, from + 40).split(/\s/)[0] ?? '') },
      };
    default:
      return { code: 'season.not-yaml', with: { reason: error.code } };
  }
}

/** Turns nodes into plain values, noting where each stood. */
class Walk {
  readonly places = new Map<string, Place>();
  readonly troubles: { trouble: Trouble; path: SeasonPath; offset: number }[] = [];

  plain(node: unknown, path: SeasonPath): unknown {
    if (!isNode(node)) return null;
    const offset = node.range?.[0] ?? 0;
    const wrong = this.wrongWith(node, path);
    if (wrong) {
      this.troubles.push({ trouble: wrong, path, offset });
      return null;
    }
    if (isScalar(node)) {
      const value = scalarText(node.value, node.type === 'PLAIN');
      this.places.set(keyOf(path), { offset, value: value === null ? null : short(value) });
      return value;
    }
    this.places.set(keyOf(path), { offset, value: null });
    if (isSeq(node)) return node.items.map((item, i) => this.plain(item, [...path, i]));
    if (!isMap(node)) return null;
    const entries: [string, unknown][] = [];
    for (const { key, value } of node.items) {
      if (!isScalar(key)) {
        this.troubles.push({ trouble: { code: 'season.key-not-text', with: {} }, path, offset });
        continue;
      }
      const name = String(key.value);
      const inside = [...path, name];
      entries.push([name, this.plain(value, inside)]);
      this.places.set(keyOf(inside), {
        offset: key.range?.[0] ?? offset,
        value: this.places.get(keyOf(inside))?.value ?? null,
      });
    }
    return Object.fromEntries(entries);
  }

  private wrongWith(node: Node, path: SeasonPath): Trouble | null {
    if (isAlias(node)) return { code: 'season.alias-used', with: { name: `*${short(node.source)}` } };
    if ('anchor' in node && typeof node.anchor === 'string')
      return { code: 'season.alias-used', with: { name: `&${short(node.anchor)}` } };
    if (node.tag?.startsWith('!') || (node.tag && !/:(str|map|seq)$/.test(node.tag)))
      return { code: 'season.tag-used', with: { tag: short(node.tag) } };
    if (path.length > DEEPEST) return { code: 'season.too-deep', with: { most: DEEPEST } };
    return null;
  }
}

function isNode(value: unknown): value is Node {
  return isScalar(value) || isMap(value) || isSeq(value) || isAlias(value);
}

/** A plain empty value, `~` or `null` means nothing is stated; in quotes they are text. */
function scalarText(value: unknown, plain: boolean): string | null {
  const text = String(value ?? '');
  return plain && /^(?:|~|null)$/i.test(text) ? null : text;
}
