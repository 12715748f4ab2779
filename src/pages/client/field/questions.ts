/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { plantingWords, samplesComeTo } from './checks.js';
import { el } from './dom.js';
import type { Question } from './forms.js';
import { language, say } from './words.js';

export type Row = Record<string, string>;

/** What has been answered so far; photographs stand apart, as bytes. */
export interface Draft {
  readonly kind: string;
  readonly answers: Record<string, string>;
  readonly rows: Record<string, Row[]>;
  readonly photos: ArrayBuffer[];
  position: boolean;
}

/** From so many answers on a list is folded into a select. */
const BUTTONS = 12;

/** One question: what is asked and where the answer goes. `updates` gathers what is to be shown anew with every answer. */
export function questionField(
  question: Question,
  draft: Draft,
  day: Prepared | null,
  changed: () => void,
  updates: (() => void)[],
): Node {
  switch (question.as) {
    case 'choice':
      return choice(question, draft, day, changed);
    case 'loggers':
      return rows('loggers', draft, changed, 'logger-add', (row) => loggerRow(row, day, changed));
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

function typed(
  { name, word, as }: Question,
  draft: Draft,
  day: Prepared | null,
  changed: () => void,
  updates: (() => void)[],
): Node {
  const input = textInput(word, as, draft.answers[name] ?? '', (value) => {
    draft.answers[name] = value;
    changed();
  });
  const hint = el('p', { class: 'hint', 'aria-live': 'polite' });
  const caution = el('p', { class: 'caution', 'aria-live': 'polite' });
  const update = () => {
    const sum = name === 'alive' ? countedSoFar(draft, day) : null;
    hint.textContent =
      as === 'moment' ? say('when-now') : name === 'eggs' ? eggsLeft(draft, day) : (sum?.text ?? '');
    caution.textContent =
      name === 'siteC' ? cautions(draft, day) : sum?.over === true ? say('tally-over') : '';
  };
  update();
  updates.push(update);
  return el('div', { class: 'question', id: `q-${name}` }, input, hint, caution);
}

/** Heard while the temperatures are typed, before the eggs go in. */
function cautions({ answers }: Draft, day: Prepared | null): string {
  const lot = day?.lots.find(({ id }) => id === answers.lot);
  const at = answers.when === undefined || answers.when === '' ? Date.now() : Date.parse(answers.when);
  return plantingWords(lot, answers.transportC ?? '', answers.siteC ?? '', at)
    .map((word) => say(word))
    .join(' ');
}

function textInput(
  word: Parameters<typeof say>[0],
  as: Question['as'],
  value: string,
  set: (value: string) => void,
): HTMLElement {
  const input = el('input', {
    value,
    autocomplete: 'off',
    inputmode: as === 'count' ? 'numeric' : as === 'figure' ? 'decimal' : 'text',
    type: as === 'moment' ? 'datetime-local' : 'text',
  });
  input.addEventListener('input', () => set(input.value.trim()));
  return el('label', {}, say(word), input);
}

function eggsLeft(draft: Draft, day: Prepared | null): string {
  const lot = day?.lots.find(({ id }) => id === draft.answers.lot);
  return lot === undefined || draft.kind !== 'plant' ? '' : `${lot.unplaced} ${say('eggs-left')}`;
}

const planted = (draft: Draft, day: Prepared | null) => day?.boxes.find(({ id }) => id === draft.answers.box);

/** What the three numbers come to beside what was planted; nothing before the first of them. */
function countedSoFar(draft: Draft, day: Prepared | null): { text: string; over: boolean } | null {
  const box = planted(draft, day);
  const given = ['empty', 'dead', 'alive'].flatMap((name) => draft.answers[name] || []);
  const sum = given.reduce((all, one) => all + Number(one), 0);
  // A day prepared before an update says nothing of eggs.
  if (box === undefined || given.length === 0 || !Number.isFinite(sum) || !Number.isFinite(box.eggs))
    return null;
  const text = `${sum} ${say('tally-counted')} ${box.eggs} ${say('tally-planted')}`;
  return { text, over: sum > box.eggs };
}

/** What a choice offers, by what was prepared and answered before. */
function offered({ of, name }: Question, draft: Draft, day: Prepared | null): (readonly [string, string])[] {
  if (of === undefined) return [];
  if (typeof of !== 'string') return of.map(([id, word]) => [id, say(word)] as const);
  const ids = (list: readonly { readonly id: string }[] = []) => list.map(({ id }) => [id, id] as const);
  switch (of) {
    case 'sites':
      return day?.sites.map((one) => [one.id, one.name] as const) ?? [];
    case 'boxes': {
      const site = draft.answers.site ?? '';
      return ids(day?.boxes.filter((one) => site === '' || one.site === site || name !== 'box'));
    }
    case 'parts':
      return (planted(draft, day)?.parts ?? []).map((part) => [part, part] as const);
    case 'lots':
      return ids(day?.lots);
    case 'females':
      return ids(day?.adults.filter(({ sex }) => sex !== 'male'));
    case 'tables':
      return day?.tables.map((one) => [one.id, one[language()]] as const) ?? [];
  }
}

function choice(question: Question, draft: Draft, day: Prepared | null, changed: () => void): Node {
  const { name, word, of } = question;
  const answers = offered(question, draft, day);
  const set = (value: string) => {
    draft.answers[name] = value;
    changed();
  };
  const given = draft.answers[name] ?? '';
  const free = typeof of === 'string' && of !== 'tables';
  const list =
    answers.length > BUTTONS
      ? select(answers, given, set)
      : el('div', { class: 'choices' }, ...answers.map(([id, text]) => radio(name, id, text, given, set)));
  const known = answers.some(([id]) => id === given);
  const other = free ? textInput('other', 'text', known ? '' : given, set) : null;
  return el('fieldset', { class: 'question', id: `q-${name}` }, el('legend', {}, say(word)), list, other);
}

function radio(name: string, id: string, text: string, given: string, set: (value: string) => void) {
  const input = el('input', { type: 'radio', name, value: id });
  input.checked = id === given;
  input.addEventListener('change', () => set(id));
  return el('label', { class: 'choice' }, input, el('span', {}, text));
}

function select(
  answers: readonly (readonly [string, string])[],
  given: string,
  set: (value: string) => void,
) {
  const options = answers.map(([id, text]) => {
    const option = el('option', { value: id }, text);
    option.selected = id === given;
    return option;
  });
  const made = el('select', {}, el('option', { value: '' }), ...options);
  made.addEventListener('change', () => set(made.value));
  return made;
}

/** Rows that are added by a tap, each drawn by `draw`. */
function rows(
  name: string,
  draft: Draft,
  changed: () => void,
  add: Parameters<typeof say>[0],
  draw: (row: Row) => Node,
): HTMLElement {
  draft.rows[name] ??= [];
  const list = draft.rows[name];
  const place = el('div', {}, ...list.map(draw));
  const button = el('button', { type: 'button', class: 'quiet' }, say(add));
  button.addEventListener('click', () => {
    const row: Row = {};
    list.push(row);
    place.append(draw(row));
    changed();
  });
  return el('div', { class: 'question', id: `q-${name}` }, place, button);
}

function loggerRow(row: Row, day: Prepared | null, changed: () => void): Node {
  const set = (name: string) => (value: string) => {
    row[name] = value;
    changed();
  };
  const names =
    day?.loggers.map(({ id, lying }) => [id, lying === '' ? id : `${id} (${lying})`] as const) ?? [];
  const boxes = day?.boxes.map(({ id }) => [id, id] as const) ?? [];
  const did = (['in', 'out', 'read', 'checked'] as const).map((one) => [one, say(`did-${one}`)] as const);
  const number = (name: 'fast' | 'iceBath') => textInput(name, 'figure', row[name] ?? '', set(name));
  return el(
    'fieldset',
    { class: 'row' },
    el('legend', {}, say('logger')),
    names.length === 0
      ? textInput('logger', 'text', row.logger ?? '', set('logger'))
      : el('label', {}, say('logger'), select(names, row.logger ?? '', set('logger'))),
    el('label', {}, say('did'), select(did, row.did ?? '', set('did'))),
    el('label', {}, say('box'), select(boxes, row.box ?? '', set('box'))),
    number('fast'),
    number('iceBath'),
  );
}

function samples(draft: Draft, changed: () => void, updates: (() => void)[]): Node {
  const comes = el('p', { class: 'hint', 'aria-live': 'polite' });
  const shown = () => {
    const eggs = samplesComeTo(draft.rows.samples ?? [], draft.answers.total ?? '');
    comes.textContent =
      eggs === null ? '' : `${say('count-comes-to')}${language() === 'fr' ? '\u00a0' : ''}: ${eggs}`;
  };
  const all = rows('samples', draft, changed, 'sample-add', (row) =>
    el(
      'div',
      { class: 'row pair' },
      textInput('sample-eggs', 'count', row.eggs ?? '', (value) => {
        row.eggs = value;
        changed();
      }),
      textInput('sample-amount', 'figure', row.amount ?? '', (value) => {
        row.amount = value;
        changed();
      }),
    ),
  );
  updates.push(shown);
  shown();
  all.append(comes);
  return all;
}

function photos(draft: Draft, changed: () => void): Node {
  const input = el('input', { type: 'file', accept: 'image/*', multiple: true });
  const count = el(
    'p',
    { class: 'hint', 'aria-live': 'polite' },
    draft.photos.length > 0 ? `${draft.photos.length}` : '',
  );
  input.addEventListener('change', async () => {
    for (const file of input.files ?? []) draft.photos.push(await file.arrayBuffer());
    count.textContent = `${draft.photos.length}`;
    changed();
  });
  const position = el('input', { type: 'checkbox' });
  position.checked = draft.position;
  position.addEventListener('change', () => {
    draft.position = position.checked;
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
