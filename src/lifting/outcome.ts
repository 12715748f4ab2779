import type { Remark } from '../../adapters/remark.js';
import type { BoxForecast } from '../../forecasting/forecast.js';
import { AT_THE_RIVER, emerged, lotShares, stillInBox } from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import { shareCome } from '../../forecasting/windows/mixture.js';
import type { Group } from '../group/index.js';
import { hatchSeen, LOOKED_AT, leastSeen, openings } from '../group/seen.js';
import type { Season } from '../season/index.js';
import { isoDay, type Language, named, say, stageName } from '../words/index.js';
import { dayOf } from './plan.js';
import type { OutcomeWords } from './words.js';

/** What the forecast, as it stood on a day, said of what was then found. Shares 0 to 1. */
export interface Said {
  readonly asOf: DayNumber;
  readonly share: number;
  readonly from: number;
  readonly to: number;
  readonly verdict: 'outcome-agrees' | 'outcome-early' | 'outcome-late';
}

/** Something found in a box, and what had been said of it before. */
export interface Outcome {
  readonly box: string;
  /** The part of the box that was counted by itself; left out where it was the whole. */
  readonly part?: string;
  readonly day: DayNumber;
  readonly what: 'still' | 'left' | 'hatched' | 'seen';
  readonly stage: string | null;
  /** What was found; the least of it where only bounds are known. */
  readonly share: number | null;
  /** The most it can have been; null where the share itself was found. */
  readonly most: number | null;
  readonly said: readonly Said[];
}

interface Seen extends Omit<Outcome, 'said'> {
  /** Share that the seen one stands for in a draw of a box. */
  readonly inDraw: (box: BoxForecast, k: number) => number | null;
  /** A larger share means eggs that are further on. */
  readonly ahead: boolean;
}

/** Days before what was found at which the forecast is asked again what it said. */
const LEADS = [60, 30, 14, 7];

/**
 * Every box lifted, checked or seen, beside what the forecast said of it 60, 30, 14 and 7 days before, or as it stood on
 * the days of `standing`.
 */
export async function outcomes(
  group: Pick<Group, 'season' | 'forecast' | 'today'>,
  asOf: DayNumber | null = null,
  standing: readonly DayNumber[] | null = null,
): Promise<Outcome[]> {
  const season = await group.season();
  const until = asOf ?? (await group.today());
  const seen = [...stillFound(season), ...hatchFound(season), ...stagesSeen(season)].filter(
    ({ day }) => day <= until,
  );
  const asked = standing ?? seen.flatMap(({ day }) => LEADS.map((lead) => day - lead));
  const days = [...new Set(asked)].sort((a, b) => a - b);
  const said = new Map<Seen, Said[]>(seen.map((one) => [one, []]));
  for (const day of days) {
    const { boxes } = await group.forecast({ box: null, asOf: day });
    for (const one of seen) {
      if (standing === null ? !LEADS.includes(one.day - day) : day >= one.day) continue;
      const box = boxes.find((of) => of.box === one.box);
      const spoken = box === undefined ? null : saidOf(one, box, day);
      if (spoken !== null) said.get(one)?.push(spoken);
    }
  }
  return seen.map((one) => {
    const { inDraw: _, ahead: __, ...found } = one;
    return { ...found, said: said.get(one) ?? [] };
  });
}

function stillFound(season: Season): Seen[] {
  const inDraw = (day: DayNumber) => (box: BoxForecast, k: number) => {
    const lots = lotShares(box);
    return lots === null ? null : stillInBox(lots, k, day + AT_THE_RIVER);
  };
  return openings(season).flatMap(({ box, part, date, alive, empty, lifted }): Seen[] => {
    if (empty === null || alive + empty === 0) return [];
    const day = dayOf(date);
    const what = lifted ? 'left' : 'still';
    const share = alive / (alive + empty);
    return [
      { box, ...ofPart(part), day, what, stage: null, share, most: null, inDraw: inDraw(day), ahead: false },
    ];
  });
}

const ofPart = (part: string | null) => (part === null ? {} : { part });

