import { EntryWaits } from '../../field/refused.js';
import { type SeasonProblem, SeasonRefused } from '../../season/index.js';
import { askedAt, askedFor } from '../../words/asked.js';
import type { AnyRefusal } from '../../words/refusals.js';
import type { Form, Question } from '../client/field/forms.js';
import { type FormField, type Wrong, wrongsIn } from '../parts/refused-form.js';
import type { View } from '../view.js';
import { labelOf } from './answers.js';

/** Answers that a refusal is about, where it is of the entry and not of one value of the season. */
const ABOUT: Readonly<Record<string, string>> = {
  'field-future': 'when',
  'field-box-elsewhere': 'box',
  'field-already-planted': 'box',
  'field-box-unknown': 'box',
  'field-already-there': 'id',
  'field-not-lying': 'loggers',
  'field-no-station': 'loggers',
};

/** What is wrong with an entry typed at a desk, each reason at its question. */
export function wrongsOfEntry(view: View, form: Form, refusal: AnyRefusal): readonly Wrong[] {
  const questions = form.screens.flat();
  if (refusal instanceof SeasonRefused)
    return wrongsIn(view, refusal, (problem) => fieldOf(view, questions, problem));
  const [wrong] = wrongsIn(view, refusal, () => null);
  if (wrong === undefined || !(refusal instanceof EntryWaits)) return wrong === undefined ? [] : [wrong];
  const { code, with: figures } = refusal.remark;
  const name = 'field' in figures ? figures.field : ABOUT[code];
  const question = questions.find((one) => one.name === name);
  return [question === undefined ? wrong : { ...wrong, at: question.name, label: labelOf(view, question) }];
}

/** The question that a problem's value answered; a sentence that names the value itself has no label of its own. */
function fieldOf(view: View, questions: readonly Question[], problem: SeasonProblem): FormField {
  const asked = askedAt(problem);
  const question =
    questions.find(({ name, word }) => name === asked || word === asked) ?? rowsOf(questions, problem);
  const named = askedFor(problem) ?? (problem.code === 'season.missing' ? asked : null);
  const label =
    named === null ? (question === undefined ? '' : labelOf(view, question)) : view.say(`face-${named}`, {});
  return { at: question?.name ?? '', label };
}

/** A value in a row of loggers or samples: the rows. */
function rowsOf(questions: readonly Question[], { path }: SeasonProblem): Question | undefined {
  return questions.find(({ name, as }) => (as === 'loggers' || as === 'samples') && path.includes(name));
}
