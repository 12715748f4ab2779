import { beforeAll, describe, expect, it } from 'vitest';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { ask, scratchFolder, send, signIn, threeSignedIn, visitor } from './service.js';

/* The pages on people and the calendar, as a browser posts their forms. */
const PAGE = { Accept: 'text/html', 'Sec-Fetch-Site': 'same-origin' };
let at = '';
let folder = '';
let coral = '';
beforeAll(async () => {
  const served = await threeSignedIn();
  ({ at, folder } = served);
  coral = served.sessions.Coral;
}, 120_000);

function posted(path: string, fields: Record<string, string>, session: string | null, language = 'en') {
  const secret = session ?? '0123456789abcdef';
  const csrf = new Accounts(folder, 1).sign(`form ${secret}`);
  const cookie = session === null ? `underice_visit=${secret}` : `underice_session=${secret}`;
  const body = new URLSearchParams({ csrf, ...fields }).toString();
  const headers = { ...PAGE, Cookie: cookie, 'Accept-Language': language };
  return ask(at, path, send('POST', 'application/x-www-form-urlencoded', body, headers));
}

const page = (path: string, session: string) =>
  ask(at, path, { headers: { ...PAGE, Cookie: `underice_session=${session}` } });

describe('a wrong password', () => {
  it('is said on the page itself, in the language of who reads it, and the name stays', async () => {
    const fields = { name: 'Reade', password: 'guess-of-somebody', to: '/boxes/U1' };
    const said = await posted('/sign-in', fields, null, 'fr');
    expect(said.status).toBe(401);
    expect(said.text).toContain('Le nom ou le mot de passe est faux.');
    expect(said.text).toContain('value="Reade"');
    expect(said.text).toContain('value="/boxes/U1"');
    expect(said.text).not.toContain('guess-of-somebody');
  });

  it('where one’s own is to be changed leaves it as it was', async () => {
    const crewe = await signIn(at, folder, 'Crewe');
    const fields = { old: 'not-my-password', password: 'Another-password', to: '/account' };
    const said = await posted('/account/password', fields, crewe);
    expect(said.status).toBe(401);
    expect(said.text).toContain('role="alert"');
    expect(await signIn(at, folder, 'Crewe')).not.toBe('');
  });
});

describe('accounts', () => {
  it('are made, given another role, and taken away', async () => {
    expect(
      (await posted('/accounts', { name: 'Newt', password: 'Newt-password', role: 'reader' }, coral)).status,
    ).toBe(303);
    expect((await page('/accounts', coral)).text).toContain('>Newt<');
    await posted('/accounts/Newt/role', { role: 'crew' }, coral);
    const newt = await signIn(at, folder, 'Newt');
    const own = (await page('/account', newt)).text;
    expect(own).toContain('as Newt, crew');
    expect(own.match(/this one/g)).toHaveLength(1);
    await posted('/accounts/Newt/sign-out', {}, coral);
    expect((await page('/account', newt)).status).toBe(303);
    await posted('/accounts/Newt/remove', {}, coral);
    expect((await page('/accounts', coral)).text).not.toContain('>Newt<');
  });

  it('what is refused is said on the same page', async () => {
    const said = await posted('/accounts', { name: 'Reade', password: 'long enough a one' }, coral);
    expect(said).toMatchObject({ status: 409 });
    expect(said.text).toContain('There is an account &quot;Reade&quot; already');
  });

  it.each(['/accounts', '/accounts/tokens', '/accounts/audit'])('%s is for coordinators', async (path) => {
    const said = await page(path, await signIn(at, folder, 'Crewe'));
    expect(said.status).toBe(403);
    expect(said.text).toContain('Not allowed');
    expect((await page(path, coral)).status).toBe(200);
  });

  it('the first is a coordinator’s', async () => {
    const accounts = new Accounts(scratchFolder(), 1);
    await expect(accounts.add('Crewe', 'crew', 'Crewe-password', 'tests')).rejects.toMatchObject({
      remark: { code: 'http-first-coordinator' },
    });
    expect(accounts.open).toBe(true);
  });
});

