/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { el } from './dom.js';
import type { Question } from './forms.js';
import { radio, select, textInput, tick } from './inputs.js';
import { listed, lotsToCome } from './known.js';
import type { Draft } from './questions.js';
import { language, say, whole } from './words.js';

/** From so many answers on a list is folded into a select. */
const BUTTONS = 12;

export const boxOf = (draft: Draft, day: Prepared) => day.boxes.find(({ id }) => id === draft.answers.box);

/** What a choice offers, by what is known and was answered before. */
function offered({ of }: Question, draft: Draft, day: Prepared): (readonly [string, string])[] {
  if (of === undefined) return [];
  if (typeof of !== 'string') return of.map(([id, word]) => [id, say(word)] as const);
  const same = (ids: readonly string[]) => ids.map((id) => [id, id] as const);
  switch (of) {
    case 'sites':
      return day.sites.map((one) => [one.id, one.name] as const);
    case 'boxes': {
      const site = draft.answers.site ?? '';
      const here = day.boxes.filter((one) => site === '' || one.site === site);
      // Planting, a box that has eggs already is seldom the one; it stands last, and says so.
      if (draft.kind === 'plant') here.sort((one, other) => Number(one.planted) - Number(other.planted));
      return here.map(({ id, eggs }) => [
        id,
        draft.kind === 'plant' && eggs > 0 ? `${id} (${whole(eggs)} ${say('eggs-in-it')})` : id,
      ]);
    }
    case 'parts':
      return same(boxOf(draft, day)?.parts ?? []);
    case 'lots':
      return day.lots.map(({ id, unplaced }) => [
        id,
        draft.kind === 'plant' ? `${id} (${whole(unplaced)} ${say('eggs-left')})` : id,
      ]);
    case 'new-lots':
      return same(lotsToCome(day));
    case 'females':
      return same(day.adults.filter(({ sex }) => sex !== 'male').map(({ id }) => id));
    case 'males':
      return same(day.adults.filter(({ sex }) => sex !== 'female').map(({ id }) => id));
    case 'adults':
      return same(day.adults.map(({ id }) => id));
    case 'tables':
      return day.tables.map((one) => [one.id, one[language()]] as const);
  }
}

/** One of a list, or another that is typed where the list cannot be whole. */
export function choice(question: Question, draft: Draft, day: Prepared, changed: () => void): HTMLElement {
  const { name, word, of } = question;
  const answers = offered(question, draft, day);
  const set = (value: string) => {
    draft.answers[name] = value;
    changed();
  };
  const given = draft.answers[name] ?? '';
  const free = typeof of === 'string' && (of !== 'tables' || answers.length === 0);
  const list =
    answers.length > BUTTONS
      ? select(answers, given, set)
      : el('div', { class: 'choices' }, ...answers.map((one) => radio(name, one, given, set)));
  const known = answers.some(([id]) => id === given);
  if (!free) return el('fieldset', { class: 'question', id: `q-${name}` }, el('legend', {}, say(word)), list);
  if (answers.length === 0)
    return el('div', { class: 'question', id: `q-${name}` }, textInput(word, 'text', given, set));
  const other = textInput('other', 'text', known ? '' : given, (value) => {
    for (const one of list.querySelectorAll('input')) one.checked = false;
    set(value);
  });
  return el('fieldset', { class: 'question', id: `q-${name}` }, el('legend', {}, say(word)), list, other);
}

/** Several of a list, and others typed with commas between; the answer holds them with commas. */
export function several(question: Question, draft: Draft, day: Prepared, changed: () => void): HTMLElement {
  const { name, word } = question;
  const answers = offered(question, draft, day);
  const ids = answers.map(([id]) => id);
  const given = listed(draft.answers[name] ?? '');
  const ticked = new Set(given.filter((id) => ids.includes(id)));
  let typed = given.filter((id) => !ids.includes(id));
  const set = () => {
    draft.answers[name] = [...ids.filter((id) => ticked.has(id)), ...typed].join(', ');
    changed();
  };
  const ticks = answers.map((one) =>
    tick(one, ticked.has(one[0]), (on) => {
      if (on) ticked.add(one[0]);
      else ticked.delete(one[0]);
      set();
    }),
  );
  const other = textInput(answers.length === 0 ? word : 'others', 'text', typed.join(', '), (value) => {
    typed = listed(value);
    set();
  });
  if (answers.length === 0) return el('div', { class: 'question', id: `q-${name}` }, other);
  return el(
    'fieldset',
    { class: 'question', id: `q-${name}` },
    el('legend', {}, say(word)),
    el('div', { class: 'choices' }, ...ticks),
    other,
  );
}
