import type { DayNumber } from '../../../forecasting/units.js';
import type { MessageKind } from './kind.js';

/** The weekly summary; a person chooses it by its day. */
export interface WeekNews {
  readonly kind: 'weekly';
  readonly day: DayNumber;
}

export const weekKind: MessageKind<WeekNews> = {
  subject: null,
  passage: ({ day }, { speech: { say }, weekly }) => ({
    head: say('letter-weekly-head', { day }),
    says: weekly,
    figures: [],
    means: say('letter-weekly-means', {}),
    might: say('letter-weekly-might', {}),
  }),
};
