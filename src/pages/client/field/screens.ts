/// <reference lib="dom" />
import type { Prepared } from '../../../field/prepared.js';
import { el } from './dom.js';
import { draftLeft, draftOf, enter, forgetDraft, newDraft } from './entering.js';
import { forms, occasions } from './forms.js';
import { knownNow } from './known.js';
import { entryLine } from './lines.js';
import type { Draft } from './questions.js';
import { sendAll } from './sending.js';
import { entries, forgetEntry, type Kept, keepValue, keptValue, newId } from './store.js';
import { colon, language, say, speak } from './words.js';

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
let site = '';
let writing: Draft | null = null;

/** Opens the pages: what the phone kept first, then the network. */
export async function open(): Promise<void> {
  try {
    day = (await keptValue<Prepared>('day')) ?? null;
    preparedAt = (await keptValue<string>('preparedAt')) ?? '';
    name = (await keptValue<string>('name')) ?? '';
    site = (await keptValue<string>('site')) ?? '';
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
  const draft = await draftLeft();
  if (draft) await write(draft);
  else await home();
  if ('serviceWorker' in navigator)
    navigator.serviceWorker.register('/field/worker.js', { scope: '/field' }).catch(() => undefined);
  navigator.storage?.persist?.().catch(() => false);
  window.addEventListener('online', () => void send());
  window.addEventListener('offline', () => void home());
  setInterval(() => void send(), AGAIN_MS);
  await send();
}

/** Sends what is unsent; a form on the screen is left alone. */
async function send(): Promise<void> {
  const unsent = (await entries()).some(({ state, why }) => state === 'unsent' && why === null);
  if (!unsent) return;
  const how = await sendAll(phone, () => writing?.corrects ?? null, home);
  trouble = how === 'sent' ? '' : say(how === 'signed-out' ? 'signed-out' : 'not-sent-why');
  await home();
}

async function prepare(): Promise<void> {
  try {
    const answer = await fetch('/api/v1/field', {
      credentials: 'same-origin',
      signal: AbortSignal.timeout(25_000),
    });
    if (answer.status === 401) trouble = say('signed-out');
    else if (!answer.ok) throw new Error(String(answer.status));
    else {
      const prepared: Prepared = await answer.json();
      preparedAt = new Date().toISOString();
      await keepValue('day', prepared);
      await keepValue('preparedAt', preparedAt);
      day = prepared;
      if (name === '' && prepared.you !== '') await called(prepared.you);
      trouble = '';
    }
  } catch {
    trouble = say('prepare-failed');
  }
  await forgetOld();
  await home();
}

async function called(given: string): Promise<void> {
  name = given;
  await keepValue('name', name).catch(() => undefined);
}

async function forgetOld(): Promise<void> {
  const before = new Date(Date.now() - SHOWN_MS).toISOString();
  for (const entry of await entries())
    if (entry.state !== 'unsent' && entry.entered < before) await forgetEntry(entry.id);
}

async function write(draft: Draft): Promise<void> {
  writing = draft;
  const known = knownNow(
    day,
    preparedAt,
    (await entries()).filter(({ id }) => id !== draft.corrects),
  );
  const left = () => {
    writing = null;
    void forgetDraft().then(home);
  };
  const kept = async (entry: Kept) => {
    writing = null;
    if (typeof entry.fields.who === 'string' && name === '') await called(entry.fields.who);
    if (typeof entry.fields.site === 'string' && entry.fields.site !== site) {
      site = entry.fields.site;
      await keepValue('site', site).catch(() => undefined);
    }
    await home();
    await send();
  };
  enter(place, { draft, day: known, who: name, kept: (entry) => void kept(entry), left });
}

async function begin(kind: string): Promise<void> {
  await write(newDraft(kind, knownNow(day, preparedAt, await entries()), name, site));
}

/** An entry not sent yet is opened again; one that was sent meanwhile belongs to the service. */
async function correct(id: string): Promise<void> {
  const entry = (await entries()).find((one) => one.id === id);
  if (entry?.state === 'unsent') await write(draftOf(entry));
  else await home();
}

async function home(): Promise<void> {
  if (writing !== null) return;
  const all = await entries();
  if (writing !== null) return;
  place.replaceChildren(
    el('h1', {}, say('title'), day === null || day.group === '-' ? '' : ` · ${day.group}`),
    ...(window.isSecureContext
      ? []
      : [el('p', { class: 'refusal', role: 'alert', id: 'insecure' }, say('insecure'))]),
    state(all),
    preparing(),
    ...sheets(),
    ...occasions.map(kindsOf),
    ...(all.length === 0 ? [] : [el('h2', {}, say('list'))]),
    el('ul', { id: 'entries' }, ...all.map((entry) => entryLine(entry, day, (id) => void correct(id)))),
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
      el('a', { href: `/language/${language()}?to=/` }, say('desk')),
    ),
  );
}

