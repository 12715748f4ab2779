import type { MessagesPageWords } from '../../messages/words.js';
import { longDay, whole } from '../format.js';
import { byWhom, whoFirst } from '../somebody.js';

const n = (count: number) => whole('en', count);
const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const subjects = {
  spells: 'spells that harm eggs',
  windows: 'windows that move',
  stages: 'stages probably reached',
  lifting: 'the lifting window nears',
  silence: 'stations and feeds fallen silent',
};
const ways: Readonly<Record<string, string>> = {
  email: 'e-mail',
  webhook: 'webhook',
  mailbox: 'mailbox of the demonstration',
  none: 'none',
};
const states: Readonly<Record<string, string>> = {
  sending: 'being sent',
  delivered: 'delivered',
  failed: 'refused for good',
  'given-up': 'given up',
  'no-address': 'no address',
  unsubscribed: 'unsubscribed',
};
const feedStates: Readonly<Record<string, string>> = {
  never: 'not asked yet',
  fresh: 'brought something new',
  unchanged: 'nothing new',
  refused: 'not a download',
  failing: 'failing: tried again with growing pauses',
};

/** The page of messages and feeds, in English. */
export const pagesMessages: {
  [Code in keyof MessagesPageWords]: (words: MessagesPageWords[Code]) => string;
} = {
  'page-nav-messages': () => 'Messages',
  'page-messages-title': () => 'Messages',
  'page-messages-answer': ({ people, waiting, failed }) =>
    [
      people === 1
        ? 'One person is told when something happens.'
        : `${n(people)} people are told when something happens.`,
      waiting === 0 ? 'Nothing waits to be sent.' : `${n(waiting)} still to be delivered.`,
      ...(failed === 0 ? [] : [`${n(failed)} did not arrive.`]),
    ].join(' '),
  'page-messages-nobody': () => 'Nobody is told of anything yet: write down who should be.',
  'page-messages-no-server': () =>
    'No mail server is named in the settings (smtpHost, smtpFrom): e-mail waits until one is. Webhooks go out.',
  'page-messages-people': () => 'Who is told',
  'page-messages-add': () => 'Add a person',
  'page-messages-change': ({ name }) => `Change ${name}`,
  'page-messages-save': () => 'Save',
  'page-messages-remove': () => 'Take away',
  'page-messages-test': () => 'Send a test message',
  'page-messages-name': () => 'Name',
  'page-messages-language': () => 'Language',
  'page-messages-email': () => 'E-mail',
  'page-messages-webhook': () => 'Webhook address',
  'page-messages-webhook-what': () =>
    'For programs: each message is posted there as JSON, signed (Underice-Signature, HMAC-SHA256 over timestamp, full stop and body).',
  'page-messages-secret': () => 'Secret of the webhook',
  'page-messages-weekly': () => 'Weekly summary',
  'page-messages-weekday': ({ weekday }) => weekdays[weekday - 1] ?? '',
  'page-messages-never': () => 'none',
  'page-messages-quiet': () => 'Quiet hours',
  'page-messages-quiet-what': () =>
    'What can wait waits until they end. A measured lethal spell does not wait.',
  'page-messages-quiet-from': () => 'Quiet from',
  'page-messages-quiet-to': () => 'Quiet to',
  'page-messages-subjects': () => 'Told of',
  'page-messages-subject': ({ subject }) => subjects[subject],
  'page-messages-unsubscribed': ({ day }) =>
    `Unsubscribed on ${longDay('en', day)}: nothing goes out. Saving subscribes again.`,
  'page-messages-list': () => 'Deliveries',
  'page-messages-none': () => 'No message has been written yet.',
  'page-messages-when': () => 'Written',
  'page-messages-who': () => 'To',
  'page-messages-what': () => 'Message',
  'page-messages-way': () => 'By',
  'page-messages-state': () => 'State',
  'page-messages-last': () => 'Last answer',
  'page-messages-way-name': ({ channel }) => ways[channel] ?? channel,
  'page-messages-state-name': ({ state, tries, next }) =>
    state === 'waiting'
      ? tries === 0
        ? 'waits'
        : `tried ${n(tries)} times, again ${next}`
      : (states[state] ?? state),
  'page-messages-seen': ({ by }) => `Seen by ${byWhom('en', by)}`,
  'page-messages-gone': () => 'taken away',
  'page-feeds-title': () => 'Feeds',
  'page-feeds-none': () =>
    'No feed is stated. Under feeds in settings.yaml: a folder to watch, or an address to ask, with a station.',
  'page-feeds-what': () => 'Feed',
  'page-feeds-from': () => 'From',
  'page-feeds-fresh': () => 'Last new reading came',
  'page-feeds-tried': () => 'Last asked',
  'page-feeds-next': () => 'Next',
  'page-feeds-state': ({ state }) => feedStates[state] ?? state,
  'page-feeds-push': () =>
    'Stations can also send their readings: POST /api/v1/readings with an API token of the crew.',
  'page-mailbox-title': () => 'Mailbox of the demonstration',
  'page-mailbox-what': () =>
    'Nothing here left this computer: people and addresses are invented. Each message is shown as it would arrive.',
  'page-mailbox-none': () => 'Nothing has arrived yet: look again in a few seconds.',
  'page-mailbox-link': () => 'Read the messages in the mailbox of the demonstration',
  'page-mailbox-from': () => 'From',
  'page-mailbox-to': () => 'To',
  'page-mailbox-subject': () => 'Subject',
  'page-mailbox-plain': () => 'As plain text',
  'page-mailbox-html': () => 'Open it as a mail program shows it',
  'page-letter-title': () => 'A message',
  'page-letter-seen-do': () => 'I have seen it',
  'page-letter-seen': ({ by }) => `${whoFirst('en', by)} has seen this message.`,
  'page-unsubscribe-title': () => 'Unsubscribe',
  'page-unsubscribe-ask': ({ name }) =>
    `${name}: no message of this group will be sent to you any more, not of lethal spells either.`,
  'page-unsubscribe-do': () => 'Unsubscribe',
  'page-unsubscribe-done': () => 'You are unsubscribed. Your coordinator can write you down again.',
  'page-unsubscribe-unknown': () =>
    'This link is not known, or the person was taken away: nothing is sent to it.',
};
