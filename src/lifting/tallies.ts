import type { Remark } from '../../adapters/remark.js';
import { plantedIn, type Season, type Tally } from '../season/index.js';
import { type Language, say, words } from '../words/index.js';
import type { TallyWords } from './words.js';

type TallyRemark = Remark<TallyWords>;

export interface TallyRow {
  readonly tally: Tally;
  /** Eggs planted in the box, or in the part that was counted. */
  readonly planted: number;
  readonly counted: number | null;
  readonly remarks: readonly TallyRemark[];
}

/** Every tally, with what its sum says and how far two counts of the same box lie apart. */
export function tallyRows(season: Season, language: Language): TallyRow[] {
  return season.tallies.map((tally) => {
    const box = season.boxes.find(({ id }) => id === tally.box);
    const planted = box === undefined ? 0 : plantedIn(box, tally.part);
    const counted = countedIn(tally);
    return { tally, planted, counted, remarks: remarks(season, tally, planted, counted, language) };
  });
}

/** Null where one of the three numbers was not written down. */
function countedIn({ empty, dead, alive }: Tally): number | null {
  return empty === null || dead === null || alive === null ? null : empty + dead + alive;
}

function remarks(
  season: Season,
  tally: Tally,
  planted: number,
  counted: number | null,
  language: Language,
): TallyRemark[] {
  if (tally.found === 'not-found' || tally.found === 'carried-away')
    return [{ code: 'tally-gone', with: { found: words(language, `tally-found-${tally.found}`, {}) } }];
  const said: TallyRemark[] = [];
  if (tally.found === 'found-elsewhere')
    said.push({ code: 'tally-found-elsewhere', with: { where: tally.foundAt ?? '-' } });
  if (counted === null) said.push({ code: 'tally-partial', with: {} });
  else if (counted === planted) said.push({ code: 'tally-agrees', with: { counted } });
  else if (counted < planted) said.push({ code: 'tally-short', with: { counted, planted } });
  else said.push({ code: 'tally-over', with: { counted, planted } });
  const error = countingError(season, tally);
  if (error !== null) said.push({ code: 'tally-two-counts', with: error });
  return said;
}

/** Two people's counts of one box or part: the largest difference in any of the three numbers. */
function countingError(
  { tallies }: Season,
  tally: Tally,
): { readonly counters: string[]; readonly difference: number } | null {
  const same = tallies.filter(({ box, part }) => box === tally.box && part === tally.part);
  if (same.length < 2) return null;
  const apart = (['empty', 'dead', 'alive'] as const).map((key) => {
    const numbers = same.flatMap((one) => one[key] ?? []);
    return numbers.length < 2 ? 0 : Math.max(...numbers) - Math.min(...numbers);
  });
  return { counters: same.map(({ counter }, i) => counter ?? `${i + 1}`), difference: Math.max(...apart) };
}

/** The tallies as other programs get them. */
export function talliesAnswer(season: Season, language: Language) {
  return {
    tallies: tallyRows(season, language).map(({ tally, planted, counted, remarks: said }) => ({
      entry: tally.entry,
      box: tally.box,
      part: tally.part,
      date: tally.when.date,
      counter: tally.counter,
      found: tally.found,
      empty: tally.empty,
      dead: tally.dead,
      alive: tally.alive,
      aliveEggs: tally.aliveEggs,
      kinds: tally.kinds,
      siltMm: tally.siltMm,
      damage: tally.damage,
      planted,
      counted,
      difference: counted === null ? null : counted - planted,
      remarks: said.map((remark) => say(language, remark)),
      note: tally.note,
    })),
    checkedAndPutBack: season.checkedAndPutBack.map(
      ({ entry, box, when, who, alive, aliveEggs, empty, dead, note }) => ({
        entry,
        box,
        date: when.date,
        who,
        alive,
        aliveEggs,
        empty,
        dead,
        note,
      }),
    ),
    caution: words(language, 'tally-empty-left-or-gone', {}),
  };
}

export type TalliesAnswer = ReturnType<typeof talliesAnswer>;