function kindsOf(occasion: (typeof occasions)[number]): HTMLElement {
  const buttons = forms
    .filter((form) => form.occasion === occasion)
    .map(({ kind, word }) =>
      el('button', { type: 'button', id: `new-${kind}`, onclick: () => void begin(kind) }, say(word)),
    );
  return el('section', { class: 'kinds' }, el('h2', {}, say(`on-${occasion}`)), ...buttons);
}

function state(all: readonly Kept[]): HTMLElement {
  const unsent = all.filter((entry) => entry.state === 'unsent').length;
  const button = el('button', { type: 'button', id: 'send', onclick: () => void send() }, say('send-now'));
  const said =
    unsent > 0
      ? `${unsent} ${say(unsent === 1 ? 'unsent-one' : 'unsent')}`
      : say(all.length === 0 ? 'nothing-yet' : 'all-sent');
  const waits = unsent > 0 || trouble !== '';
  return el(
    'section',
    { id: 'state', class: waits ? 'unsent' : 'clear', 'aria-live': 'polite' },
    el('p', {}, el('strong', {}, said)),
    ...(navigator.onLine ? [] : [el('p', {}, say('offline'))]),
    ...(trouble === '' ? [] : [el('p', { class: 'refusal', role: 'alert' }, trouble)]),
    ...(trouble === say('signed-out')
      ? [el('a', { class: 'button', href: '/sign-in?to=/field' }, say('sign-in'))]
      : []),
    ...(unsent > 0 ? [button] : []),
    ...(unsent === 0 && all.length > 0
      ? [el('p', {}, el('a', { href: `/language/${language()}?to=/` }, say('see-season')))]
      : []),
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

/** What is to be done before leaving: it stands out until it was done today. */
function preparing(): HTMLElement {
  const spoken = language() === 'fr' ? 'fr-CA' : 'en-CA';
  const at = new Date(preparedAt);
  const today = preparedAt !== '' && at.toDateString() === new Date().toDateString();
  const said =
    preparedAt === ''
      ? say('prepare-first')
      : `${say('prepared')}${colon()} ${at.toLocaleString(spoken, today ? { timeStyle: 'short' } : { dateStyle: 'medium', timeStyle: 'short' })}`;
  const button = { type: 'button', id: 'prepare', ...(today ? { class: 'quiet' } : {}) };
  return el(
    'section',
    {},
    el('p', { id: 'prepared' }, said),
    el('button', { ...button, onclick: () => void prepare() }, say(today ? 'prepare-again' : 'prepare')),
  );
}

function myName(): HTMLElement {
  const input = el('input', { value: name, autocomplete: 'name', id: 'name' });
  input.addEventListener('change', () => void called(input.value.trim()));
  return el('label', {}, say('who-am-i'), input);
}

function switchLanguage(): void {
  speak(language() === 'en' ? 'fr' : 'en');
  void keepValue('language', language()).then(home);
}
