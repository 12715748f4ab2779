import { roles } from '../../http/roles.js';
import type { AuditEntry } from '../../http/sign-in/audit.js';
import { dayAndTime } from '../../words/index.js';
import { byWhom } from '../../words/somebody.js';
import { Frame, SameAs } from '../parts/frame.js';
import type { View } from '../view.js';
import { PeoplePlaces } from './places.js';

interface AuditProps {
  readonly view: View;
  readonly entries: readonly AuditEntry[];
  readonly zone: string;
  /** Where older entries are shown; null at the end of the list. */
  readonly older: string | null;
}

/** Who signed in, who was refused, who changed accounts. */
export function AuditPage({ view, entries, zone, older }: AuditProps) {
  const { say, language } = view;
  return (
    <Frame
      view={view}
      title={say('page-audit-title', {})}
      answer={
        entries.length === 0
          ? say('page-audit-none', {})
          : say('page-audit-answer', { shown: entries.length })
      }
      cautions={false}
    >
      {entries.length === 0 ? null : (
        <section class="scroll" tabindex={0} aria-label={say('page-audit-title', {})}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say('page-audit-when', {})}</th>
                <th scope="col">{say('page-audit-who', {})}</th>
                <th scope="col" colspan={2}>
                  {say('page-audit-what', {})}
                </th>
              </tr>
            </thead>
            <tbody>
              {entries.map(({ at, who, did, what }) => (
                <tr>
                  <td class="date">{dayAndTime(language, Date.parse(at), zone)}</td>
                  <td>{byWhom(language, who)}</td>
                  <td>{say('page-audit-did', { did })}</td>
                  <td>{concerned(view, what)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {older === null ? null : (
        <p>
          <a href={older}>{say('page-audit-more', {})}</a>
        </p>
      )}
      <PeoplePlaces view={view} here="/accounts/audit" />
      <SameAs view={view} json="/api/v1/audit" />
    </Frame>
  );
}

/** Whom or what an entry concerned, the role in it (`Mara (crew)`, or alone) by its name in the page's language. */
function concerned({ say }: View, what: string): string {
  const role = roles.find((one) => what === one || what.endsWith(` (${one})`));
  if (role === undefined) return what;
  const name = say(`http-role-${role}`, {});
  return what === role ? name : `${what.slice(0, -role.length - 1)}${name})`;
}
