import type { NewsSource } from '../news.js';
import { type FeedGapNews, type FeedSilentNews, feedGapKind, feedSilentKind } from './feeds.js';
import type { MessageKind } from './kind.js';
import { type LiftingNews, liftingKind, liftingNews } from './lifting.js';
import { type SilenceNews, silenceKind, silenceNews } from './silence.js';
import { type SpellNews, type SpellTeller, spellKind, spellNews } from './spells.js';
import { type StageNews, stageKind, stageNews } from './stages.js';
import { type TestNews, testKind } from './test.js';
import { type WeekNews, weekKind } from './week.js';
import { type WindowNews, windowKind, windowNews } from './windows.js';

/** Everything that a person may be told, as plain values that are kept as JSON. */
export type News =
  | SpellNews
  | WindowNews
  | StageNews
  | LiftingNews
  | SilenceNews
  | FeedSilentNews
  | FeedGapNews
  | WeekNews
  | TestNews;

const kinds: { readonly [Kind in News['kind']]: MessageKind<Extract<News, { kind: Kind }>> } = {
  spell: spellKind,
  'window-moved': windowKind,
  'stage-reached': stageKind,
  'lifting-near': liftingKind,
  'station-silent': silenceKind,
  'feed-silent': feedSilentKind,
  'feed-gap': feedGapKind,
  weekly: weekKind,
  test: testKind,
};

/** How a thing of this kind is told. */
export function kindOf({ kind }: News): MessageKind<News> {
  return kinds[kind];
}

/** What of the settings bears on what is news. */
export interface NewsSettings {
  readonly windowMovedDays: number;
  readonly liftingNearDays: number;
  readonly silentHours: number;
}

/** Everybody who is asked whether there is news, in the order it is told. */
export function newsSources(
  spells: SpellTeller,
  { windowMovedDays, liftingNearDays, silentHours }: NewsSettings,
): readonly NewsSource[] {
  return [
    spellNews(spells),
    windowNews(windowMovedDays),
    stageNews,
    liftingNews(liftingNearDays, windowMovedDays),
    silenceNews(silentHours),
  ];
}
