/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { plainFigure, wrongWith } from './checks.js';
import { el } from './dom.js';
import { type Form, forms } from './forms.js';
import { type Draft, questionField } from './questions.js';
import { type Kept, keepEntry, keepValue, newId } from './store.js';
import { say } from './words.js';

export const emptyDraft = (kind: string): Draft => ({
  kind,
  answers: {},
  rows: {},
  photos: [],
  position: false,
});

interface Entering {
  readonly draft: Draft;
  readonly day: Prepared | null;
  readonly who: string;
  readonly kept: (entry: Kept) => void;
  readonly left: () => void;
}

/** Asks an entry screen by screen; Keep is at hand on each, and nothing leaves the screen before the phone has it. */
export function enter(place: HTMLElement, entering: Entering): void {
  const form = forms.find(({ kind }) => kind === entering.draft.kind);
  if (form === undefined) entering.left();
  else showScreen(place, form, 0, entering);
}

function showScreen(place: HTMLElement, form: Form, screen: number, entering: Entering): void {
  const { draft, day } = entering;
  const questions = form.screens[screen] ?? [];
  const updates: (() => void)[] = [];
  const changed = () => {
    for (const update of updates) update();
    keepValue('draft', { ...draft, photos: [] }).catch(() => undefined);
  };
  const trouble = el('p', { class: 'refusal', role: 'alert', hidden: true });
  const go = (to: number) => () => {
    if (to > screen && !sound(place, form, [screen], draft)) return;
    showScreen(place, form, to, entering);
  };
  const keep = el('button', { type: 'button', id: 'keep' }, say('keep'));
  keep.addEventListener('click', async () => {
    const all = form.screens.map((_, i) => i);
    const first = all.find((i) => !sound(place, form, [i], draft));
    if (first !== undefined) {
      if (first !== screen) showScreen(place, form, first, entering);
      sound(place, form, [first], draft);
      return;
    }
    keep.disabled = true;
    const entry = entryOf(form, draft, entering.who);
    try {
      await keepEntry(entry);
    } catch {
      trouble.textContent = say('store-full');
      trouble.hidden = false;
      keep.disabled = false;
      return;
    }
    await keepValue('draft', null).catch(() => undefined);
    entering.kept(entry);
  });
  const next =
    screen + 1 < form.screens.length
      ? el('button', { type: 'button', id: 'next', class: 'quiet', onclick: go(screen + 1) }, '→')
      : null;
  const back = screen === 0 ? entering.left : go(screen - 1);
  place.replaceChildren(
    el('h2', {}, say(form.word), ` ${screen + 1}/${form.screens.length}`),
    ...questions.map((question) => questionField(question, draft, day, changed, updates)),
    trouble,
    el(
      'div',
      { class: 'actions' },
      el('button', { type: 'button', id: 'back', class: 'quiet', onclick: back }, `← ${say('back')}`),
      next,
      keep,
    ),
  );
  window.scrollTo(0, 0);
}

/** Says beside each question of these screens what is wrong with its answer. */
function sound(place: HTMLElement, form: Form, screens: readonly number[], draft: Draft): boolean {
  const wrong = screens
    .flatMap((i) => form.screens[i] ?? [])
    .map((question) => ({ question, word: wrongWith(question, draft.answers[question.name] ?? '') }));
  for (const { question, word } of wrong) {
    const field = place.querySelector(`#q-${question.name}`);
    field?.querySelector('.refusal')?.remove();
    if (word !== null) field?.append(el('p', { class: 'refusal', role: 'alert' }, say(word)));
  }
  return wrong.every(({ word }) => word === null);
}

function entryOf(form: Form, { answers, rows, photos, position }: Draft, who: string): Kept {
  const figures = new Set(form.screens.flat().flatMap(({ as, name }) => (as === 'figure' ? [name] : [])));
  const fields: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(answers))
    if (value !== '') fields[name] = figures.has(name) ? plainFigure(value) : value;
  for (const [name, list] of Object.entries(rows)) {
    const filled = list.flatMap((row) => {
      const given = Object.entries(row).filter(([, value]) => value !== '');
      return given.length === 0 ? [] : [Object.fromEntries(given)];
    });
    if (filled.length > 0) fields[name] = filled;
  }
  return {
    id: newId(),
    kind: form.kind,
    fields,
    who,
    entered: new Date().toISOString(),
    photos,
    position,
    state: 'unsent',
    why: null,
    photoWhy: null,
  };
}
