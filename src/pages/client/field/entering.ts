/// <reference lib="dom" />
import type { FaceWord } from '../../../field/face-words.js';
import type { Prepared } from '../../../field/prepared.js';
import { plainFigure, wrongWith, wrongWithSamples } from './checks.js';
import { el } from './dom.js';
import { type Form, forms, type Question } from './forms.js';
import { parentsOf } from './known.js';
import { type Draft, questionField, type Row } from './questions.js';
import { forgetEntry, type Kept, keepEntry, keepValue, keptValue, newId } from './store.js';
import { say } from './words.js';

/** A new entry, with what the phone knows already: who writes, the site they were last at, the only lot with eggs left. */
export function newDraft(kind: string, day: Prepared, who: string, site: string): Draft {
  const answers: Record<string, string> = {};
  const questions = forms.find((form) => form.kind === kind)?.screens.flat() ?? [];
  const asked = (name: string) => questions.some((question) => question.name === name);
  if (asked('site') && site !== '') answers.site = site;
  if (asked('who') && who !== '') answers.who = who;
  const left = day.lots.filter(({ unplaced }) => unplaced > 0);
  if (kind === 'plant' && left.length === 1) answers.lot = left[0]?.id ?? '';
  const usual = day.lots.at(-1)?.table ?? '';
  if (kind === 'strip' && usual !== '') answers.table = usual;
  return { ...EMPTY, kind, answers, rows: {}, photos: [] };
}

const EMPTY = { position: false, screen: 0, corrects: null, sentPhotographs: [] } as const;

/** An entry that was not sent yet, as it was typed, to be put right. */
export function draftOf({ id, kind, fields, photos, position }: Kept): Draft {
  const answers: Record<string, string> = {};
  const rows: Record<string, Row[]> = {};
  for (const [name, value] of Object.entries(fields)) {
    if (typeof value === 'string') answers[name] = value;
    else if (Array.isArray(value) && name !== 'photographs') rows[name] = value.map((row) => ({ ...row }));
  }
  const sent = Array.isArray(fields.photographs) ? fields.photographs.map(String) : [];
  return {
    ...EMPTY,
    kind,
    answers,
    rows,
    photos: [...photos],
    position,
    corrects: id,
    sentPhotographs: sent,
  };
}

const keepDraft = async (draft: Draft | null, photosToo: boolean): Promise<void> => {
  await keepValue('draft', draft === null ? null : { ...draft, photos: [] });
  if (photosToo) await keepValue('draft-photos', draft?.photos ?? []);
};

/** What was being typed when the pages were closed, its photographs with it. */
export async function draftLeft(): Promise<Draft | null> {
  const draft = await keptValue<Draft>('draft');
  const photos = (await keptValue<ArrayBuffer[]>('draft-photos')) ?? [];
  return draft ? { ...EMPTY, ...draft, photos } : null;
}

export const forgetDraft = (): Promise<void> => keepDraft(null, true).catch(() => undefined);

interface Entering {
  readonly draft: Draft;
  readonly day: Prepared;
  readonly who: string;
  readonly kept: (entry: Kept) => void;
  readonly left: () => void;
}

/** Asks an entry screen by screen; nothing leaves the screen before the phone has it. */
export function enter(place: HTMLElement, entering: Entering): void {
  const form = forms.find(({ kind }) => kind === entering.draft.kind);
  if (form === undefined) entering.left();
  else showScreen(place, form, Math.min(entering.draft.screen, form.screens.length - 1), entering);
}

