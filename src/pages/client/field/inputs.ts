/// <reference lib="dom" />
import type { FaceWord } from '../../../field/face-words.js';
import { el } from './dom.js';
import type { Question } from './forms.js';
import { say } from './words.js';

type Set = (value: string) => void;
type Answers = readonly (readonly [string, string])[];

/** A labelled line to type into, with the pad its answer needs. */
export function textInput(word: FaceWord, as: Question['as'], value: string, set: Set): HTMLElement {
  const input = el('input', {
    value,
    autocomplete: 'off',
    inputmode: as === 'count' ? 'numeric' : as === 'figure' ? 'decimal' : 'text',
    type: as === 'moment' ? 'datetime-local' : 'text',
  });
  input.addEventListener('input', () => set(input.value.trim()));
  return el('label', {}, say(word), input);
}

export function radio(name: string, [id, text]: readonly [string, string], given: string, set: Set) {
  const input = el('input', { type: 'radio', name, value: id });
  input.checked = id === given;
  input.addEventListener('change', () => set(id));
  return el('label', { class: 'choice' }, input, el('span', {}, text));
}

export function tick([id, text]: readonly [string, string], given: boolean, set: (on: boolean) => void) {
  const input = el('input', { type: 'checkbox', value: id });
  input.checked = given;
  input.addEventListener('change', () => set(input.checked));
  return el('label', { class: 'choice' }, input, el('span', {}, text));
}

export function select(answers: Answers, given: string, set: Set) {
  const options = answers.map(([id, text]) => {
    const option = el('option', { value: id }, text);
    option.selected = id === given;
    return option;
  });
  const made = el('select', {}, el('option', { value: '' }), ...options);
  made.addEventListener('change', () => set(made.value));
  return made;
}
