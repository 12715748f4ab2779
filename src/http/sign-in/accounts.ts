import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { HttpRefused } from '../refused.js';
import type { Person, Role } from '../roles.js';
import { type AccountsKept, readAccounts, writeAccounts } from './accounts-file.js';
import { Audit } from './audit.js';
import { hashOf, newSecret, same, signed } from './secrets.js';
import { Throttle } from './throttle.js';

/** Shortest and longest password (NIST SP 800-63B: 8 at least; longer ones only cost the service time). */
const SHORTEST = 10;
const LONGEST = 200;
/** A name that shows well and breaks nothing. */
const NAME = /^[\p{L}\p{N}][\p{L}\p{N} ._@'’-]{0,59}$/u;
const INVITATION_DAYS = 14;
const DAY = 86_400_000;
/** A guesser learns nothing from how long a name that is not there takes to refuse. */
const NOBODY = hash(newSecret());

export interface AccountRow {
  readonly name: string;
  readonly role: Role;
  readonly made: number;
  readonly by: string;
}
export interface TokenRow extends AccountRow {
  readonly id: string;
  readonly ends: number;
}
export type InvitationRow = Omit<TokenRow, 'name'>;
export interface SessionRow {
  readonly id: string;
  readonly account: string;
  readonly since: number;
  readonly ends: number;
  readonly agent: string;
}

/**
 * Accounts, sessions, API tokens and invitations of one data folder, in a file of their own that only its owner may
 * read: a copy of the readings can be handed on without anybody's password in it.
 */
export class Accounts {
  readonly audit: Audit;
  private readonly throttle: Throttle;
  private kept: AccountsKept;
  private written: boolean;

  constructor(
    private readonly folder: string,
    private readonly sessionDays: number,
    private readonly now: () => number = Date.now,
  ) {
    this.audit = new Audit(folder, now);
    this.throttle = new Throttle(now);
    const found = readAccounts(folder);
    this.written = found !== null;
    this.kept = found ?? {
      format: 1,
      secret: randomBytes(32).toString('hex'),
      accounts: [],
      sessions: [],
      tokens: [],
      invitations: [],
      calendars: {},
    };
  }

  /** Nobody has an account: on loopback everybody is the coordinator. */
  get open(): boolean {
    return this.kept.accounts.length === 0;
  }

  list(): readonly AccountRow[] {
    return this.kept.accounts.map(({ password: _, ...row }) => row);
  }

  /** @throws HttpRefused on a name or password that will not do, or a name that is taken. */
  async add(name: string, role: Role, password: string, by: string): Promise<void> {
    const trimmed = name.trim().normalize('NFC');
    if (!NAME.test(trimmed)) throw new HttpRefused(422, { code: 'http-bad-name', with: {} });
    const kept = await hash(longEnough(password));
    if (this.find(trimmed) !== undefined)
      throw new HttpRefused(409, { code: 'http-name-taken', with: { name: trimmed } });
    if (this.open && role !== 'coordinator')
      throw new HttpRefused(409, { code: 'http-first-coordinator', with: {} });
    this.keep({
      accounts: [...this.kept.accounts, { name: trimmed, role, password: kept, made: this.now(), by }],
    });
    await this.audit.note(by, 'account-made', `${trimmed} (${role})`);
  }

  async setPassword(name: string, password: string, by: string): Promise<void> {
    const account = this.known(name);
    const kept = await hash(longEnough(password));
    this.keep({
      accounts: this.kept.accounts.map((one) =>
        one.name === account.name ? { ...one, password: kept } : one,
      ),
      sessions: this.kept.sessions.filter((session) => session.account !== account.name),
    });
    await this.audit.note(by, 'password-set', account.name);
  }

  async setRole(name: string, role: Role, by: string): Promise<void> {
    const account = this.known(name);
    if (role !== 'coordinator') this.refuseWithout(account.name);
    this.keep({
      accounts: this.kept.accounts.map((one) => (one.name === account.name ? { ...one, role } : one)),
    });
    await this.audit.note(by, 'role-set', `${account.name} (${role})`);
  }

  async remove(name: string, by: string): Promise<void> {
    const account = this.known(name);
    this.refuseWithout(account.name);
    this.keep({
      accounts: this.kept.accounts.filter((one) => one.name !== account.name),
      sessions: this.kept.sessions.filter((session) => session.account !== account.name),
    });
    await this.audit.note(by, 'account-removed', account.name);
  }

  /** The secret of a new session. @throws HttpRefused 401 wrong name or password, 429 too many tries. */
  async signIn(name: string, password: string, from: { address: string; agent: string }): Promise<string> {
    const account = await this.checkPassword(name, password, from.address);
    const secret = newSecret();
    const session = {
      id: hashOf(secret),
      account: account.name,
      since: this.now(),
      ends: this.now() + this.sessionDays * DAY,
      agent: from.agent.slice(0, 200),
    };
    const standing = this.kept.sessions.filter(({ ends }) => ends > this.now());
    this.keep({ sessions: [...standing, session] });
    await this.audit.note(account.name, 'signed-in', from.address);
    return secret;
  }

  /** The account of this name and password. @throws HttpRefused 401 wrong, 429 too many tries. */
  async checkPassword(name: string, password: string, address: string): Promise<{ readonly name: string }> {
    const asked = name.trim().normalize('NFC').slice(0, 60);
    const keys = [`account ${asked.toLowerCase()}`, `address ${address}`];
    this.throttle.check(keys);
    // Counted before the slow check: tries sent all at once are counted too.
    this.throttle.failed(keys);
    const account = this.find(asked);
    const right = await verify(account?.password ?? (await NOBODY), password.slice(0, LONGEST));
    if (account === undefined || !right) {
      await this.audit.note(asked, 'sign-in-refused', address);
      throw new HttpRefused(401, { code: 'http-wrong-password', with: {} });
    }
    this.throttle.succeeded(keys);
    return account;
  }

  sessions(account: string): readonly SessionRow[] {
    return this.kept.sessions.filter((session) => session.account === account && session.ends > this.now());
  }

  /** Whether a session of the list is the one whose secret this is. */
  isSession({ id }: SessionRow, secret: string): boolean {
    return same(id, hashOf(secret));
  }

  /** Ends a session by its secret (sign-out) or its id (from the list of one's own). */
  async endSession(account: string, secretOrId: string): Promise<void> {
    const ids = [secretOrId, hashOf(secretOrId)];
    this.keep({
      sessions: this.kept.sessions.filter(
        ({ id, account: whose }) => !(whose === account && ids.includes(id)),
      ),
    });
    await this.audit.note(account, 'session-ended');
  }

  /** Signs somebody out everywhere. @throws HttpRefused 404 */
  async endSessions(name: string, by: string): Promise<void> {
    const account = this.known(name);
    this.keep({ sessions: this.kept.sessions.filter((session) => session.account !== account.name) });
    await this.audit.note(by, 'sessions-ended', account.name);
  }

  personOfSession(secret: string): Person | null {
    const id = hashOf(secret);
    const session = this.kept.sessions.find((one) => same(one.id, id) && one.ends > this.now());
    const account = session === undefined ? undefined : this.find(session.account);
    return account === undefined ? null : { name: account.name, role: account.role, by: 'session' };
  }

  personOfToken(secret: string): Person | null {
    const hashed = hashOf(secret);
    const token = this.kept.tokens.find((one) => same(one.hash, hashed) && one.ends > this.now());
    return token === undefined ? null : { name: token.name, role: token.role, by: 'token' };
  }

  tokens(): readonly TokenRow[] {
    return this.kept.tokens.map(({ hash: _, ...row }) => row);
  }

  /** The token itself is shown this once. */
  async addToken(name: string, role: Role, ends: number, by: string): Promise<{ id: string; token: string }> {
    if (!NAME.test(name)) throw new HttpRefused(422, { code: 'http-bad-name', with: {} });
    if (!(ends > this.now())) throw new HttpRefused(422, { code: 'http-token-end', with: {} });
    const token = newSecret();
    const id = randomBytes(6).toString('hex');
    const row = { id, name, role, hash: hashOf(token), ends, made: this.now(), by };
    this.keep({ tokens: [...this.kept.tokens, row] });
    await this.audit.note(by, 'token-made', `${name} (${role})`);
    return { id, token };
  }

  async endToken(id: string, by: string): Promise<void> {
    const ended = this.kept.tokens.find((token) => token.id === id);
    this.keep({ tokens: this.kept.tokens.filter((token) => token.id !== id) });
    await this.audit.note(by, 'token-ended', ended === undefined ? id : `${ended.name} (${ended.role})`);
  }

  /** The secret of an invitation's link: whoever opens it first chooses a name and a password. */
  async invite(role: Role, by: string): Promise<{ secret: string; ends: number }> {
    const secret = newSecret();
    const ends = this.now() + INVITATION_DAYS * DAY;
    const invitation = {
      id: randomBytes(6).toString('hex'),
      role,
      hash: hashOf(secret),
      ends,
      made: this.now(),
      by,
    };
    const standing = this.kept.invitations.filter((one) => one.ends > this.now());
    this.keep({ invitations: [...standing, invitation] });
    await this.audit.note(by, 'invited', role);
    return { secret, ends };
  }

  /** Invitations that nobody has used yet. */
  invitations(): readonly InvitationRow[] {
    return this.kept.invitations
      .filter((one) => one.ends > this.now())
      .map(({ id, role, made, ends, by }) => ({ id, role, made, ends, by }));
  }

  async endInvitation(id: string, by: string): Promise<void> {
    const ended = this.kept.invitations.find((one) => one.id === id);
    this.keep({ invitations: this.kept.invitations.filter((one) => one.id !== id) });
    await this.audit.note(by, 'invitation-ended', ended?.role ?? id);
  }

  /** The role an invitation gives. @throws HttpRefused 404 where it was used, has ended or never was. */
  invitation(secret: string): { readonly id: string; readonly role: Role; readonly by: string } {
    const hashed = hashOf(secret);
    const found = this.kept.invitations.find((one) => same(one.hash, hashed) && one.ends > this.now());
    if (found === undefined) throw new HttpRefused(404, { code: 'http-invitation-over', with: {} });
    return found;
  }

  async accept(secret: string, name: string, password: string): Promise<void> {
    const { id, role, by } = this.invitation(secret);
    await this.add(name, role, password, by);
    this.keep({ invitations: this.kept.invitations.filter((one) => one.id !== id) });
  }

  /** A calendar's unguessable part; changing it makes the old address void. */
  calendarKey(calendar: string): string {
    return this.sign(`calendar ${calendar} ${this.kept.calendars[calendar] ?? 0}`);
  }

  async changeCalendar(calendar: string, by: string): Promise<void> {
    this.keep({
      calendars: { ...this.kept.calendars, [calendar]: (this.kept.calendars[calendar] ?? 0) + 1 },
    });
    await this.audit.note(by, 'calendar-changed', calendar);
  }

  /** A signature of this folder's own; the secret is kept the first time one is asked for. */
  sign(text: string): string {
    if (!this.written) this.keep({});
    return signed(this.kept.secret, text);
  }

  private find(name: string) {
    return this.kept.accounts.find((one) => one.name.toLowerCase() === name.toLowerCase());
  }

  private known(name: string) {
    const account = this.find(name);
    if (account === undefined)
      throw new HttpRefused(404, { code: 'http-unknown-account', with: { name: name.slice(0, 60) } });
    return account;
  }

  private refuseWithout(name: string): void {
    const others = this.kept.accounts.filter((one) => one.role === 'coordinator' && one.name !== name);
    if (others.length === 0) throw new HttpRefused(409, { code: 'http-last-coordinator', with: {} });
  }

  private keep(changed: Partial<AccountsKept>): void {
    this.kept = { ...this.kept, ...changed };
    writeAccounts(this.folder, this.kept);
    this.written = true;
  }
}

function longEnough(password: string): string {
  if ([...password].length < SHORTEST)
    throw new HttpRefused(422, { code: 'http-password-short', with: { least: SHORTEST } });
  if (password.length > LONGEST)
    throw new HttpRefused(422, { code: 'http-password-long', with: { most: LONGEST } });
  return password;
}
