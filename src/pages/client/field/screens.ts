/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { el } from './dom.js';
import { emptyDraft, enter } from './entering.js';
import { forms } from './forms.js';
import type { Draft } from './questions.js';
import { sendAll } from './sending.js';
import { entries, forgetEntry, type Kept, keepValue, keptValue, newId } from './store.js';
import { language, say, speak } from './words.js';

/** What was sent is shown for two days, then forgotten by the phone. */
const SHOWN_MS = 2 * 86_400_000;
/** Tried again by itself while something is unsent. */
const AGAIN_MS = 30_000;

const place = document.querySelector<HTMLElement>('#field') ?? document.body;
let day: Prepared | null = null;
let preparedAt = '';
let name = '';
let phone = '';
let trouble = '';
let inForm = false;

/** Opens the pages: what the phone kept first, then the network. */
export async function open(): Promise<void> {
  try {
    day = (await keptValue<Prepared>('day')) ?? null;
    preparedAt = (await keptValue<string>('preparedAt')) ?? '';
    name = (await keptValue<string>('name')) ?? '';
    phone = (await keptValue<string>('phone')) ?? '';
    if (phone === '') {
      phone = newId().slice(0, 6);
      await keepValue('phone', phone);
    }
    const spoken = await keptValue<'en' | 'fr'>('language');
    if (spoken === 'en' || spoken === 'fr') speak(spoken);
  } catch {
    place.replaceChildren(el('p', { class: 'refusal', role: 'alert' }, say('no-store')));
    return;
  }
  if ('serviceWorker' in navigator)
    navigator.serviceWorker.register('/field/worker.js', { scope: '/field' }).catch(() => undefined);
  await navigator.storage?.persist?.().catch(() => false);
  window.addEventListener('online', () => void send());
  window.addEventListener('offline', () => void home());
  setInterval(() => void send(), AGAIN_MS);
  const draft = await keptValue<Draft>('draft');
  if (draft) write({ ...emptyDraft(draft.kind), answers: draft.answers, rows: draft.rows });
  else await home();
  await send();
}

/** Sends what is unsent; a form on the screen is left alone. */
async function send(): Promise<void> {
  const unsent = (await entries()).some(({ state, why }) => state === 'unsent' && why === null);
  if (!unsent) return;
  const how = await sendAll(phone, home);
  trouble = how === 'sent' ? '' : say(how === 'signed-out' ? 'signed-out' : 'not-sent-why');
  await home();
}

async function prepare(): Promise<void> {
  try {
    const answer = await fetch('/api/v1/field', {
      credentials: 'same-origin',
      signal: AbortSignal.timeout(25_000),
    });
    if (!answer.ok) throw new Error(String(answer.status));
    const prepared: Prepared = await answer.json();
    preparedAt = new Date().toISOString();
    await keepValue('day', prepared);
    await keepValue('preparedAt', preparedAt);
    day = prepared;
    trouble = '';
  } catch {
    trouble = say('prepare-failed');
  }
  await forgetOld();
  await home();
}

async function forgetOld(): Promise<void> {
  const before = new Date(Date.now() - SHOWN_MS).toISOString();
  for (const entry of await entries())
    if (entry.state !== 'unsent' && entry.entered < before) await forgetEntry(entry.id);
}

function write(draft: Draft): void {
  inForm = true;
  const left = () => {
    inForm = false;
    void keepValue('draft', null).then(home);
  };
  const kept = (entry: Kept) => {
    inForm = false;
    if (typeof entry.fields.who === 'string' && name === '') name = entry.fields.who;
    void home().then(send);
  };
  enter(place, { draft, day, who: name, kept, left });
}

async function home(): Promise<void> {
  if (inForm) return;
  const all = await entries();
  const unsent = all.filter(({ state }) => state === 'unsent').length;
  place.replaceChildren(
    el('h1', {}, say('title'), day === null ? '' : ` · ${day.group}`),
    ...(window.isSecureContext
      ? []
      : [el('p', { class: 'refusal', role: 'alert', id: 'insecure' }, say('insecure'))]),
    state(unsent),
    preparing(),
    ...sheets(),
    el(
      'div',
      { class: 'kinds' },
      ...forms.map(({ kind, word }) =>
        el(
          'button',
          { type: 'button', id: `new-${kind}`, onclick: () => write(emptyDraft(kind)) },
          say(word),
        ),
      ),
    ),
    el('h2', {}, say('list')),
    el('ul', { id: 'entries' }, ...all.map(line)),
    myName(),
    el('p', { class: 'caution' }, say('caution')),
    el(
      'p',
      { class: 'foot' },
      el(
        'button',
        { type: 'button', class: 'quiet', id: 'language', onclick: switchLanguage },
        language() === 'en' ? 'Français' : 'English',
      ),
      el('a', { href: '/' }, say('desk')),
    ),
  );
}

