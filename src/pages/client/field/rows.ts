/// <reference lib="dom" />
import type { FaceWord } from '../../../field/face-words.js';
import type { Prepared } from '../../../field/prepared.js';
import { secondsFast } from './checks.js';
import { el } from './dom.js';
import { select, textInput } from './inputs.js';
import { samplesComeTo } from './known.js';
import type { Draft, Row } from './questions.js';
import { colon, language, say, whole } from './words.js';

/** Repeats offered at once: the error of a count comes from them. */
const SAMPLES = 3;

/** Rows that are added by a tap, each drawn by `draw`. */
function rows(name: string, draft: Draft, changed: () => void, add: FaceWord, draw: (row: Row) => Node) {
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

export function loggers(draft: Draft, day: Prepared, changed: () => void): Node {
  return rows('loggers', draft, changed, 'logger-add', (row) => loggerRow(row, draft, day, changed));
}

function loggerRow(row: Row, draft: Draft, day: Prepared, changed: () => void): Node {
  const set = (name: string) => (value: string) => {
    row[name] = value;
    changed();
  };
  const names = day.loggers.map(({ id, lying }) => [id, lying === '' ? id : `${id} (${lying})`] as const);
  const site = draft.answers.site ?? '';
  const boxes = day.boxes
    .filter((one) => site === '' || one.site === site)
    .map(({ id }) => [id, id] as const);
  const did = (['in', 'out', 'read', 'checked'] as const).map((one) => [one, say(`did-${one}`)] as const);
  const lay = (['tied-to-box', 'in-box', 'gravel', 'stream', 'bank'] as const).map(
    (one) => [one, say(`lay-${one}`)] as const,
  );
  const where = el(
    'div',
    {},
    el('label', {}, say('lay'), select(lay, row.lay ?? '', set('lay'))),
    el('label', {}, say('box'), select(boxes, row.box ?? '', set('box'))),
  );
  where.hidden = row.did !== 'in';
  const done = (value: string) => {
    where.hidden = value !== 'in';
    set('did')(value);
  };
  return el(
    'fieldset',
    { class: 'row' },
    names.length === 0
      ? textInput('logger', 'text', row.logger ?? '', set('logger'))
      : el('label', {}, say('logger'), select(names, row.logger ?? '', set('logger'))),
    el('label', {}, say('did'), select(did, row.did ?? '', done)),
    where,
    clock(row, set('fast')),
    textInput('iceBath', 'figure', row.iceBath ?? '', set('iceBath')),
  );
}

/** The time a logger shows, compared with the phone's as it is typed; the seconds may also be typed by themselves. */
function clock(row: Row, setFast: (value: string) => void): Node {
  const fast = textInput('fast', 'figure', row.fast ?? '', setFast);
  const shows = el('input', { type: 'time', step: '1' });
  shows.addEventListener('input', () => {
    const seconds = secondsFast(shows.value, new Date());
    if (seconds === null) return;
    const typed = fast.querySelector('input');
    if (typed !== null) typed.value = String(seconds);
    setFast(String(seconds));
  });
  return el('div', {}, el('label', {}, say('clock-shows'), shows), fast);
}

/** Counted samples, what they come to, and how sure that is. */
export function samples(draft: Draft, changed: () => void, updates: (() => void)[]): Node {
  draft.rows.samples ??= Array.from({ length: SAMPLES }, (): Row => ({}));
  const comes = el('p', { class: 'hint', 'aria-live': 'polite' });
  const shown = () => {
    const count = samplesComeTo(draft.rows.samples ?? [], draft.answers.total ?? '');
    const sure =
      count?.low == null || count.high === null
        ? say('count-one')
        : `${say('count-between')} ${whole(count.low)} ${say('and')} ${whole(count.high)} (95${language() === 'fr' ? '\u00a0' : ''}%)`;
    comes.textContent =
      count === null ? '' : `${say('count-comes-to')}${colon()} ${whole(count.eggs)}; ${sure}`;
    const weight = draft.answers.counted === 'weight';
    for (const one of all.querySelectorAll('.amount'))
      one.textContent = say(
        weight ? 'sample-g' : draft.answers.counted === 'displacement' ? 'sample-ml' : 'sample-amount',
      );
  };
  const all = rows('samples', draft, changed, 'sample-add', (row) => {
    const amount = textInput('sample-amount', 'figure', row.amount ?? '', (value) => {
      row.amount = value;
      changed();
    });
    amount.firstChild?.replaceWith(el('span', { class: 'amount' }, say('sample-amount')));
    const eggs = textInput('sample-eggs', 'count', row.eggs ?? '', (value) => {
      row.eggs = value;
      changed();
    });
    return el('div', { class: 'row pair' }, eggs, amount);
  });
  updates.push(shown);
  shown();
  all.append(comes);
  return all;
}
