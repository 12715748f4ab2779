import { type SeasonProblem, SeasonRefused } from '../../season/index.js';
import { type AnyRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { capitalised } from '../../words/season-field.js';
import type { View } from '../view.js';

/** A field of the form: its place in it, and its label. */
export interface FormField {
  readonly at: string;
  readonly label: string;
}

/** One thing wrong with what was sent: the field it lies in, where the form has it, and what is wrong. */
export interface Wrong {
  readonly at: string | null;
  readonly label: string;
  readonly sentence: string;
}

/** How many things wrong a page spells out. */
const SPELLED_OUT = 20;

/** What is wrong with what a form sent; `fieldOf` knows which of its fields a problem lies in. */
export function wrongsIn(
  view: View,
  refusal: AnyRefusal,
  fieldOf: (problem: SeasonProblem) => FormField | null,
): readonly Wrong[] {
  if (!(refusal instanceof SeasonRefused))
    return [{ at: null, label: '', sentence: sayRefusalOnPage(view.language, refusal) }];
  const { problems } = refusal.remark.with;
  const wrongs = problems.map((problem): Wrong => {
    const field = fieldOf(problem);
    const sentence = view.say('season.on-page', { problem });
    return {
      at: field?.at || null,
      label: field?.label ?? view.say('season.place', { problem }),
      sentence,
    };
  });
  const told = distinct(wrongs);
  const spelled = told.slice(0, SPELLED_OUT);
  const more = told.length - spelled.length;
  if (more === 0) return spelled;
  return [...spelled, { at: null, label: '', sentence: view.say('season.and-more', { more }) }];
}

/** One field of a form may stand in several places of the season. */
const distinct = (wrongs: readonly Wrong[]): Wrong[] =>
  wrongs.filter(
    ({ label, sentence }, i) =>
      wrongs.findIndex((one) => one.label === label && one.sentence === sentence) === i,
  );

const noteOf = (i: number): string => `wrong-${i + 1}`;
const inputOf = (at: string): string => `field-${at.replace(/[^\w-]+/g, '-')}`;

interface RefusedProps {
  readonly view: View;
  readonly wrongs: readonly Wrong[] | undefined;
  /** What was not done. */
  readonly not: string;
}

/** Why a form was not taken, each reason with a way to its field: read out at once. */
export function RefusedForm({ view, wrongs, not }: RefusedProps) {
  if (wrongs === undefined) return null;
  return (
    <div class="refusal" role="alert">
      <p>
        <strong>{not}</strong>
      </p>
      <ul>
        {wrongs.map((wrong, i) => (
          <li id={noteOf(i)}>
            <WrongHere view={view} wrong={wrong} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function WrongHere({ view, wrong }: { view: View; wrong: Wrong }) {
  const { at, sentence } = wrong;
  const label = capitalised(wrong.label);
  if (label === '') return <>{sentence}</>;
  if (at === null) return <>{view.named(label, sentence)}</>;
  return (
    <>
      <a href={`#${inputOf(at)}`}>{view.named(label, '').trimEnd()}</a> {sentence}
    </>
  );
}

/** What an input carries whose value was refused: where the link leads, and what says why. */
export function pointed(wrongs: readonly Wrong[] | undefined, at: string): Record<string, string> {
  const notes = (wrongs ?? []).flatMap((wrong, i) => (wrong.at === at ? [noteOf(i)] : []));
  if (notes.length === 0) return {};
  return { id: inputOf(at), 'aria-invalid': 'true', 'aria-describedby': notes.join(' ') };
}
