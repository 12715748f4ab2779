import type { TokenRow } from '../../http/sign-in/accounts.js';
import { isoDay } from '../../words/index.js';
import { byWhom } from '../../words/somebody.js';
import { Csrf, Frame, SameAs } from '../parts/frame.js';
import { Refusal } from '../parts/refusal.js';
import { ToCopy } from '../parts/to-copy.js';
import type { View } from '../view.js';
import { PeoplePlaces } from './places.js';
import { RoleField } from './roles.js';

const DAY = 86_400_000;
/** A token holds a season unless somebody says otherwise. */
const USUAL_DAYS = 365;

interface TokensProps {
  readonly view: View;
  readonly tokens: readonly TokenRow[];
  readonly now: number;
  /** The one just made, shown this once. */
  readonly made?: { readonly name: string; readonly token: string };
  readonly refusal?: string;
}

/** What programs show instead of a password. */
export function TokensPage({ view, tokens, now, made, refusal }: TokensProps) {
  const { say } = view;
  const over = tokens.filter(({ ends }) => ends <= now).length;
  return (
    <Frame
      view={view}
      title={say('page-tokens-title', {})}
      answer={say('page-tokens-answer', { tokens: tokens.length, over })}
      scripts={made === undefined ? [] : ['copy.js']}
      cautions={false}
    >
      <Refusal text={refusal} />
      {made === undefined ? null : (
        <section class="note">
          <p>{say('page-tokens-made', { name: made.name })}</p>
          <ToCopy view={view} label={say('page-tokens-title', {})} text={made.token} />
        </section>
      )}
      {tokens.length === 0 ? null : <Tokens view={view} tokens={tokens} now={now} />}
      <form method="post" action="/accounts/tokens" class="sheet">
        <h2>{say('page-tokens-add', {})}</h2>
        <p>{say('page-tokens-what', {})}</p>
        <Csrf view={view} />
        <div class="fields">
          <label>
            {say('page-tokens-for', {})}
            <input name="name" maxlength={60} autocomplete="off" required />
          </label>
          <RoleField view={view} chosen="reader" />
          <label>
            {say('page-tokens-ends', {})}
            <input type="date" name="ends" value={isoDay(now / DAY + USUAL_DAYS)} required />
          </label>
        </div>
        <button type="submit">{say('page-tokens-do', {})}</button>
      </form>
      <PeoplePlaces view={view} here="/accounts/tokens" />
      <SameAs view={view} json="/api/v1/tokens" />
    </Frame>
  );
}

function Tokens({ view, tokens, now }: { view: View; tokens: readonly TokenRow[]; now: number }) {
  const { say } = view;
  return (
    <section class="scroll" tabindex={0} aria-label={say('page-tokens-title', {})}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('page-tokens-for', {})}</th>
            <th scope="col">{say('page-people-role', {})}</th>
            <th scope="col">{say('page-tokens-ends', {})}</th>
            <th scope="col">{say('page-tokens-by', {})}</th>
            <th scope="col" class="no-print">
              {say('page-people-change', {})}
            </th>
          </tr>
        </thead>
        <tbody>
          {tokens.map(({ id, name, role, ends, by }) => (
            <tr>
              <td>{name}</td>
              <td>{say(`http-role-${role}`, {})}</td>
              <td>
                {view.long(ends / DAY)}
                {ends <= now ? ` (${say('page-tokens-over', {})})` : ''}
              </td>
              <td>{byWhom(view.language, by)}</td>
              <td class="no-print">
                <form method="post" action={`/accounts/tokens/${encodeURIComponent(id)}/end`}>
                  <Csrf view={view} />
                  <button
                    type="submit"
                    class="link"
                    aria-label={view.named(say('page-people-end', {}), name)}
                  >
                    {say('page-people-end', {})}
                  </button>
                </form>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