describe('invitations', () => {
  it('give a link once; ended, it leads nowhere', async () => {
    const made = await posted('/accounts/invitations', { role: 'reader' }, coral);
    const link = /http[^"<]+\/invitation\/[\w-]+/.exec(made.text)?.[0] ?? '';
    expect(await (await fetch(link)).text()).toContain('Coral invites you as a reader.');
    const french = await fetch(link, { headers: { 'Accept-Language': 'fr' } });
    expect(await french.text()).toContain('Coral vous invite à consulter les pages.');
    const shown = await page('/accounts', coral);
    expect(shown.text).not.toContain(link);
    const end = /\/accounts\/invitations\/\w+\/end/.exec(shown.text)?.[0] ?? '';
    await posted(end, {}, coral);
    expect((await fetch(link)).status).toBe(404);
  });
});

describe('API tokens', () => {
  it('are shown once, work, and end', async () => {
    const fields = { name: 'R script', role: 'reader', ends: '2999-12-31' };
    const made = await posted('/accounts/tokens', fields, coral);
    const token = /value="([\w-]{40,})"/.exec(made.text.slice(made.text.indexOf('class="note"')))?.[1] ?? '';
    const reading = () =>
      ask(at, '/api/v1/stations', { headers: { Authorization: `Bearer ${token}` } }).then(
        ({ status }) => status,
      );
    expect(await reading()).toBe(200);
    const shown = await page('/accounts/tokens', coral);
    expect(shown.text).toContain('R script');
    expect(shown.text).not.toContain(token);
    await posted(/\/accounts\/tokens\/\w+\/end/.exec(shown.text)?.[0] ?? '', {}, coral);
    expect(await reading()).toBe(401);
  });

  it('with a last day that is past are refused', async () => {
    const fields = { name: 'R script', role: 'reader', ends: '2020-01-01' };
    expect((await posted('/accounts/tokens', fields, coral)).status).toBe(422);
  });
});

describe('what happened', () => {
  it('is listed in words, newest first', async () => {
    await posted('/sign-in', { name: 'Reade', password: 'wrong again' }, null);
    const { text } = await page('/accounts/audit', coral);
    expect(/<tbody>.*?<\/tr>/.exec(text)?.[0]).toContain('sign-in refused');
    // What was ended is called by its name and role, not by its id.
    expect(text).toContain('<td>API token ended</td><td>R script (reader)</td>');
    expect(text).toContain('<td>invitation ended</td><td>reader</td>');
  });
});

describe('the calendar’s page', () => {
  const addressOn = (text: string) => /value="(http[^"]+\.ics)"/.exec(text)?.[1] ?? '';

  it('shows the address of one box in one language; changed, the old one is void', async () => {
    const before = addressOn((await page('/calendars?box=U1&of=fr', coral)).text);
    expect(await (await fetch(before)).text()).toContain('BEGIN:VCALENDAR');
    const changed = await posted('/calendars/change', { of: 'fr', box: 'U1' }, coral);
    expect(changed.headers.get('Location')).toBe('/calendars?of=fr&box=U1&changed=yes');
    const now = addressOn((await page('/calendars?of=fr&box=U1', coral)).text);
    expect((await fetch(now)).status).toBe(200);
    expect((await fetch(before)).status).toBe(404);
  });

  it('does not let a reader change it, and knows the boxes', async () => {
    const reade = visitor(at, folder, await signIn(at, folder, 'Reade'));
    expect((await reade.post('/calendars/change', { of: 'en', box: '' })).status).toBe(403);
    expect((await page('/calendars?box=%3Cb%3E', coral)).status).toBe(404);
  });
});

describe('sessions by the API', () => {
  it('are one’s own: that of somebody else is neither shown nor ended', async () => {
    const crewe = await signIn(at, folder, 'Crewe');
    const by = (session: string, path: string, method = 'GET') =>
      ask(at, path, {
        method,
        headers: { Cookie: `underice_session=${session}`, 'Sec-Fetch-Site': 'same-origin' },
      });
    const own: unknown = (await by(coral, '/api/v1/sessions')).body.sessions;
    const [id] = new Accounts(folder, 1).sessions('Coral').map((one) => one.id);
    expect(JSON.stringify(own)).toContain(id);
    expect((await by(crewe, '/api/v1/sessions')).text).not.toContain(id);
    expect((await by(crewe, `/api/v1/sessions/${id}`, 'DELETE')).status).toBe(204);
    expect((await by(coral, '/api/v1/season')).status).toBe(200);
    await by(coral, '/api/v1/accounts/Crewe/sessions', 'DELETE');
    expect((await by(crewe, '/api/v1/season')).status).toBe(401);
  });
});