/** Living eggs told from alevins: what share of the lot had hatched, at least and at most. */
function hatchFound(season: Season): Seen[] {
  return openings(season).flatMap((opened): Seen[] => {
    const seen = hatchSeen(opened, season);
    if (seen === null) return [];
    const { day, of, stage } = seen;
    const [share, most] = [seen.seen / of, seen.upTo / of];
    const inDraw = cameTo(stage, day);
    const { box, part } = opened;
    return [{ box, ...ofPart(part), day, what: 'hatched', stage, share, most, inDraw, ahead: true }];
  });
}

/** In a draw of a box, the share of its eggs that have come to a stage by a day. */
function cameTo(stage: string, day: DayNumber): Seen['inDraw'] {
  return (box, k) => {
    const lots = lotShares(box);
    if (stage === 'emergence') return lots === null ? null : emerged(lots, k, day + AT_THE_RIVER);
    const parts = box.lots.flatMap(({ draws, eggs }) => {
      const drawn = draws?.stages[stage];
      return drawn === undefined ? [] : [eggs * shareCome(drawn, k, day + AT_THE_RIVER)];
    });
    return parts.length === 0 ? null : parts.reduce((a, b) => a + b, 0) / Math.max(1, box.eggs);
  };
}

function stagesSeen(season: Season): Seen[] {
  return season.observed.flatMap(({ box, date, stage, seen, of }): Seen[] => {
    if (box === null) return [];
    const day = dayOf(date);
    const share = seen === null || of === null ? null : seen / of;
    return [{ box, day, what: 'seen', stage, share, most: null, inDraw: cameTo(stage, day), ahead: true }];
  });
}

/** What was found counts as within the interval when it is no further out than a tenth of the draws either side. */
function saidOf(one: Seen, box: BoxForecast, asOf: DayNumber): Said | null {
  const count = box.lots[0]?.draws?.leaves.length ?? 0;
  const draws: number[] = [];
  for (let k = 0; k < count; k++) {
    const share = one.inDraw(box, k);
    if (share !== null) draws.push(share);
  }
  if (draws.length === 0) return null;
  draws.sort((a, b) => a - b);
  const [from, to] = [draws[Math.floor(0.1 * draws.length)], draws[Math.floor(0.9 * draws.length)]];
  const share = draws.reduce((sum, value) => sum + value, 0) / draws.length;
  // A stage noted without a count is a bound: so many had come to it, or more.
  const least = one.share ?? leastSeen(one.stage ?? '') / LOOKED_AT;
  const most = one.most ?? one.share ?? 1;
  const higher = least > to + 0.005;
  const lower = most < from - 0.005;
  const further = one.ahead ? higher : lower;
  const verdict = !higher && !lower ? 'outcome-agrees' : further ? 'outcome-early' : 'outcome-late';
  return { asOf, share, from, to, verdict };
}

/** The remark that says what was found. */
export function outcomeRemark(
  { box: whole, part, day, what, stage, share, most }: Outcome,
  language: Language,
): Remark<OutcomeWords> {
  const box = part === undefined ? whole : `${whole} (${part})`;
  if (what === 'seen')
    return { code: 'outcome-seen', with: { box, day, share, stage: stageName(stage ?? '', language) } };
  if (what === 'hatched')
    return { code: 'outcome-hatched', with: { box, day, least: share ?? 0, most: most ?? 1 } };
  return { code: what === 'still' ? 'outcome-still' : 'outcome-left', with: { box, day, share: share ?? 0 } };
}

export function outcomesAnswer(found: readonly Outcome[], language: Language) {
  return {
    outcomes: found.map((one) => ({
      box: one.box,
      date: isoDay(one.day),
      found: say(language, outcomeRemark(one, language)),
      share: one.share === null ? null : Number(one.share.toFixed(4)),
      most: one.most === null ? null : Number(one.most.toFixed(4)),
      said: one.said.map(({ asOf, share, from, to, verdict }) => ({
        asOf: isoDay(asOf),
        share: Number(share.toFixed(4)),
        interval: [Number(from.toFixed(4)), Number(to.toFixed(4))],
        inWords: named(
          language,
          say(language, { code: 'outcome-said', with: { asOf, share, from, to } }),
          `${say(language, { code: verdict, with: {} })}.`,
        ),
        within: verdict === 'outcome-agrees',
      })),
    })),
  };
}
