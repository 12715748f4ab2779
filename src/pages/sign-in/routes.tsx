import { type Context, Hono } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Environment } from '../../http/environment.js';
import { SESSION } from '../../http/middleware/person.js';
import type { Role } from '../../http/roles.js';
import { Csrf, Frame } from '../parts/frame.js';
import { Refusal, refusedHere } from '../parts/refusal.js';
import { doorView, type View, viewOf } from '../view.js';
import { deviceNamed } from './device.js';

const DAY = 86_400_000;

/** The pages of sign-in; what their forms post is src/http/sign-in's. */
export function signInPages(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/sign-in', (c) => c.html(signInPage(c)))
    .get('/invitation/:secret', (c) => c.html(invitationPage(c)))
    .get('/account', async (c) => c.html(await accountPage(c)));
}

export function signInPage(c: Context<Environment>, refusal?: string) {
  const to = c.var.form.field('to') || (c.req.query('to') ?? '/');
  return <SignInPage view={doorView(c)} to={to} name={c.var.form.field('name')} refusal={refusal} />;
}

/** @throws HttpRefused 404 where the invitation was used, has ended or never was. */
export function invitationPage(c: Context<Environment>, refusal?: string) {
  const secret = c.req.param('secret') ?? '';
  const { by, role } = c.var.accounts.invitation(secret);
  return <InvitationPage view={doorView(c)} secret={secret} by={by} role={role} refusal={refusal} />;
}

interface Refused {
  readonly refusal: string | undefined;
}

function SignInPage({ view, to, name, refusal }: Refused & { view: View; to: string; name: string }) {
  const { say } = view;
  return (
    <Frame view={view} title={say('page-sign-in-title', {})} bare cautions={false}>
      <Refusal text={refusal} />
      <form method="post" action="/sign-in" class="sheet">
        <Csrf view={view} />
        <input type="hidden" name="to" value={to} />
        <div class="fields">
          <label>
            {say('page-sign-in-name', {})}
            <input {...refusedHere(refusal)} name="name" value={name} autocomplete="username" required />
          </label>
          <Password
            label={say('page-sign-in-password', {})}
            name="password"
            known="current-password"
            refusal={refusal}
          />
        </div>
        <button type="submit">{say('page-sign-in-do', {})}</button>
      </form>
    </Frame>
  );
}

function InvitationPage(props: Refused & { view: View; secret: string; by: string; role: Role }) {
  const { view, secret, by, role, refusal } = props;
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-invitation-title', {})}
      answer={say('page-invitation-answer', { by, role })}
      bare
      cautions={false}
    >
      <Refusal text={refusal} />
      <form method="post" action={`/invitation/${encodeURIComponent(secret)}`} class="sheet">
        <Csrf view={view} />
        <div class="fields">
          <label>
            {say('page-sign-in-name', {})}
            <input {...refusedHere(refusal)} name="name" autocomplete="username" required />
          </label>
          <Password
            label={say('page-sign-in-password', {})}
            name="password"
            known="new-password"
            refusal={refusal}
          />
        </div>
        <button type="submit">{say('page-invitation-do', {})}</button>
      </form>
    </Frame>
  );
}

export async function accountPage(c: Context<Environment>, refusal?: string) {
  const view = await viewOf(c);
  const { say } = view;
  const { person, accounts } = c.var;
  const here = getCookie(c, SESSION) ?? '';
  return (
    <Frame
      view={view}
      title={say('page-account-title', {})}
      answer={
        view.open
          ? say('page-open', {})
          : say('page-account-answer', { name: person.name, role: say(`http-role-${person.role}`, {}) })
      }
      cautions={false}
    >
      <Refusal text={refusal} />
      {person.by !== 'session' ? null : (
        <>
          <form method="post" action="/account/password" class="sheet">
            <h2>{say('page-account-password', {})}</h2>
            <Csrf view={view} />
            <input type="hidden" name="to" value="/account" />
            <div class="fields">
              <Password
                label={say('page-account-old', {})}
                name="old"
                known="current-password"
                refusal={refusal}
              />
              <Password
                label={say('page-account-new', {})}
                name="password"
                known="new-password"
                refusal={refusal}
              />
            </div>
            <button type="submit">{say('page-keep', {})}</button>
          </form>
          <h2>{say('page-account-sessions', {})}</h2>
          <ul>
            {accounts.sessions(person.name).map((session) => (
              <li>
                {view.long(session.since / DAY)}, {deviceNamed(view, session.agent)}
                {accounts.isSession(session, here) ? (
                  <strong> ({say('page-account-this', {})})</strong>
                ) : null}
                <form method="post" action={`/account/sessions/${encodeURIComponent(session.id)}/end`}>
                  <Csrf view={view} />
                  <input type="hidden" name="to" value="/account" />
                  <button type="submit" class="link">
                    {say('page-account-end', {})}
                  </button>
                </form>
              </li>
            ))}
          </ul>
        </>
      )}
    </Frame>
  );
}

interface PasswordProps {
  readonly label: string;
  readonly name: 'password' | 'old';
  readonly known: 'current-password' | 'new-password';
  readonly refusal: string | undefined;
}

function Password({ label, name, known, refusal }: PasswordProps) {
  return (
    <label>
      {label}
      <input {...refusedHere(refusal)} type="password" name={name} autocomplete={known} required />
    </label>
  );
}
