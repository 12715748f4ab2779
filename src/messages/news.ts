import type { SpellChange } from '../../forecasting/spells/history.js';
import type { JudgedSpell } from '../../forecasting/spells/spell.js';
import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';

/** A window that is not where it was: the median, in boxes whose eggs share it. */
export interface WindowMove {
  readonly boxes: readonly string[];
  readonly before: DayNumber;
  readonly after: DayNumber;
}

/** Everything that a person may be told, as plain values that are kept as JSON. */
export type News =
  | { readonly kind: 'spell'; readonly change: SpellChange; readonly spell: JudgedSpell }
  | { readonly kind: 'window-moved'; readonly stage: string; readonly moves: readonly WindowMove[] }
  | {
      readonly kind: 'stage-reached';
      readonly stage: string;
      readonly boxes: readonly string[];
      readonly first: DayNumber;
      readonly last: DayNumber;
    }
  | {
      readonly kind: 'lifting-near';
      readonly day: DayNumber;
      readonly inDays: number;
      readonly boxes: readonly string[];
      readonly chance: number;
      readonly approved: boolean;
    }
  | {
      readonly kind: 'station-silent';
      readonly station: string;
      readonly name: string;
      readonly last: EpochMillis;
      readonly hours: number;
      readonly usualHours: number;
    }
  | {
      readonly kind: 'feed-silent';
      readonly feed: string;
      readonly since: EpochMillis;
      readonly hours: number;
    }
  | {
      readonly kind: 'feed-gap';
      readonly feed: string;
      readonly station: string;
      readonly from: EpochMillis;
      readonly to: EpochMillis;
    }
  | { readonly kind: 'weekly'; readonly day: DayNumber }
  | { readonly kind: 'test' };

export type NewsKind = News['kind'];

/** `now`: also at night. `can-wait`: not in quiet hours. `weekly`: with the weekly summary. */
export type Urgency = 'now' | 'can-wait' | 'weekly';

/**
 * How soon a thing is told. At once, also at night, only what was measured and kills (a spell opens, worsens or is
 * confirmed): what is merely possible, over or withdrawn can wait until morning (ours).
 */
export function urgencyOf(news: News): Urgency {
  if (news.kind === 'test') return 'now';
  if (news.kind !== 'spell') return 'can-wait';
  const { spell, change } = news;
  const lethal = spell.severity === 'lethal';
  const running = change === 'opened' || change === 'worsened' || change === 'confirmed';
  if (lethal && running && spell.certainty === 'measured') return 'now';
  return lethal || spell.kind === 'exposure' ? 'can-wait' : 'weekly';
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
