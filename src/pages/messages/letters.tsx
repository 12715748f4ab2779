import type { Letter } from '../../messages/index.js';
import { dayAndTime } from '../../words/index.js';
import { Csrf, Frame } from '../parts/frame.js';
import type { View } from '../view.js';
import { LetterText } from './letter-text.js';

export interface MailShown {
  readonly id: string;
  readonly at: number;
  readonly to: string;
  readonly from: string;
  readonly letter: Letter;
  readonly seenBy: string | null;
}

/** The demonstration's mailbox: every message as it would arrive, marked as what it is. */
export function MailboxPage({
  view,
  mails,
  zone,
}: {
  view: View;
  mails: readonly MailShown[];
  zone: string;
}) {
  const { say, language } = view;
  return (
    <Frame
      view={view}
      current="messages"
      title={say('page-mailbox-title', {})}
      answer={mails.length === 0 ? say('page-mailbox-none', {}) : say('page-mailbox-what', {})}
    >
      {mails.map(({ id, at, to, from, letter, seenBy }) => (
        <article class="sheet mail" lang={letter.language === 'fr' ? 'fr-CA' : 'en-CA'}>
          <h2>{letter.subject}</h2>
          <dl class="mail-head" lang={language === 'fr' ? 'fr-CA' : 'en-CA'}>
            <dt>{say('page-mailbox-from', {})}</dt>
            <dd>{from}</dd>
            <dt>{say('page-mailbox-to', {})}</dt>
            <dd>{to}</dd>
            <dt>{say('page-messages-when', {})}</dt>
            <dd>{dayAndTime(language, at, zone)}</dd>
            <dt>Message-ID</dt>
            <dd class="wrap">{letter.messageId}</dd>
          </dl>
          <p class="no-print" lang={language === 'fr' ? 'fr-CA' : 'en-CA'}>
            <a href={`/letters/${id}/mail`}>{say('page-mailbox-html', {})}</a>
            {seenBy === null ? '' : ` · ${say('page-messages-seen', { by: seenBy })}`}
          </p>
          <details>
            <summary lang={language === 'fr' ? 'fr-CA' : 'en-CA'}>{say('page-mailbox-plain', {})}</summary>
            <pre class="wrap">{letter.text}</pre>
          </details>
        </article>
      ))}
    </Frame>
  );
}

/** Where the link of a message leads: what it said, and a button for having seen it. */
export function LetterPage({
  view,
  id,
  letter,
  seenBy,
}: {
  view: View;
  id: string;
  letter: Letter;
  seenBy: string | null;
}) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-letter-title', {})}
      answer={letter.subject}
      cautions={false}
      oneLanguage
      bare
    >
      {seenBy === null ? (
        <form method="post" action={`/letters/${id}`}>
          <Csrf view={view} />
          <button type="submit">{say('page-letter-seen-do', {})}</button>
        </form>
      ) : (
        <p class="note">{say('page-letter-seen', { by: seenBy })}</p>
      )}
      <LetterText view={view} letter={letter} chart={`/letters/${id}/chart.png`} />
    </Frame>
  );
}

interface UnsubscribeProps {
  readonly view: View;
  /** null: the link is not known. */
  readonly name: string | null;
  readonly done: boolean;
  readonly token: string;
}

export function UnsubscribePage({ view, name, done, token }: UnsubscribeProps) {
  const { say } = view;
  const answer =
    name === null
      ? say('page-unsubscribe-unknown', {})
      : done
        ? say('page-unsubscribe-done', {})
        : say('page-unsubscribe-ask', { name });
  return (
    <Frame view={view} title={say('page-unsubscribe-title', {})} answer={answer} bare cautions={false}>
      {name === null || done ? null : (
        <form method="post" action={`/unsubscribe/${token}`}>
          <button type="submit">{say('page-unsubscribe-do', {})}</button>
        </form>
      )}
    </Frame>
  );
}
