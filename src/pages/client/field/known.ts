import { eggsBySamples } from '../../../autumn/egg-count.js';
import type { Prepared, PreparedLot } from '../../../field/prepared.js';
import { plainFigure } from './checks.js';
import type { Kept } from './store.js';

/** A phone that never prepared a day knows no names but those typed into it. */
const NOTHING: Prepared = {
  group: '',
  you: '',
  version: 0,
  sites: [],
  boxes: [],
  lots: [],
  loggers: [],
  adults: [],
  crosses: [],
  sheets: [],
  tables: [],
};

/**
 * What can be named now: the day as it was prepared, and what this phone wrote down since, so that nobody has to type
 * what stands on the phone already. A day prepared by an older program lacks what came later.
 * @param preparedAt ISO; what the service had by then is in the day
 * @param kept what the phone keeps, in any order
 */
export function knownNow(prepared: Prepared | null, preparedAt: string, kept: readonly Kept[]): Prepared {
  const day = { ...NOTHING, ...prepared };
  return kept
    .filter(({ state, entered, sent }) => state === 'unsent' || (sent ?? entered) > preparedAt)
    .toSorted((one, other) => (one.entered < other.entered ? -1 : 1))
    .reduce(withEntry, day);
}

function withEntry(day: Prepared, { kind, fields, entered }: Kept): Prepared {
  const text = (name: string) => (typeof fields[name] === 'string' ? fields[name] : '');
  switch (kind) {
    case 'adult':
      return named(day.adults, text('id'))
        ? day
        : { ...day, adults: [...day.adults, { id: text('id'), sex: text('sex') }] };
    case 'cross': {
      const adults = [text('female'), ...listed(text('males'))];
      return { ...day, crosses: [...day.crosses, { id: text('id'), lot: text('lot'), adults }] };
    }
    case 'strip':
      return named(day.lots, text('lot'))
        ? day
        : { ...day, lots: [...day.lots, lotOf(day, fields, entered)] };
    case 'plant':
      return planted(day, text('box'), text('site'), text('lot'), text('part'), Number(text('eggs')) || 0);
    default:
      return day;
  }
}

const named = (things: readonly { readonly id: string }[], id: string) =>
  things.some((one) => one.id.toLowerCase() === id.toLowerCase());

/** Several names as one answer holds them. */
export const listed = (answer: string): string[] =>
  answer
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');

function lotOf(day: Prepared, fields: Kept['fields'], entered: string): PreparedLot {
  const table = day.tables.find(({ id }) => id === fields.table);
  const when = typeof fields.when === 'string' ? Date.parse(fields.when) : Number.NaN;
  return {
    id: String(fields.lot ?? ''),
    unplaced: eggsOf(fields) - (Number(fields.controlEggs) || 0),
    fertilised: Number.isFinite(when) ? when : Date.parse(entered),
    table: table?.id ?? '',
    killsFrom: table?.killsFrom ?? [],
    killsTo: table?.killsTo ?? [],
    coldBelow: table?.coldBelow ?? null,
    temperBeyond: table?.temperBeyond ?? null,
  };
}

function eggsOf({ eggs, samples, total }: Kept['fields']): number {
  const stated = Number(eggs);
  if (typeof eggs === 'string' && Number.isFinite(stated)) return stated;
  return samplesComeTo(Array.isArray(samples) ? samples : [], String(total ?? ''))?.eggs ?? 0;
}

/** Eggs the counted samples come to, with how sure that is; null before there is enough. */
export function samplesComeTo(samples: readonly Readonly<Record<string, string>>[], total: string) {
  const counted = samples
    .map(({ eggs, amount }) => ({
      eggs: Number(eggs || Number.NaN),
      amount: Number(plainFigure(amount ?? '')),
    }))
    .filter(({ eggs, amount }) => eggs > 0 && amount > 0);
  const whole = Number(plainFigure(total));
  return counted.length > 0 && whole > 0 ? eggsBySamples(counted, whole) : null;
}

function planted(
  day: Prepared,
  box: string,
  site: string,
  lot: string,
  part: string,
  eggs: number,
): Prepared {
  const at = day.boxes.find(({ id }) => id.toLowerCase() === box.toLowerCase()) ?? {
    id: box,
    site,
    find: '',
    planted: false,
    eggs: 0,
    parts: [],
    compartments: null,
    latitude: null,
    longitude: null,
  };
  const filled = {
    ...at,
    planted: true,
    eggs: at.eggs + eggs,
    parts: part === '' || at.parts.includes(part) ? at.parts : [...at.parts, part],
  };
  return {
    ...day,
    boxes: [...day.boxes.filter(({ id }) => id !== at.id), filled],
    lots: day.lots.map((one) => (one.id === lot ? { ...one, unplaced: one.unplaced - eggs } : one)),
  };
}

/** Lots that crosses name and nobody has counted yet. */
export const lotsToCome = (day: Prepared): string[] => [
  ...new Set(day.crosses.flatMap(({ lot }) => (lot === '' || named(day.lots, lot) ? [] : [lot]))),
];

/** The adults whose crosses went into a lot. */
export const parentsOf = (day: Prepared, lot: string): string[] => [
  ...new Set(
    day.crosses.flatMap((cross) => (cross.lot.toLowerCase() === lot.toLowerCase() ? cross.adults : [])),
  ),
];
