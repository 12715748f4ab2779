import type { Role } from '../http/roles.js';

type Nothing = Record<never, never>;

/** Accounts, invitations, API tokens, what happened; the calendar's address; pages that say an error. */
export interface PeoplePageWords {
  'page-people-title': Nothing;
  'page-people-answer': {
    readonly accounts: number;
    readonly coordinators: number;
    readonly invitations: number;
  };
  'page-people-nobody': Nothing;
  'page-people-link': Nothing;
  'page-people-role': Nothing;
  'page-people-since': Nothing;
  'page-people-change': Nothing;
  'page-people-set-role': { readonly name: string };
  'page-people-set-password': { readonly name: string };
  'page-people-remove': { readonly name: string };
  'page-people-end-sessions': { readonly name: string; readonly sessions: number };
  'page-people-add': Nothing;
  'page-people-add-do': Nothing;
  'page-people-first': Nothing;
  'page-people-invite': Nothing;
  'page-people-invite-what': Nothing;
  'page-people-invite-do': Nothing;
  'page-people-invite-made': { readonly role: Role; readonly ends: number };
  'page-people-invite-standing': {
    readonly role: Role;
    readonly by: string;
    readonly made: number;
    readonly ends: number;
  };
  'page-people-end': Nothing;
  'page-people-may': { readonly role: Role };
  'page-tokens-title': Nothing;
  'page-tokens-answer': { readonly tokens: number; readonly over: number };
  'page-tokens-what': Nothing;
  'page-tokens-add': Nothing;
  'page-tokens-for': Nothing;
  'page-tokens-ends': Nothing;
  'page-tokens-do': Nothing;
  'page-tokens-made': { readonly name: string };
  'page-tokens-over': Nothing;
  'page-tokens-by': Nothing;
  'page-audit-title': Nothing;
  'page-audit-answer': { readonly shown: number };
  'page-audit-none': Nothing;
  'page-audit-when': Nothing;
  'page-audit-who': Nothing;
  'page-audit-what': Nothing;
  'page-audit-did': { readonly did: string };
  'page-audit-more': Nothing;
  'page-copy': Nothing;
  'page-copied': Nothing;
  'page-calendars-title': Nothing;
  'page-calendars-link': Nothing;
  'page-calendars-answer': { readonly box: string | null };
  'page-calendars-box': Nothing;
  'page-calendars-every-box': Nothing;
  'page-calendars-language': Nothing;
  'page-calendars-choose': Nothing;
  'page-calendars-address': Nothing;
  'page-calendars-who': Nothing;
  'page-calendars-here-only': Nothing;
  'page-calendars-file': Nothing;
  'page-calendars-change': Nothing;
  'page-calendars-change-what': Nothing;
  'page-calendars-change-do': Nothing;
  'page-calendars-changed': Nothing;
  'page-error-title': { readonly status: number };
  'page-error-back': Nothing;
  'page-error-other-account': Nothing;
}
