import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import { kindOf, type News } from './kinds/index.js';
import type { Urgency } from './kinds/kind.js';

export type { News };

/** How soon a thing is told. */
export function urgencyOf(news: News): Urgency {
  return kindOf(news).urgency?.(news) ?? 'can-wait';
}

/** News with a name that stays the same however often it is worked out. */
export interface KeyedNews {
  readonly key: string;
  readonly news: News;
}

export interface NewsQuestion {
  readonly group: Group;
  /** What the source said last time was told; null the first time: then it takes stock and tells nothing old. */
  readonly mark: string | null;
  readonly asOf: DayNumber;
  readonly at: EpochMillis;
}

export interface NewsSource {
  readonly name: string;
  /** What is new since the mark, and the mark that says so. */
  news(question: NewsQuestion): Promise<{ readonly news: readonly KeyedNews[]; readonly mark: string }>;
}
