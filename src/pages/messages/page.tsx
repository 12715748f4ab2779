import type { Recipient } from '../../messages/index.js';
import { subjects } from '../../messages/index.js';
import { languages } from '../../words/index.js';
import { Csrf, Frame, SameAs } from '../parts/frame.js';
import { Refusal } from '../parts/refusal.js';
import { ToCopy } from '../parts/to-copy.js';
import { mayEdit, type View } from '../view.js';
import { Deliveries, type DeliveryRow } from './deliveries.js';
import { type FeedLine, FeedTable } from './feeds.js';

const DAY = 86_400_000;
const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;

interface MessagesProps {
  readonly view: View;
  readonly people: readonly Recipient[];
  readonly deliveries: readonly DeliveryRow[];
  readonly feeds: readonly FeedLine[];
  readonly mailbox: boolean;
  readonly mailServer: boolean;
  readonly zone: string;
  readonly refusal?: string;
}

/** Who is told what, what came of each message, and where the feeds stand. */
export function MessagesPage(props: MessagesProps) {
  const { view, people, deliveries, feeds, mailbox } = props;
  const { say } = view;
  const told = people.filter(({ unsubscribed }) => unsubscribed === null).length;
  const of = (...states: string[]) => deliveries.filter(({ state }) => states.includes(state)).length;
  const waiting = of('waiting', 'sending');
  const failed = of('failed', 'given-up', 'no-address');
  return (
    <Frame
      view={view}
      current="messages"
      title={say('page-messages-title', {})}
      answer={
        told === 0
          ? say('page-messages-nobody', {})
          : say('page-messages-answer', { people: told, waiting, failed })
      }
      scripts={['copy.js']}
    >
      <Refusal text={props.refusal} />
      {mailbox ? (
        <p class="note no-print">
          <a href="/messages/mailbox">{say('page-mailbox-link', {})}</a>
        </p>
      ) : props.mailServer ? null : (
        <p class="note">{say('page-messages-no-server', {})}</p>
      )}
      {mayEdit(view) ? (
        <section>
          <h2>{say('page-messages-people', {})}</h2>
          {people.map((person) => (
            <Person view={view} person={person} />
          ))}
          <details open={people.length === 0}>
            <summary>{say('page-messages-add', {})}</summary>
            <PersonForm view={view} person={null} />
          </details>
        </section>
      ) : null}
      <Deliveries view={view} rows={deliveries} zone={props.zone} />
      <FeedTable view={view} feeds={feeds} zone={props.zone} />
      <SameAs view={view} json="/api/v1/messages" csv="/api/v1/messages.csv" />
    </Frame>
  );
}

function Person({ view, person }: { view: View; person: Recipient }) {
  const { say } = view;
  const at = `/messages/people/${person.id}`;
  return (
    <details class="person">
      <summary>
        {person.name}
        <span class="small">
          {` ${[person.email, person.webhook].filter((one) => one !== null).join(', ') || say('page-messages-way-name', { channel: 'none' })}`}
        </span>
      </summary>
      {person.unsubscribed === null ? (
        <form method="post" action={`${at}/test`}>
          <Csrf view={view} />
          <button type="submit" class="quiet">
            {say('page-messages-test', {})}
          </button>
        </form>
      ) : (
        <p class="note">
          {say('page-messages-unsubscribed', { day: Math.floor(person.unsubscribed / DAY) })}
        </p>
      )}
      <PersonForm view={view} person={person} />
      {person.webhook === null ? null : (
        <ToCopy view={view} label={say('page-messages-secret', {})} text={person.secret} />
      )}
      <form method="post" action={`${at}/remove`}>
        <Csrf view={view} />
        <button
          type="submit"
          class="link"
          aria-label={view.named(say('page-messages-remove', {}), person.name)}
        >
          {say('page-messages-remove', {})}
        </button>
      </form>
    </details>
  );
}

function PersonForm({ view, person }: { view: View; person: Recipient | null }) {
  const { say } = view;
  return (
    <form
      method="post"
      action={person === null ? '/messages/people' : `/messages/people/${person.id}`}
      class="sheet"
      aria-label={
        person === null ? say('page-messages-add', {}) : say('page-messages-change', { name: person.name })
      }
    >
      <Csrf view={view} />
      <div class="fields">
        <label>
          {say('page-messages-name', {})}
          <input name="name" maxlength={80} required autocomplete="off" value={person?.name ?? ''} />
        </label>
        <label>
          {say('page-messages-language', {})}
          <select name="language">
            {languages.map((language) => (
              <option value={language} selected={language === (person?.language ?? view.language)}>
                {language === 'fr' ? 'français' : 'English'}
              </option>
            ))}
          </select>
        </label>
        <label>
          {say('page-messages-email', {})}
          <input name="email" type="email" maxlength={254} autocomplete="off" value={person?.email ?? ''} />
        </label>
        <label>
          {say('page-messages-weekly', {})}
          <select name="weekly">
            <option value="">{say('page-messages-never', {})}</option>
            {WEEKDAYS.map((weekday) => (
              <option value={String(weekday)} selected={person?.weekly === weekday}>
                {say('page-messages-weekday', { weekday })}
              </option>
            ))}
          </select>
        </label>
        <label>
          {say('page-messages-quiet-from', {})}
          <input
            name="quietFrom"
            type="time"
            value={person === null ? '21:00' : (person.quiet?.from ?? '')}
          />
        </label>
        <label>
          {say('page-messages-quiet-to', {})}
          <input name="quietTo" type="time" value={person === null ? '07:00' : (person.quiet?.to ?? '')} />
        </label>
        <label>
          {say('page-messages-webhook', {})}
          <input
            name="webhook"
            type="url"
            maxlength={2000}
            autocomplete="off"
            value={person?.webhook ?? ''}
          />
        </label>
      </div>
      <p class="small">{say('page-messages-quiet-what', {})}</p>
      <p class="small">{say('page-messages-webhook-what', {})}</p>
      <fieldset>
        <legend>{say('page-messages-subjects', {})}</legend>
        {subjects.map((subject) => (
          <label class="choice">
            <input
              type="checkbox"
              name="subjects"
              value={subject}
              checked={person?.subjects.includes(subject) ?? true}
            />
            {` ${say('page-messages-subject', { subject })}`}
          </label>
        ))}
      </fieldset>
      <button type="submit">{say('page-messages-save', {})}</button>
    </form>
  );
}
