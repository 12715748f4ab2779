/// <reference lib="dom" />
import type { Prepared, PreparedLot } from '../../../field/prepared.js';
import { plantingWords } from './checks.js';
import { boxOf, choice, several } from './choices.js';
import { el } from './dom.js';
import type { Question } from './forms.js';
import { textInput } from './inputs.js';
import { loggers, samples } from './rows.js';
import { colon, say, whole } from './words.js';

export type Row = Record<string, string>;

/** What has been answered so far; photographs stand apart, as bytes. */
export interface Draft {
  readonly kind: string;
  readonly answers: Record<string, string>;
  readonly rows: Record<string, Row[]>;
  readonly photos: ArrayBuffer[];
  position: boolean;
  /** The screen it was left at. */
  screen: number;
  /** The entry not sent yet that this one is to stand for, and the photographs of it that were sent already. */
  readonly corrects: string | null;
  readonly sentPhotographs: readonly string[];
}

/** One question: what is asked and where the answer goes. `updates` gathers what is to be shown anew with every answer. */
export function questionField(
  question: Question,
  draft: Draft,
  day: Prepared,
  changed: () => void,
  updates: (() => void)[],
): Node {
  switch (question.as) {
    case 'choice':
      return withHint(choice(question, draft, day, changed), () => choiceHint(question, draft, day), updates);
    case 'several':
      return several(question, draft, day, changed);
    case 'loggers':
      return loggers(draft, day, changed);
    case 'samples':
      return samples(draft, changed, updates);
    case 'photo':
      return photos(draft, changed);
    case 'position':
      return position(draft, changed);
    default:
      return typed(question, draft, day, changed, updates);
  }
}

interface Hint {
  readonly hint: string;
  readonly caution: string;
}

/** Puts below a question what follows from the answers so far. */
function withHint(field: HTMLElement, said: () => Hint, updates: (() => void)[]): HTMLElement {
  const hint = el('p', { class: 'hint', 'aria-live': 'polite' });
  const caution = el('p', { class: 'caution', 'aria-live': 'polite' });
  const update = () => {
    const now = said();
    hint.textContent = now.hint;
    caution.textContent = now.caution;
  };
  update();
  updates.push(update);
  field.append(hint, caution);
  return field;
}

const nothing: Hint = { hint: '', caution: '' };

function choiceHint({ name }: Question, draft: Draft, day: Prepared): Hint {
  if (name !== 'part' || draft.kind !== 'plant') return nothing;
  const box = boxOf(draft, day);
  const part = draft.answers.part ?? '';
  const missing = box !== undefined && box.eggs > 0 && (part === '' || box.parts.includes(part));
  return { hint: say('part-when'), caution: missing ? say('part-which') : '' };
}

function typed(
  { name, word, as }: Question,
  draft: Draft,
  day: Prepared,
  changed: () => void,
  updates: (() => void)[],
): Node {
  const input = textInput(word, as, draft.answers[name] ?? '', (value) => {
    draft.answers[name] = value;
    changed();
  });
  const field = el('div', { class: 'question', id: `q-${name}` }, input);
  return withHint(field, () => typedHint(name, as, draft, day), updates);
}

function typedHint(name: string, as: Question['as'], draft: Draft, day: Prepared): Hint {
  if (as === 'moment') return { ...nothing, hint: say('when-now') };
  if (name === 'alive') return countedSoFar(draft, day);
  if (name === 'siteC') return { ...nothing, caution: cautions(draft, day) };
  if (name === 'eggs' && draft.kind === 'plant') return roomFor(draft, day);
  if (name !== 'id') return nothing;
  if (draft.kind === 'cross') return { ...nothing, hint: say('cross-id-empty') };
  const used = day.adults.slice(-6).map(({ id }) => id);
  return { ...nothing, hint: used.length === 0 ? '' : `${say('used-so-far')}${colon()} ${used.join(', ')}` };
}

