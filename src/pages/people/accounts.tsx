import type { Role } from '../../http/roles.js';
import type { AccountRow, InvitationRow } from '../../http/sign-in/accounts.js';
import { Csrf, Frame, SameAs } from '../parts/frame.js';
import { Refusal } from '../parts/refusal.js';
import { ToCopy } from '../parts/to-copy.js';
import type { View } from '../view.js';
import { PeoplePlaces } from './places.js';
import { RoleField } from './roles.js';

const DAY = 86_400_000;

/** An invitation just made: its link is known now and never again. */
export interface Invited {
  readonly link: string;
  readonly role: Role;
  readonly ends: number;
}

interface AccountsProps {
  readonly view: View;
  readonly accounts: readonly AccountRow[];
  readonly sessions: (name: string) => number;
  readonly invitations: readonly InvitationRow[];
  readonly invited?: Invited;
  readonly refusal?: string;
}

/** Who may sign in, and as what. */
export function AccountsPage(props: AccountsProps) {
  const { view, accounts, invitations, invited, refusal } = props;
  const { say } = view;
  const coordinators = accounts.filter(({ role }) => role === 'coordinator').length;
  return (
    <Frame
      view={view}
      title={say('page-people-title', {})}
      answer={
        accounts.length === 0
          ? say('page-people-nobody', {})
          : say('page-people-answer', {
              accounts: accounts.length,
              coordinators,
              invitations: invitations.length,
            })
      }
      scripts={invited === undefined ? [] : ['copy.js']}
      cautions={false}
    >
      <Refusal text={refusal} />
      {invited === undefined ? null : (
        <section class="note">
          <p>{say('page-people-invite-made', { role: invited.role, ends: invited.ends / DAY })}</p>
          <ToCopy view={view} label={say('page-invitation-title', {})} text={invited.link} />
        </section>
      )}
      {accounts.map((account) => (
        <Account view={view} account={account} sessions={props.sessions(account.name)} />
      ))}
      <NewAccount view={view} first={accounts.length === 0} />
      {accounts.length === 0 ? null : <Invitations view={view} invitations={invitations} />}
      <PeoplePlaces view={view} here="/accounts" />
      <SameAs view={view} json="/api/v1/accounts" />
    </Frame>
  );
}

function Account({ view, account, sessions }: { view: View; account: AccountRow; sessions: number }) {
  const { say } = view;
  const { name, role, made } = account;
  const at = `/accounts/${encodeURIComponent(name)}`;
  return (
    <section class="sheet">
      <h2>{name}</h2>
      <p>
        {say('page-people-may', { role })}; {say('page-people-since', {})} {view.long(made / DAY)}
      </p>
      <details>
        <summary aria-label={`${say('page-people-change', {})} ${name}`}>
          {say('page-people-change', {})}
        </summary>
        <form method="post" action={`${at}/role`}>
          <Csrf view={view} />
          <RoleField view={view} chosen={role} brief />
          <button type="submit" class="quiet">
            {say('page-people-set-role', { name })}
          </button>
        </form>
        <form method="post" action={`${at}/password`}>
          <Csrf view={view} />
          <label>
            {say('page-account-new', {})}
            <input type="password" name="password" autocomplete="new-password" required />
          </label>
          <button type="submit" class="quiet">
            {say('page-people-set-password', { name })}
          </button>
        </form>
        {sessions === 0 ? null : (
          <form method="post" action={`${at}/sign-out`}>
            <Csrf view={view} />
            <button type="submit" class="quiet">
              {say('page-people-end-sessions', { name, sessions })}
            </button>
          </form>
        )}
        <form method="post" action={`${at}/remove`}>
          <Csrf view={view} />
          <button type="submit" class="quiet">
            {say('page-people-remove', { name })}
          </button>
        </form>
      </details>
    </section>
  );
}

function NewAccount({ view, first }: { view: View; first: boolean }) {
  const { say } = view;
  return (
    <form method="post" action="/accounts" class="sheet">
      <h2>{say(first ? 'page-people-first' : 'page-people-add', {})}</h2>
      <Csrf view={view} />
      <div class="fields">
        <label>
          {say('page-sign-in-name', {})}
          <input name="name" autocomplete="off" maxlength={60} required />
        </label>
        <label>
          {say('page-sign-in-password', {})}
          <input type="password" name="password" autocomplete="new-password" required />
        </label>
        {first ? (
          <input type="hidden" name="role" value="coordinator" />
        ) : (
          <RoleField view={view} chosen="crew" />
        )}
      </div>
      <button type="submit">{say('page-people-add-do', {})}</button>
    </form>
  );
}

function Invitations({ view, invitations }: { view: View; invitations: readonly InvitationRow[] }) {
  const { say } = view;
  return (
    <section class={invitations.length === 0 ? 'sheet no-print' : 'sheet'}>
      <h2>{say('page-people-invite', {})}</h2>
      <p class="no-print">{say('page-people-invite-what', {})}</p>
      <form method="post" action="/accounts/invitations">
        <Csrf view={view} />
        <div class="fields">
          <RoleField view={view} chosen="crew" />
        </div>
        <button type="submit">{say('page-people-invite-do', {})}</button>
      </form>
      {invitations.length === 0 ? null : (
        <ul>
          {invitations.map(({ id, role, by, made, ends }) => (
            <li>
              {say('page-people-invite-standing', { role, by, made: made / DAY, ends: ends / DAY })}
              <form method="post" action={`/accounts/invitations/${encodeURIComponent(id)}/end`}>
                <Csrf view={view} />
                <button type="submit" class="link">
                  {say('page-people-end', {})}
                </button>
              </form>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
