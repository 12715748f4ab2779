import type { Context } from 'hono';
import type { Environment } from '../http/environment.js';
import type { Problem } from '../http/problem.js';
import { Frame } from './parts/frame.js';
import { doorView, type View } from './view.js';

/**
 * What a person sees where something was refused or failed: the sentence, and ways on. It asks the group for nothing,
 * since the group may be what failed.
 */
export function errorPage(c: Context<Environment>, { status, detail }: Problem) {
  const view = errorView(c);
  const { say } = view;
  const back = placeBefore(c);
  return (
    <Frame
      view={view}
      title={say('page-error-title', { status })}
      answer={detail}
      bare={view.person === ''}
      cautions={false}
    >
      <ul>
        {back === null ? null : (
          <li>
            <a href={back}>{say('page-error-back', {})}</a>
          </li>
        )}
        <li>
          <a href="/">{say('page-back-season', {})}</a>
        </li>
        {status === 403 && view.person !== '' && !view.open ? (
          <li>
            <a href="/account">{say('page-error-other-account', {})}</a>
          </li>
        ) : null}
        {view.person === '' ? null : (
          <li>
            <a href="/help">{say('page-nav-help', {})}</a>
          </li>
        )}
      </ul>
    </Frame>
  );
}

/** What failed early may have come before anybody knew who asks, or in which language. */
function errorView(c: Context<Environment>): View {
  const language = c.get('language') ?? 'en';
  const person = c.get('person');
  const known = person !== undefined && person.by !== 'nobody';
  return {
    ...doorView(c, language),
    csrf: c.get('csrf') ?? '',
    nonce: c.get('nonce') ?? '',
    here: c.req.method === 'GET' ? doorView(c, language).here : '/',
    ...(known ? { person: person.name, role: person.role, open: person.by === 'open' } : {}),
  };
}

/** The page the person came from, where the browser says so and it is one of ours. */
function placeBefore(c: Context<Environment>): string | null {
  const from = c.req.header('Referer') ?? '';
  if (!URL.canParse(from)) return null;
  const { host, pathname, search } = new URL(from);
  const here = new URL(c.req.url);
  if (host !== here.host || (pathname === here.pathname && c.req.method === 'GET')) return null;
  return `${pathname}${search}`;
}
