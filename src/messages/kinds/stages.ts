import { z } from 'zod';
import type { DayNumber } from '../../../forecasting/units.js';
import type { KeyedNews, NewsSource } from '../news.js';
import { capital, type MessageKind } from './kind.js';

export interface StageNews {
  readonly kind: 'stage-reached';
  readonly stage: string;
  readonly boxes: readonly string[];
  readonly first: DayNumber;
  readonly last: DayNumber;
}

export const stageKind: MessageKind<StageNews> = {
  subject: 'stages',
  boxes: ({ boxes }) => boxes,
  passage(news, { speech: { say, stage } }) {
    const name = stage(news.stage);
    return {
      head: capital(say('letter-stage-head', { stage: name, boxes: news.boxes })),
      says: [say('letter-stage-when', news)],
      figures: [],
      means: say('letter-stage-means', { stage: name }),
      might: say('letter-stage-might', { stage: name }),
    };
  },
};

const markSchema = z.array(z.string());

/** A stage is probably reached: the median egg of a lot in a box has passed it. Told once, all boxes together. */
export const stageNews: NewsSource = {
  name: 'stages',
  async news({ group, mark, asOf }) {
    const told = mark === null ? null : new Set(markSchema.parse(JSON.parse(mark)));
    const { boxes } = await group.forecast({ box: null, asOf });
    const passed = boxes.flatMap(({ box, lots }) =>
      lots.flatMap(({ lot, windows }) =>
        windows.flatMap(({ stage, passed, median }) =>
          passed
            ? [{ place: `${box}\n${lot}\n${stage}`, box, stage, day: Math.floor(median.p50 ?? asOf) }]
            : [],
        ),
      ),
    );
    const fresh = told === null ? [] : passed.filter(({ place }) => !told.has(place));
    const stages = [...new Set(fresh.map(({ stage }) => stage))];
    const news = stages.map((stage): KeyedNews => {
      const rows = fresh.filter((row) => row.stage === stage);
      const boxes = [...new Set(rows.map(({ box }) => box))];
      const days = rows.map(({ day }) => day);
      return {
        key: `stage ${stage} ${rows.map(({ place }) => place.replaceAll('\n', '/')).join(' ')}`,
        news: { kind: 'stage-reached', stage, boxes, first: Math.min(...days), last: Math.max(...days) },
      };
    });
    // What was told stays told, though a later download should take it back for a while.
    const kept = new Set([...(told ?? []), ...passed.map(({ place }) => place)]);
    return { news, mark: JSON.stringify([...kept]) };
  },
};
