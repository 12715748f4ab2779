import { type SeasonProblem, SeasonRefused } from '../../season/index.js';
import { say as sayIn } from '../../words/index.js';
import type { AnyRefusal } from '../../words/refusals.js';
import { type Wrong, wrongsIn } from '../parts/refused-form.js';
import type { View } from '../view.js';

/** Where the text of the season file stands in its form. */
export const FILE_TEXT = 'text';

/** What is wrong with a season file: its line, the thing and field in words, and the keys that are typed in it. */
export function wrongsInFile(view: View, refusal: AnyRefusal): readonly Wrong[] {
  if (!(refusal instanceof SeasonRefused)) return wrongsIn(view, refusal, () => null);
  const { problems } = refusal.remark.with;
  const field = (problem: SeasonProblem) => ({ at: FILE_TEXT, label: lineOf(view, problem) });
  return wrongsIn(view, refusal, field).map((wrong, i) => {
    const problem = problems[i];
    if (problem === undefined || wrong.at === null) return wrong;
    const place = view.say('season.place', { problem });
    const sentence = sayIn(view.language, problem);
    const named = place === '' ? sentence : view.named(`${place} (${keysOf(problem)})`, sentence);
    return { ...wrong, sentence: named };
  });
}

function lineOf(view: View, { line, column, path }: SeasonProblem): string {
  return line === null ? '' : view.say('season.line', { line, column: path.length === 0 ? column : null });
}

/** The keys that lead there, positions counted from 1: "boxes 4 › fills 1 › eggs". */
function keysOf({ path }: SeasonProblem): string {
  const steps = path.map((step) => (typeof step === 'number' ? String(step + 1) : step));
  return steps.join(' › ').replace(/ › (?=\d+(?: ›|$))/g, ' ');
}
