/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { el } from './dom.js';
import { forms } from './forms.js';
import type { Kept } from './store.js';
import { colon, language, say } from './words.js';

/** One line of what was entered: when, what, whether it was sent, and what is to be heard of it. */
export function entryLine(entry: Kept, day: Prepared | null, correct: (id: string) => void): HTMLElement {
  const { id, kind, state, why, photoWhy, heard = [] } = entry;
  const form = forms.find((one) => one.kind === kind);
  const spoken = language() === 'fr' ? 'fr-CA' : 'en-CA';
  const at = new Date(entry.entered).toLocaleTimeString(spoken, { timeStyle: 'short' });
  const aboutIt = about(entry, day);
  const unsent = state === 'unsent';
  return el(
    'li',
    { class: state },
    `${at} · ${form === undefined ? kind : say(form.word)}${aboutIt === '' ? '' : `${colon()} ${aboutIt}`} · `,
    el('em', {}, unsent ? say('kept') : say(state === 'waiting' ? 'waiting' : 'sent')),
    ...[...(why === null ? [] : [why]), ...heard].map((said) => el('p', { class: 'caution' }, said)),
    photoWhy === null ? null : el('p', { class: 'caution' }, `${say('photo-refused')} ${photoWhy}`),
    unsent
      ? el('button', { type: 'button', class: 'quiet small', onclick: () => correct(id) }, say('correct'))
      : null,
  );
}

function about({ fields }: Kept, day: Prepared | null): string {
  const text = (name: string) => (typeof fields[name] === 'string' ? fields[name] : '');
  const site = day?.sites.find(({ id }) => id === text('site'))?.name ?? text('site');
  const lot = text('eggs') === '' ? text('lot') : `${text('eggs')} ${say('eggs-of')} ${text('lot')}`;
  return [text('id') || text('female'), text('box'), text('part'), site, lot]
    .filter((one) => one !== '')
    .join(', ');
}
