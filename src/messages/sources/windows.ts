import { z } from 'zod';
import type { Forecast } from '../../../forecasting/forecast.js';
import type { KeyedNews, NewsSource, WindowMove } from '../news.js';

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
