import type { FieldEntry } from '../../season/index.js';
import { dayAndTime } from '../../words/index.js';
import { Csrf, Frame } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';
import { type Around, answersOf, becameOf } from './answers.js';

export interface EntryShown {
  readonly entry: FieldEntry;
  readonly fields: Readonly<Record<string, unknown>>;
  /** Why it waits; null where it could be taken by now, or does not wait. */
  readonly why: string | null;
}

interface EntriesProps extends Around {
  readonly entries: readonly EntryShown[];
  readonly refusal?: string;
}

/** What came in from the field: what waits first, each with why and what to do about it. */
export function EntriesPage(props: EntriesProps) {
  const { view, entries, refusal } = props;
  const { say } = view;
  const of = (state: FieldEntry['state']) => entries.filter(({ entry }) => entry.state === state);
  const [waiting, taken, left] = [of('waiting'), of('taken'), of('left')];
  return (
    <Frame
      view={view}
      title={say('page-entries-title', {})}
      answer={say('page-entries-answer', { waiting: waiting.length, taken: taken.length })}
      current="autumn"
      cautions={false}
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      {waiting.length === 0 ? null : <h2>{say('page-entries-waiting', {})}</h2>}
      {waiting.map((one) => (
        <Waiting {...props} {...one} />
      ))}
      {taken.length === 0 ? null : <h2>{say('page-entries-taken', {})}</h2>}
      {taken.length === 0 ? null : <List {...props} entries={taken.toReversed()} />}
      {left.length === 0 ? null : <h2>{say('page-entries-left', {})}</h2>}
      {left.length === 0 ? null : <List {...props} entries={left} />}
    </Frame>
  );
}

function Waiting({ entry, fields, why, ...around }: EntryShown & Around) {
  const { view, season } = around;
  const { say } = view;
  return (
    <section class="sheet">
      <h3>{say('page-entries-kind', { kind: entry.kind })}</h3>
      <By view={view} zone={season.group.zone} entry={entry} />
      <p class={why === null ? 'note' : 'refusal'}>{why ?? say('page-entries-ready', {})}</p>
      <dl class="answers">
        {answersOf(around, entry.kind, fields).map(([label, text]) => (
          <div>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {mayEdit(view) ? (
        <form method="post" action={`/autumn/entries/${entry.id}`} class="actions">
          <Csrf view={view} />
          {why === null ? (
            <button type="submit" name="do" value="take">
              {say('page-entries-take', {})}
            </button>
          ) : (
            <a class="button" href={`/autumn/entries/${entry.id}`}>
              {say('page-entries-correct', {})}
            </a>
          )}
          <button type="submit" name="do" value="leave" class="quiet">
            {say('page-entries-leave', {})}
          </button>
        </form>
      ) : null}
    </section>
  );
}

function By({ view: { say, language }, zone, entry }: { view: View; zone: string; entry: FieldEntry }) {
  const { who, phone, fast } = entry;
  const entered = dayAndTime(language, Date.parse(entry.entered), zone);
  return (
    <p class="small">
      {say('page-entries-by', { who: who ?? '', phone: phone ?? '', entered })}
      {fast === null ? '' : ` ${say('page-entries-clock', { fast })}`}
    </p>
  );
}

function List({ view, season, entries }: EntriesProps) {
  return (
    <ul>
      {entries.map(({ entry }) => (
        <li>
          {view.say('page-entries-kind', { kind: entry.kind })}
          {entry.became === null ? '' : ` · ${becameOf({ season }, entry)}`}
          <By view={view} zone={season.group.zone} entry={entry} />
        </li>
      ))}
    </ul>
  );
}
