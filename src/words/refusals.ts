import { DownloadRefused } from '../../adapters/index.js';
import { LayoutRefused } from '../../adapters/layouts-saved.js';
import { TableRefused } from '../../forecasting/table-problem.js';
import { CommandRefused } from '../cli/refused.js';
import { EarlierRefused } from '../earlier/refused.js';
import { EntryWaits, FieldRefused } from '../field/refused.js';
import { RemoteRefused } from '../group/remote-refused.js';
import { UnknownName } from '../group/unknown-name.js';
import { HindcastRefused } from '../hindcast/refused.js';
import { HttpRefused } from '../http/refused.js';
import { LiftingRefused } from '../lifting/refused.js';

import { MessagesRefused } from '../messages/refused.js';
import { QualityRefused } from '../quality/refused.js';

import { ReportRefused } from '../reports/refused.js';

import { SeasonRefused } from '../season/index.js';
import { SettingsRefused } from '../settings/index.js';
import { SpellRefused } from '../spells/refused.js';
import { StoreRefused } from '../store/index.js';
import { type Language, say } from './index.js';

/** Everything the program may refuse, one error type a kind of refusal. */
export type AnyRefusal =
  | DownloadRefused
  | LayoutRefused
  | TableRefused
  | CommandRefused
  | UnknownName
  | RemoteRefused
  | HindcastRefused
  | LiftingRefused
  | MessagesRefused
  | SeasonRefused
  | StoreRefused
  | HttpRefused
  | EarlierRefused
  | EntryWaits
  | FieldRefused
  | QualityRefused
  | ReportRefused
  | SettingsRefused
  | SpellRefused;

const kinds = [
  DownloadRefused,
  LayoutRefused,
  TableRefused,
  CommandRefused,
  UnknownName,
  RemoteRefused,
  HindcastRefused,
  LiftingRefused,
  MessagesRefused,
  SeasonRefused,
  StoreRefused,
  HttpRefused,
  EarlierRefused,
  EntryWaits,
  FieldRefused,
  QualityRefused,
  ReportRefused,
  SettingsRefused,
  SpellRefused,
];

export function isRefusal(error: unknown): error is AnyRefusal {
  return kinds.some((kind) => error instanceof kind);
}

/** What is refused and what would do, for a person; a question of the refusal follows it. */
export function sayRefusal(language: Language, refusal: AnyRefusal): string {
  const question = refusal instanceof DownloadRefused ? refusal.question : null;
  return [say(language, refusal.remark), ...(question === null ? [] : [say(language, question)])].join(' ');
}

/** The same on a page: the fields of the season by the names people give them. */
export function sayRefusalOnPage(language: Language, refusal: AnyRefusal): string {
  if (!(refusal instanceof SeasonRefused)) return sayRefusal(language, refusal);
  return say(language, { code: 'season.refused-on-page', with: refusal.remark.with });
}