function state(unsent: number): HTMLElement {
  const button = el('button', { type: 'button', id: 'send', onclick: () => void send() }, say('send-now'));
  return el(
    'section',
    { id: 'state', class: unsent > 0 ? 'unsent' : 'clear', 'aria-live': 'polite' },
    el('p', {}, el('strong', {}, unsent > 0 ? `${unsent} ${say('unsent')}` : say('all-sent'))),
    el('p', {}, navigator.onLine ? say('online') : say('offline')),
    ...(trouble === '' ? [] : [el('p', { class: 'refusal', role: 'alert' }, trouble)]),
    ...(trouble === say('signed-out') ? [el('a', { class: 'button', href: '/sign-in?to=/field' }, '→')] : []),
    ...(unsent > 0 ? [button] : []),
  );
}

/** The field sheets that came along: the stop rule first, then the boxes and how to find them. */
function sheets(): HTMLElement[] {
  const all = day?.sheets ?? [];
  if (all.length === 0) return [];
  const found = (id: string) => day?.boxes.find((box) => box.id === id)?.find ?? '';
  const access = (id: string) => day?.sites.find((site) => site.id === id);
  return [
    el('h2', {}, say('sheets')),
    ...all.map(({ title, stop, draft, boxes, site }) =>
      el(
        'details',
        { class: 'sheet-ahead' },
        el('summary', {}, title[language()]),
        draft ? el('p', { class: 'refusal' }, say('sheet-draft')) : null,
        el('p', {}, el('strong', {}, stop[language()])),
        el('p', { class: 'caution' }, say('caution')),
        el('p', {}, access(site)?.access ?? '', ' ', access(site)?.find ?? ''),
        el('ul', {}, ...boxes.map((id) => el('li', {}, el('strong', {}, id), ' ', found(id)))),
      ),
    ),
  ];
}

function preparing(): HTMLElement {
  const at =
    preparedAt === ''
      ? say('prepare-first')
      : `${say('prepared')}${language() === 'fr' ? '\u00a0' : ''}: ${new Date(preparedAt).toLocaleString(language() === 'fr' ? 'fr-CA' : 'en-CA', { dateStyle: 'medium', timeStyle: 'short' })}`;
  return el(
    'section',
    {},
    el('p', { id: 'prepared' }, at),
    el(
      'button',
      { type: 'button', class: 'quiet', id: 'prepare', onclick: () => void prepare() },
      say('prepare'),
    ),
  );
}

function line(entry: Kept): HTMLElement {
  const form = forms.find(({ kind }) => kind === entry.kind);
  const what = ['site', 'box', 'lot', 'id'].flatMap((key) => {
    const value = entry.fields[key];
    return typeof value === 'string' ? [value] : [];
  });
  const where = entry.state === 'unsent' ? 'kept' : entry.state === 'waiting' ? 'waiting' : 'sent';
  return el(
    'li',
    { class: entry.state },
    `${new Date(entry.entered).toLocaleTimeString(language() === 'fr' ? 'fr-CA' : 'en-CA', { timeStyle: 'short' })} ${form === undefined ? entry.kind : say(form.word)} ${what.join(', ')} · `,
    el('em', {}, entry.state === 'unsent' ? `${say('kept')}, ${say('unsent')}` : say(where)),
    entry.why === null ? null : el('p', { class: 'caution' }, entry.why),
    entry.photoWhy === null
      ? null
      : el('p', { class: 'caution' }, `${say('photo-refused')} ${entry.photoWhy}`),
  );
}

function myName(): HTMLElement {
  const input = el('input', { value: name, autocomplete: 'name', id: 'name' });
  input.addEventListener('change', () => {
    name = input.value.trim();
    void keepValue('name', name);
  });
  return el('label', {}, say('who-am-i'), input);
}

function switchLanguage(): void {
  speak(language() === 'en' ? 'fr' : 'en');
  void keepValue('language', language()).then(home);
}