/** Heard while the temperatures are typed, before the eggs go in. */
function cautions({ answers }: Draft, day: Prepared): string {
  const lot = day.lots.find(({ id }) => id === answers.lot) ?? anyLot(day);
  const at = answers.when === undefined || answers.when === '' ? Date.now() : Date.parse(answers.when);
  return plantingWords(lot, answers.transportC ?? '', answers.siteC ?? '', at)
    .map((word) => say(word))
    .join(' ');
}

/** Of a lot this phone does not know, only that its eggs are tempered like others. */
function anyLot(day: Prepared): PreparedLot {
  const temperBeyond = day.tables[0]?.temperBeyond ?? null;
  const spans = { killsFrom: [], killsTo: [], coldBelow: null, temperBeyond };
  return { id: '', unplaced: 0, fertilised: 0, table: '', ...spans };
}

/** How many eggs the lot has left and the box has room for, and when that is passed. */
function roomFor(draft: Draft, day: Prepared): Hint {
  const lot = day.lots.find(({ id }) => id === draft.answers.lot);
  const box = boxOf(draft, day);
  const eggs = Number(draft.answers.eggs);
  const room = box?.compartments == null ? null : Math.max(0, box.compartments - box.eggs);
  const hint = [
    lot === undefined ? '' : `${whole(lot.unplaced)} ${say('eggs-left')}`,
    room === null ? '' : `${whole(room)} ${say('compartments-free')}`,
  ].filter((part) => part !== '');
  const over =
    lot !== undefined && eggs > lot.unplaced
      ? say('more-than-left')
      : room !== null && eggs > room
        ? say('more-than-room')
        : '';
  return { hint: hint.join('; '), caution: over };
}

/** What the three numbers come to beside what was planted; nothing before the first of them. */
function countedSoFar(draft: Draft, day: Prepared): Hint {
  const box = boxOf(draft, day);
  const given = ['empty', 'dead', 'alive'].flatMap((name) => draft.answers[name] || []);
  const sum = given.reduce((all, one) => all + Number(one), 0);
  // A day prepared before an update says nothing of eggs.
  if (box === undefined || given.length === 0 || !Number.isFinite(sum) || !Number.isFinite(box.eggs))
    return nothing;
  const hint = `${whole(sum)} ${say('tally-counted')} ${whole(box.eggs)} ${say('tally-planted')}`;
  return { hint, caution: sum > box.eggs ? say('tally-over') : '' };
}

function photos(draft: Draft, changed: () => void): Node {
  const input = el('input', { type: 'file', accept: 'image/*', multiple: true });
  const count = el('p', { class: 'hint', 'aria-live': 'polite' });
  const show = () => {
    const taken = draft.photos.length + draft.sentPhotographs.length;
    count.textContent = taken === 0 ? '' : `${say('photos-taken')}${colon()} ${taken}`;
  };
  input.addEventListener('change', async () => {
    for (const file of input.files ?? []) draft.photos.push(await file.arrayBuffer());
    show();
    changed();
  });
  show();
  const position = el('input', { type: 'checkbox' });
  position.checked = draft.position;
  position.addEventListener('change', () => {
    draft.position = position.checked;
    changed();
  });
  return el(
    'div',
    { class: 'question', id: 'q-photographs' },
    el('label', {}, say('photo'), input),
    count,
    el('label', { class: 'check' }, position, say('photo-position')),
  );
}

function position(draft: Draft, changed: () => void): Node {
  const said = el('p', { class: 'hint', 'aria-live': 'polite' });
  const show = () => {
    const { latitude, longitude } = draft.answers;
    said.textContent = latitude === undefined ? '' : `${latitude}, ${longitude ?? ''}`;
  };
  const button = el('button', { type: 'button', class: 'quiet' }, say('position'));
  const failed = () => {
    said.textContent = say('position-failed');
  };
  button.addEventListener('click', () => {
    if (!('geolocation' in navigator)) return failed();
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        draft.answers.latitude = coords.latitude.toFixed(5);
        draft.answers.longitude = coords.longitude.toFixed(5);
        show();
        changed();
      },
      failed,
      { enableHighAccuracy: true, timeout: 20_000 },
    );
  });
  show();
  return el('div', { class: 'question', id: 'q-position' }, button, said);
}
