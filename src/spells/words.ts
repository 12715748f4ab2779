import type {
  Certainty,
  ExposureSign,
  Severity,
  SpellKind,
  SpellState,
} from '../../forecasting/spells/spell.js';
import type { SpellRefusedWords } from './refused.js';

type Nothing = Record<never, never>;

/** One spell in sentences: the same on the page, in the terminal and in a message. Instants come as text. */
export interface SpellSentenceWords {
  'spell-title': {
    readonly kind: SpellKind;
    readonly certainty: Certainty;
    readonly sign: ExposureSign | null;
  };
  'spell-state': { readonly state: SpellState };
  'spell-severity': { readonly severity: Severity; readonly kind: SpellKind };
  'spell-certainty': {
    readonly certainty: Certainty;
    readonly origin: 'measured' | 'filled' | 'projected' | 'none';
    readonly station: string;
  };
  /** Of filled and projected water. */
  'spell-by-days': Record<string, never>;
  'spell-beyond': {
    readonly kind: 'too-warm' | 'too-cold' | 'freezing';
    readonly peak: number;
    readonly hours: number;
    readonly degreeHours: number;
    readonly limit: number;
  };
  'spell-changed': { readonly by: number };
  'spell-exposed': { readonly sign: ExposureSign; readonly hours: number; readonly box: string };
  'spell-gauge': { readonly kind: 'freshet' | 'break-up' | 'low-water'; readonly hours: number };
  'spell-chance': { readonly chance: number };
  'spell-limit': {
    readonly value: number;
    readonly unit: 'celsius' | 'celsius-per-hour' | 'metres' | 'times-usual' | 'hours';
    readonly hours: number;
    readonly kind: SpellKind;
  };
  'spell-stages': { readonly stages: readonly { readonly stage: string; readonly chance: number }[] };
  'spell-stage-not-known': Nothing;
  'spell-eggs': { readonly eggs: number; readonly boxes: readonly string[] };
  'spell-mortality': { readonly from: number; readonly to: number; readonly conditions: string };
  'spell-constant': Nothing;
  'spell-no-mortality-gauge': Nothing;
  'spell-not-excluded': Nothing;
  'spell-do-exposure': { readonly boxes: readonly string[] };
  'spell-do-warm': { readonly boxes: number };
  'spell-do-freezing': { readonly boxes: number };
  'spell-do-possible': Nothing;
  'spell-source': { readonly cite: string; readonly mark: string | null };
}

export interface SpellFaceWords {
  'cli-spells': Nothing;
  'cli-spells-box': Nothing;
  'cli-spells-since': Nothing;
  'cli-spells-none': Nothing;
  'page-nav-spells': Nothing;
  'page-spells-title': Nothing;
  'page-spells-answer': { readonly open: number; readonly lethal: number; readonly kept: number };
  'page-spells-open': Nothing;
  'page-spells-history': Nothing;
  'page-spells-none-open': Nothing;
  'page-spells-none': Nothing;
  'page-spells-plateau': Nothing;
  'page-spells-unmeasured': Nothing;
  'page-spells-timeline': Nothing;
  'page-spells-timeline-touched': Nothing;
  'page-spells-timeline-others': { readonly boxes: number };
  'page-spells-timeline-key': Nothing;
  'page-spells-box': Nothing;
  'page-spells-what': Nothing;
  'page-spells-from': Nothing;
  'page-spells-to': Nothing;
  'page-spells-state': Nothing;
  'page-spells-class': Nothing;
  'page-spells-sources': Nothing;
  'page-spells-note': Nothing;
  'page-spells-acknowledge': Nothing;
  'page-spells-acknowledged': { readonly by: string; readonly at: string; readonly note: string };
  'page-spells-settle': Nothing;
  'page-spells-settle-keep': Nothing;
  'page-spells-happened': Nothing;
  'page-spells-did-not': Nothing;
  'page-spells-settled': {
    readonly how: 'happened' | 'did-not-happen';
    readonly by: string;
    readonly at: string;
    readonly note: string;
  };
  'page-spells-of-box': Nothing;
  'page-spells-all': Nothing;
  'page-spells-mark': { readonly title: string; readonly from: string; readonly to: string };
  'page-spells-season': { readonly open: number; readonly lethal: number };
  'page-spells-key': Nothing;
  'page-help-spell': Nothing;
  'page-help-spell-text': Nothing;
}

export interface SpellsWords extends SpellSentenceWords, SpellFaceWords, SpellRefusedWords {}
