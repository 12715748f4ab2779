import { z } from 'zod';
import type { DayNumber } from '../../../forecasting/units.js';
import { liftingState } from '../../lifting/index.js';
import type { NewsSource } from '../news.js';
import type { MessageKind } from './kind.js';

export interface LiftingNews {
  readonly kind: 'lifting-near';
  readonly day: DayNumber;
  readonly inDays: number;
  readonly boxes: readonly string[];
  readonly chance: number;
  readonly approved: boolean;
}

export const liftingKind: MessageKind<LiftingNews> = {
  subject: 'lifting',
  boxes: ({ boxes }) => boxes,
  passage: (news, { speech: { say } }) => ({
    head: say('letter-lifting-head', news),
    says: [say('letter-lifting-chance', { chance: news.chance, boxes: news.boxes.length })],
    figures: [],
    means: say('letter-lifting-means', news),
    might: say('letter-lifting-might', {}),
  }),
};

const markSchema = z.object({ day: z.number().nullable() });

/** The first lifting day of the plan is near; told again where it has moved by more than so many days since. */
export function liftingNews(nearDays: number, movedDays: number): NewsSource {
  return {
    name: 'lifting',
    async news({ group, mark, asOf }) {
      const told = mark === null ? null : markSchema.parse(JSON.parse(mark)).day;
      const { plan, approved } = await liftingState(group, asOf);
      const [first] = plan.recommended;
      const near = first !== undefined && first.day - asOf <= nearDays;
      if (!near || (told !== null && Math.abs(first.day - told) <= movedDays))
        return { news: [], mark: JSON.stringify({ day: told }) };
      const boxes = plan.recommended.flatMap((day) => day.boxes);
      const { day } = first;
      return {
        news: [
          {
            key: `lifting ${day} ${boxes.length}`,
            news: {
              kind: 'lifting-near',
              day,
              inDays: Math.max(0, day - asOf),
              boxes,
              chance: plan.chance,
              approved: approved !== null,
            },
          },
        ],
        mark: JSON.stringify({ day }),
      };
    },
  };
}
