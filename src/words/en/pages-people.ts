import type { PeoplePageWords } from '../../pages/people-words.js';
import { longDay, whole } from '../format.js';
import { byWhom } from '../somebody.js';

const day = (at: number) => longDay('en', at);
const counted = (count: number, one: string, many: string) =>
  count === 1 ? `one ${one}` : `${whole('en', count)} ${many}`;

const did: Readonly<Record<string, string>> = {
  'signed-in': 'signed in',
  'sign-in-refused': 'sign-in refused',
  'session-ended': 'signed out',
  'sessions-ended': 'signed somebody out everywhere',
  'account-made': 'account made',
  'account-removed': 'account taken away',
  'password-set': 'password set',
  'role-set': 'role set',
  'token-made': 'API token made',
  'token-ended': 'API token ended',
  invited: 'invitation made',
  'invitation-ended': 'invitation ended',
  'calendar-changed': 'calendar address changed',
};

const errors: Readonly<Record<number, string>> = {
  403: 'Not allowed',
  404: 'Not found',
  408: 'Too slow',
  409: 'Something else stands by now',
  412: 'Something else stands by now',
  413: 'Too large',
  429: 'Wait a little',
  500: 'Something went wrong here',
  503: 'Not possible just now',
  507: 'The disk is full',
};

/** Accounts, tokens, what happened, the calendar and errors, in English. */
export const pagesPeople: { [Code in keyof PeoplePageWords]: (words: PeoplePageWords[Code]) => string } = {
  'page-people-title': () => 'Accounts',
  'page-people-answer': ({ accounts, coordinators, invitations }) =>
    `${counted(accounts, 'person has', 'people have')} an account, ${counted(coordinators, 'of them coordinates', 'of them coordinate')}; ${invitations === 0 ? 'no invitation is open' : `${counted(invitations, 'invitation is', 'invitations are')} open`}.`.replace(
      /^one/,
      'One',
    ),
  'page-people-nobody': () =>
    'Nobody has an account: whoever uses this computer may change everything. The first account must be a coordinator’s; from then on people sign in.',
  'page-people-link': () => 'Accounts',
  'page-people-role': () => 'Role',
  'page-people-since': () => 'since',
  'page-people-change': () => 'Change',
  'page-people-set-role': ({ name }) => `Set the role of ${name}`,
  'page-people-set-password': ({ name }) => `Set the password of ${name}, and sign them out everywhere`,
  'page-people-remove': ({ name }) => `Take the account ${name} away`,
  'page-people-end-sessions': ({ name, sessions }) =>
    `Sign ${name} out everywhere (${counted(sessions, 'place', 'places')})`,
  'page-people-add': () => 'Make an account',
  'page-people-add-do': () => 'Make it',
  'page-people-first': () => 'Make the first account',
  'page-people-invite': () => 'Invite somebody',
  'page-people-invite-what': () =>
    'A link by which one person makes their own account, once, within 14 days. Send it to that person only.',
  'page-people-invite-do': () => 'Make a link',
  'page-people-invite-made': ({ role, ends }) =>
    `The invitation (${role}) holds until ${day(ends)}. Its link is shown this once:`,
  'page-people-invite-standing': ({ role, by, made, ends }) =>
    `${role}, made by ${byWhom('en', by)} on ${day(made)}, holds until ${day(ends)}`,
  'page-people-end': () => 'End it',
  'page-people-may': ({ role }) =>
    ({
      coordinator: 'coordinator: everything',
      crew: 'crew: load downloads, add observations and tallies, acknowledge',
      reader: 'reader: look only',
    })[role],
  'page-tokens-title': () => 'API tokens',
  'page-tokens-answer': ({ tokens, over }) =>
    tokens === 0
      ? 'No program has a token.'
      : `${whole('en', tokens)} API ${tokens === 1 ? 'token stands' : 'tokens stand'}${over === 0 ? '' : `, ${whole('en', over)} past their end`}.`,
  'page-tokens-what': () =>
    'A program that reads or loads shows its token with every request. Give it the least role that does, and an end.',
  'page-tokens-add': () => 'Make a token',
  'page-tokens-for': () => 'What it is for',
  'page-tokens-ends': () => 'Last day',
  'page-tokens-do': () => 'Make the token',
  'page-tokens-made': ({ name }) => `The token “${name}” is shown this once; keep it like a password:`,
  'page-tokens-over': () => 'past its end',
  'page-tokens-by': () => 'Made by',
  'page-audit-title': () => 'What happened',
  'page-audit-answer': ({ shown }) =>
    `The newest ${whole('en', shown)} entries: who signed in, who was refused, who changed accounts.`,
  'page-audit-none': () => 'Nothing has happened yet.',
  'page-audit-when': () => 'When',
  'page-audit-who': () => 'Who',
  'page-audit-what': () => 'What',
  'page-audit-did': ({ did: code }) => did[code] ?? code,
  'page-audit-more': () => 'Show older entries',
  'page-copy': () => 'Copy',
  'page-copied': () => 'Copied',
  'page-calendars-title': () => 'The calendar',
  'page-calendars-link': () => 'Calendar',
  'page-calendars-answer': ({ box }) =>
    `The windows of ${box === null ? 'every box' : `box ${box}`} and the downloads due, in your own calendar; a window that moves, moves there too.`,
  'page-calendars-box': () => 'Box',
  'page-calendars-every-box': () => 'every box',
  'page-calendars-language': () => 'Language',
  'page-calendars-choose': () => 'Show the address',
  'page-calendars-address': () => 'Address to subscribe to',
  'page-calendars-who': () =>
    'Whoever knows the address may read this calendar, without signing in. Where it got into wrong hands, change it.',
  'page-calendars-here-only': () =>
    'This service answers on this computer only: the calendar program of this computer can subscribe. For phones, take the file, or run the service on a small server with HTTPS.',
  'page-calendars-file': () => 'The calendar as a file, as it stands today',
  'page-calendars-change': () => 'Change the address',
  'page-calendars-change-what': () =>
    'The old address is void at once: everybody who subscribed must be given the new one.',
  'page-calendars-change-do': () => 'Change it',
  'page-calendars-changed': () => 'The address was changed; the one below holds now.',
  'page-error-title': ({ status }) => errors[status] ?? 'That could not be done',
  'page-error-back': () => 'Go back',
  'page-error-other-account': () => 'Your account',
};
