import type { SharedBy } from '../../forecasting/survival/index.js';
import type { Speech } from '../pages/speech.js';
import type { Grouping, Survival } from '../survival/index.js';
import { decimal } from '../words/index.js';

/** So many names stand in a sentence; the rest is a number. */
const MOST_NAMES = 12;

export function someOf(names: readonly string[]): {
  readonly boxes: readonly string[];
  readonly more: number;
} {
  return { boxes: names.slice(0, MOST_NAMES), more: Math.max(0, names.length - MOST_NAMES) };
}

/** What a group is called: a site by its name, everything else by what the group numbers it. */
export function called({ siteNames }: Survival, by: Grouping, name: string): string {
  return by === 'site' ? (siteNames[name] ?? name) : name;
}

/** Of all boxes, how far: the first thing a reader asks. */
export function shortAnswer({ groups }: Survival, { say }: Speech): string {
  const all = groups.find(({ by, measure }) => by === 'all' && measure === 'out')?.found ?? null;
  if (all === null) return say('report-short-none', {});
  if (all.boxes === 1) return say('report-short-one', all);
  return all.few ? say('report-short-few', all) : say('report-short-survival', all);
}

/** What stands beside the answer wherever it is given. */
export function besides({ groups, notCounted }: Survival, { say }: Speech): string[] {
  const all = groups.find(({ by, measure }) => by === 'all' && measure === 'out');
  return [
    say('report-upper', {}),
    ...(all !== undefined && all.gone > 0 && all.withGone !== null
      ? [say('report-gone', { gone: all.gone, share: all.withGone.share })]
      : []),
    ...(notCounted.length > 0 ? [say('report-not-counted', someOf(notCounted))] : []),
    say('report-common', {}),
  ];
}

/** A group's share in a cell: counts and range first where boxes are few. */
export function shareCell(shared: SharedBy | null, { say }: Speech): string {
  if (shared === null) return '–';
  if (!shared.few) return say('report-share-of', shared);
  return `${say('report-range', shared)}; ${say('report-share', shared)}`;
}

/** The first names that fit into so many letters (one at least), and how many are left. */
function namesWithin(names: readonly string[], room: number) {
  let taken = 0;
  const fit = names.slice(0, MOST_NAMES).filter((name, i) => {
    taken += name.length;
    return i === 0 || taken <= room;
  });
  return { names: fit, more: names.length - fit.length };
}

/**
 * What the comparison can tell and what it cannot, in words; no order where intervals overlap. Where there is little room,
 * so many letters of a sentence may be names.
 */
export function comparisonSentences(
  survival: Survival,
  speech: Speech,
  room = Number.POSITIVE_INFINITY,
): string[] {
  const { say } = speech;
  const { groups, compared, siteIsLot, fewBoxes } = survival;
  const of = (by: Grouping) =>
    groups
      .filter((one) => one.by === by && one.measure === 'out' && one.found !== null)
      .map(({ name }) => name);
  const sentences = (['site', 'lot', 'year'] as const).flatMap((by) => {
    const names = of(by);
    if (names.length < 2) return [];
    const pairs = compared.filter((one) => one.by === by);
    const word = say(`report-by-${by}`, {});
    const label = (name: string) => called(survival, by, name);
    if (pairs.length === 0) return [say('report-compare-not-possible', { by: word })];
    const apart = pairs.filter((one) => one.apart);
    const settled = (one: string, other: string) =>
      apart.some(
        ({ higher, lower }) => (higher === one && lower === other) || (higher === other && lower === one),
      );
    const open = names.filter((one) => names.some((other) => other !== one && !settled(one, other)));
    return [
      ...apart.slice(0, MOST_NAMES).map(({ higher, lower, corrected }) =>
        say('report-compare-apart', {
          higher: label(higher),
          lower: label(lower),
          corrected,
          pairs: pairs.length,
        }),
      ),
      ...(open.length > 1
        ? [
            say('report-compare-no-order', {
              by: word,
              ...namesWithin(open.map(label), room),
              others: apart.length > 0,
            }),
          ]
        : []),
    ];
  });
  const few = namesWithin(
    fewBoxes.map((site) => called(survival, 'site', site)),
    room,
  );
  return [
    ...sentences,
    ...(siteIsLot ? [say('report-site-is-lot', {})] : []),
    ...(few.names.length > 0 ? [say('report-few-at-site', { sites: few.names, more: few.more })] : []),
  ];
}

/** All that is said of survival, in the order it is read. */
export function survivalSentences(survival: Survival, speech: Speech): string[] {
  const { say } = speech;
  const groups = survival.groups
    .filter(({ by, measure }) => measure === 'out' && by !== 'all')
    .map(
      ({ by, name, found }) =>
        `${say('report-group', { by, name: called(survival, by, name) })}: ${shareCell(found, speech)}`,
    );
  return [
    shortAnswer(survival, speech),
    ...besides(survival, speech),
    ...groups,
    ...comparisonSentences(survival, speech),
  ];
}

/** A figure measured to a tenth, without the tenth where it is whole. */
export function tenths(value: number | null, { language }: Speech): string {
  return value === null ? '–' : decimal(language, value, Number.isInteger(value) ? 0 : 1);
}
