import { z } from 'zod';
import type { Trouble } from './problem.js';
import { zoneNamed } from './zones.js';

/** A field of the season: takes what a person wrote (or JSON holds) and gives T, or says what is wrong. */
export type Field<T> = z.ZodType<T>;

const blank = (given: unknown): boolean => given === undefined || given === null || given === '';

/** Says in a schema what is wrong, as a code with figures. */
export function refuse(ctx: z.RefinementCtx, trouble: Trouble, path: (string | number)[] = []): void {
  ctx.addIssue({ code: 'custom', params: { trouble }, path });
}

/** A field read from text or a JSON value by `read`, which answers the value or what is wrong with it. */
export function field<T>(out: z.ZodType<T>, read: (given: string) => { value: T } | Trouble): Field<T> {
  return z
    .unknown()
    .transform((given, ctx): unknown => {
      const answer = blank(given)
        ? ({ code: 'season.missing', with: { key: '' } } as const)
        : typeof given === 'object'
          ? ({ code: 'season.not-text-value', with: {} } as const)
          : read(String(given).trim());
      if ('value' in answer) return answer.value;
      refuse(ctx, answer);
      return z.NEVER;
    })
    .pipe(out);
}

/** A field that may be left out: null then. */
export const maybe = <T>(what: Field<T>): Field<T | null> =>
  z.preprocess((given) => (blank(given) ? null : given), what.nullable());

/** A field that may be left out: `value` then. */
export const otherwise = <T>(what: Field<T>, value: NoInfer<T>): Field<T> =>
  z.preprocess((given) => (blank(given) ? value : given), what);

/** A list that may be left out: empty then. */
export const listOf = <T>(what: Field<T>): Field<T[]> =>
  z.preprocess((given) => (blank(given) ? [] : given), z.array(what));

/** A list that may be written as one thing alone: `who: Ada` for `who: [Ada]`. */
export const oneOrMore = <T>(what: Field<T>): Field<T[]> =>
  z.preprocess((given) => (blank(given) ? [] : Array.isArray(given) ? given : [given]), z.array(what));

/** One thing of the season: the keys of `shape` and no others; what is allowed goes into the message. */
export const thing = <Shape extends z.core.$ZodShape>(shape: Shape) =>
  z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? Object.keys(shape).join(', ') : undefined),
  });

/** The longest free text kept, in characters: a page of notes. */
const LONGEST_TEXT = 4000;

/** Anything a terminal, a message or a page could take for a command: control signs and broken characters. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029]/u;

export const text: Field<string> = field(z.string(), (given) => {
  const lines = given.replace(/\r\n?/g, '\n');
  if (lines.length > LONGEST_TEXT) return { code: 'season.text-too-long', with: { most: LONGEST_TEXT } };
  if (UNPRINTABLE.test(lines.replace(/[\n\t]/g, ''))) return { code: 'season.unprintable', with: {} };
  return { value: lines };
});

/**
 * Letters and digits; inside also space . _ - ' # + and brackets, so that a station can be called what its files call
 * it. Nothing that an address, a page or a path could take for something else.
 */
const ID = /^[\p{L}\p{N}](?:(?:[\p{L}\p{M}\p{N}._'’#+()-]| (?! )){0,62}[\p{L}\p{M}\p{N})])?$/u;

/** What a thing is called by in the file and on the command line. */
export const id: Field<string> = field(z.string(), (given) => {
  const name = given.normalize('NFC');
  return ID.test(name) ? { value: name } : { code: 'season.bad-id', with: { given: short(given) } };
});

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;

function readNumber(given: string): { value: number } | Trouble {
  const plain = given.replace('−', '-');
  if (NUMBER.test(plain) && Number.isFinite(Number(plain))) return { value: Number(plain) + 0 };
  if (/^[+-]?\d+,\d+$/.test(plain))
    return { code: 'season.decimal-comma', with: { given: short(given), meant: plain.replace(',', '.') } };
  return { code: 'season.not-a-number', with: { given: short(given) } };
}

/** A number from `least` to `most`, with a decimal point. */
export const figure = (least: number, most: number): Field<number> =>
  field(z.number(), (given) => {
    const answer = readNumber(given);
    if (!('value' in answer)) return answer;
    if (answer.value < least || answer.value > most)
      return { code: 'season.out-of-range', with: { given: short(given), least, most } };
    return answer;
  });

/** 13 000, 13.000, 13,000, 13'000: a person's thousands, which a program would read as 13. */
const GROUPED = /^\d{1,3}(?:[.,'’\s]\d{3})+$/;

/** A whole number from `least` to `most`; thousands set apart are asked about, never read as decimals. */
export const count = (least: number, most: number): Field<number> =>
  field(z.int(), (given) => {
    if (GROUPED.test(given))
      return {
        code: 'season.grouped-number',
        with: { given: short(given), meant: given.replace(/\D/g, '') },
      };
    const answer = readNumber(given);
    if (!('value' in answer)) return answer;
    if (!Number.isInteger(answer.value)) return { code: 'season.not-whole', with: { given: short(given) } };
    if (answer.value < least || answer.value > most)
      return { code: 'season.out-of-range', with: { given: short(given), least, most } };
    return answer;
  });

/** One of a few words. */
export const choice = <const W extends string>(...words: readonly [W, ...W[]]): Field<W> =>
  field(z.enum(words), (given) => {
    const found = words.find((word) => word === given);
    return found === undefined
      ? { code: 'season.not-one-of', with: { given: short(given), choices: words.join(', ') } }
      : { value: found };
  });

const YES = new Set(['true', 'yes', 'oui', 'vrai']);
const NO = new Set(['false', 'no', 'non', 'faux']);

export const yesNo: Field<boolean> = field(z.boolean(), (given) => {
  const word = given.toLowerCase();
  if (YES.has(word)) return { value: true };
  if (NO.has(word)) return { value: false };
  return { code: 'season.not-yes-no', with: { given: short(given) } };
});

/** A zone: an IANA name, `UTC`, or `UTC±HH:MM`. */
export const zoneName: Field<string> = field(z.string(), (given) =>
  zoneNamed(given) === null
    ? { code: 'season.unknown-zone', with: { given: short(given) } }
    : { value: given },
);

/** Degrees north and east. */
export const latitude = figure(-90, 90);
export const longitude = figure(-180, 180);

/** What was given, short enough to stand in a sentence. */
export function short(given: string): string {
  const line = given.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 57)}…` : line;
}
