import { deadKinds, type SeasonProblem } from '../../season/index.js';
import type { AllWords } from '../../words/index.js';
import type { AnyRefusal } from '../../words/refusals.js';
import { type FormField, type Wrong, wrongsIn } from '../parts/refused-form.js';
import type { View } from '../view.js';

type TallyForm = 'tally' | 'put-back';

/** Which of the two forms of a box was refused, and why. */
export interface Refused {
  readonly refusal: AnyRefusal;
  readonly form: TallyForm;
}

export interface WrongTally {
  readonly form: TallyForm;
  readonly not: string;
  readonly wrongs: readonly Wrong[];
}

type Label =
  | Extract<keyof AllWords, `page-tally-${string}` | `page-put-back-${string}`>
  | 'page-day'
  | 'page-note';

/** What the forms' fields are called on the page. */
const LABELS: Readonly<Record<string, Label>> = {
  when: 'page-day',
  lifted: 'page-day',
  empty: 'page-tally-empty',
  dead: 'page-tally-dead',
  alive: 'page-tally-alive',
  aliveEggs: 'page-tally-alive-eggs',
  counter: 'page-tally-counter',
  found: 'page-tally-found',
  foundAt: 'page-tally-found-at',
  part: 'page-tally-part',
  siltMm: 'page-tally-silt',
  damage: 'page-tally-damage',
  countStands: 'page-tally-stands',
  note: 'page-note',
  kinds: 'page-tally-kinds',
  ...Object.fromEntries(deadKinds.map((kind) => [kind, `page-tally-kind-${kind}` as const])),
};

/** What the form says of a count that was refused, each reason at its field. */
export function wrongsOf(view: View, box: string, { refusal, form }: Refused): WrongTally {
  const kind = form === 'tally' ? ('tally' as const) : ('putBack' as const);
  return {
    form,
    not: `${view.say('season.not-taken', { kind, box })}.`,
    wrongs: wrongsIn(view, refusal, (problem) => fieldOf(view, box, problem)),
  };
}

function fieldOf(view: View, box: string, { path, of }: SeasonProblem): FormField | null {
  const [list] = path;
  const ofBox = list === 'boxes' && of?.id === box && path[2] === 'lifted';
  if (!ofBox && list !== 'tallies' && list !== 'checkedAndPutBack') return null;
  const key = path.slice(2).findLast((step) => typeof step === 'string') ?? '';
  const word = LABELS[key];
  return word === undefined ? null : { at: key === 'lifted' ? 'when' : key, label: view.say(word, {}) };
}
