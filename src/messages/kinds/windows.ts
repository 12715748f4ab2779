import { z } from 'zod';
import type { Forecast } from '../../../forecasting/forecast.js';
import type { DayNumber } from '../../../forecasting/units.js';
import type { KeyedNews, NewsSource } from '../news.js';
import { capital, type MessageKind, type Passage, type Telling } from './kind.js';

/** A window that is not where it was: the median, in boxes whose eggs share it. */
export interface WindowMove {
  readonly boxes: readonly string[];
  readonly before: DayNumber;
  readonly after: DayNumber;
}

export interface WindowNews {
  readonly kind: 'window-moved';
  readonly stage: string;
  readonly moves: readonly WindowMove[];
}

export const windowKind: MessageKind<WindowNews> = {
  subject: 'windows',
  boxes: ({ moves }) => moves.flatMap(({ boxes }) => boxes),
  passage: windowPassage,
};

/** Most boxes that are named one by one where windows moved. */
const MOST_MOVES = 12;

const markSchema = z.record(z.string(), z.number());

/**
 * A window moves: its median is more than so many days from where it was when it was last told (not from yesterday:
 * a day a day for a week is a week). What has passed does not move any more.
 */
export function windowNews(moreThanDays: number): NewsSource {
  return {
    name: 'windows',
    async news({ group, mark, asOf }) {
      const told = mark === null ? null : markSchema.parse(JSON.parse(mark));
      const now = medians(await group.forecast({ box: null, asOf }));
      const kept: Record<string, number> = {};
      const byStage = new Map<string, { box: string; before: number; after: number }[]>();
      for (const { place, stage, box, day, passed } of now) {
        const before = told?.[place];
        kept[place] = before ?? day;
        if (before === undefined || passed || Math.abs(day - before) <= moreThanDays) continue;
        kept[place] = day;
        byStage.set(stage, [...(byStage.get(stage) ?? []), { box, before, after: day }]);
      }
      const news = [...byStage].map(([stage, rows]): KeyedNews => {
        const moves = gathered(rows);
        const key = `window ${stage} ${moves.map(({ boxes, before, after }) => `${boxes[0]}:${before}>${after}`).join(' ')}`;
        return { key, news: { kind: 'window-moved', stage, moves } };
      });
      return { news, mark: JSON.stringify(kept) };
    },
  };
}

/** Every lot in every box with a stage that has a date: the day of its median. */
function medians(forecast: Forecast) {
  return forecast.boxes.flatMap(({ box, lots }) =>
    lots.flatMap(({ lot, windows }) =>
      windows.flatMap(({ stage, median, passed }) =>
        median.p50 === null
          ? []
          : [{ place: `${box}\n${lot}\n${stage}`, stage, box, day: Math.floor(median.p50), passed }],
      ),
    ),
  );
}

/** Boxes that moved alike stand together, the furthest first. */
function gathered(rows: readonly { box: string; before: number; after: number }[]): WindowMove[] {
  const alike = new Map<string, { boxes: string[]; before: number; after: number }>();
  for (const { box, before, after } of rows) {
    const key = `${before} ${after}`;
    const move = alike.get(key) ?? { boxes: [], before, after };
    if (!move.boxes.includes(box)) move.boxes.push(box);
    alike.set(key, move);
  }
  return [...alike.values()].sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before));
}

function windowPassage({ stage: moved, moves }: WindowNews, { speech: { say, stage } }: Telling): Passage {
  const furthest = Math.max(...moves.map(({ before, after }) => Math.abs(after - before)));
  const later =
    (moves.find(({ before, after }) => Math.abs(after - before) === furthest)?.after ?? 0) >
    (moves.find(({ before, after }) => Math.abs(after - before) === furthest)?.before ?? 0);
  const boxes = new Set(moves.flatMap((move) => move.boxes)).size;
  return {
    head: say('letter-window-head', { stage: stage(moved), days: furthest, later, boxes }),
    says: [
      ...moves.slice(0, MOST_MOVES).map((move) => capital(say('letter-window-row', move))),
      ...(moves.length > MOST_MOVES ? [say('letter-further', { things: moves.length - MOST_MOVES })] : []),
    ],
    figures: [],
    means: say('letter-window-means', {}),
    might: say('letter-window-might', {}),
  };
}