function showScreen(place: HTMLElement, form: Form, screen: number, entering: Entering): void {
  const { draft, day } = entering;
  const questions = form.screens[screen] ?? [];
  const updates: (() => void)[] = [];
  draft.screen = screen;
  if (questions.some(({ name }) => name === 'parents') && draft.answers.parents === undefined)
    draft.answers.parents = parentsOf(day, draft.answers.lot ?? '').join(', ');
  let photographed = draft.photos.length;
  const changed = () => {
    for (const update of updates) update();
    mended(place, form, screen, draft);
    keepDraft(draft, draft.photos.length !== photographed).catch(() => undefined);
    photographed = draft.photos.length;
  };
  const trouble = el('p', { class: 'refusal', role: 'alert', hidden: true });
  const go = (to: number) => () => {
    if (to > screen && !sound(place, form, screen, draft)) return;
    showScreen(place, form, to, entering);
  };
  const keep = el('button', { type: 'button', id: 'keep' }, say('keep'));
  keep.addEventListener('click', async () => {
    sound(place, form, screen, draft);
    const first = form.screens.findIndex((_, i) => wrongOn(form, i, draft).length > 0);
    if (first >= 0) {
      if (first !== screen) showScreen(place, form, first, entering);
      sound(place, form, first, draft);
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
    if (draft.corrects !== null) await forgetEntry(draft.corrects).catch(() => undefined);
    await forgetDraft();
    entering.kept(entry);
  });
  const last = screen + 1 >= form.screens.length;
  // Where something further on must be answered, on is the only way; after that, the rest may stay empty.
  const open = form.screens.some((_, i) => i > screen && wrongOn(form, i, draft).length > 0);
  const on = { type: 'button', id: 'next', ...(open ? {} : { class: 'quiet' }), onclick: go(screen + 1) };
  const back = screen === 0 ? entering.left : go(screen - 1);
  place.replaceChildren(
    el('h2', {}, say(form.word), ` ${screen + 1}/${form.screens.length}`),
    ...about(form, screen, draft, day),
    ...questions.map((question) => questionField(question, draft, day, changed, updates)),
    trouble,
    el(
      'div',
      { class: 'actions' },
      el('button', { type: 'button', id: 'back', class: 'quiet', onclick: back }, `← ${say('back')}`),
      last ? null : el('button', on, `${say('next')} →`),
    ),
    ...(open ? [] : [...(last ? [] : [el('p', { class: 'hint' }, say('rest-empty'))]), keep]),
  );
  window.scrollTo(0, 0);
}

/** What this is about, as answered on the screens before. */
function about(form: Form, screen: number, { answers }: Draft, day: Prepared): HTMLElement[] {
  const before = form.screens.slice(0, screen).flat();
  const said = ['box', 'site', 'lot', 'id'].flatMap((name) => {
    const given = before.some((question) => question.name === name) ? (answers[name] ?? '') : '';
    return given === '' ? [] : [day.sites.find(({ id }) => name === 'site' && id === given)?.name ?? given];
  });
  return said.length === 0 ? [] : [el('p', { class: 'about' }, said.join(' · '))];
}

function wrongOn(form: Form, screen: number, draft: Draft): { question: Question; word: FaceWord }[] {
  return (form.screens[screen] ?? []).flatMap((question) => {
    const word =
      question.as === 'samples'
        ? (wrongWithSamples(draft.rows.samples ?? []) ?? uncounted(draft))
        : wrongWith(question, draft.answers[question.name] ?? '');
    return word === null ? [] : [{ question, word }];
  });
}

/** A lot that nobody counted cannot be followed: samples with the whole lot, or the eggs. */
function uncounted({ answers, rows }: Draft): FaceWord | null {
  const sampled = (rows.samples ?? []).some(({ eggs = '' }) => eggs !== '') && (answers.total ?? '') !== '';
  return sampled || (answers.eggs ?? '') !== '' ? null : 'count-missing';
}

/** What was said of an answer goes once it is right. */
function mended(place: HTMLElement, form: Form, screen: number, draft: Draft): void {
  const said = place.querySelectorAll('.question > .refusal');
  if (said.length === 0) return;
  const wrong = new Set(wrongOn(form, screen, draft).map(({ question }) => `q-${question.name}`));
  for (const one of said) if (!wrong.has(one.parentElement?.id ?? '')) one.remove();
}

/** Says beside each question of a screen what is wrong with its answer. */
function sound(place: HTMLElement, form: Form, screen: number, draft: Draft): boolean {
  for (const old of place.querySelectorAll('.question > .refusal')) old.remove();
  const wrong = wrongOn(form, screen, draft);
  for (const { question, word } of wrong)
    place
      .querySelector(`#q-${question.name}`)
      ?.append(el('p', { class: 'refusal', role: 'alert' }, say(word)));
  place.querySelector('.question > .refusal')?.scrollIntoView({ block: 'center' });
  return wrong.length === 0;
}

function entryOf(form: Form, draft: Draft, who: string): Kept {
  const { answers, rows, photos, position, sentPhotographs } = draft;
  const asked = form.screens.flat();
  const figures = new Set(asked.flatMap(({ as, name }) => (as === 'figure' ? [name] : [])));
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
  if (sentPhotographs.length > 0) fields.photographs = sentPhotographs;
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
