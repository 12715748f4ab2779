import type { SeasonVersionRow } from '../../group/index.js';
import type { SeasonChange } from '../../season/index.js';
import { dayAndTime, say as sayIn } from '../../words/index.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import { type Document, listIn } from '../parts/season-change.js';
import type { View } from '../view.js';
import { FILE_TEXT } from './file-wrongs.js';
import { type Kind, kinds } from './kinds.js';
import { isThing, nameOf } from './thing.js';

const DAY = 86_400_000;

interface EditingProps {
  readonly view: View;
  readonly document: Document;
  readonly standing: SeasonVersionRow | undefined;
}

/** Everything the season lists, each with its form, and the ways to the whole file and to what was before. */
export function EditingPage({ view, document, standing }: EditingProps) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-edit-title', {})}
      answer={
        standing === undefined
          ? say('page-edit-answer-none', {})
          : say('page-edit-answer', { version: standing.version, by: standing.by, day: standing.at / DAY })
      }
      current="editing"
      cautions={false}
    >
      <p class="same">
        <a href="/editing/file">{say('page-edit-file', {})}</a>
        <a href="/editing/history">{say('page-edit-history', {})}</a>
        <a href="/api/v1/season">{say('page-same-json', {})}</a>
      </p>
      {kinds.map((kind) => (
        <Listed view={view} document={document} kind={kind} />
      ))}
    </Frame>
  );
}

function Listed({ view, document, kind }: { view: View; document: Document; kind: Kind }) {
  const { say } = view;
  const things = listIn(document, kind.list);
  const stations = listIn(document, 'stations').filter(isThing);
  const stationName = (id: string) => String(stations.find((one) => one.id === id)?.name ?? id);
  return (
    <section class={things.length === 0 ? 'no-print' : undefined}>
      <h2>{say(`page-kind-name-${kind.list}`, {})}</h2>
      {things.length === 0 ? (
        <p>{capitalised(say('page-edit-none', {}))}.</p>
      ) : (
        <ul>
          {things.map((thing, i) => (
            <li>
              <a href={`/editing/${kind.list}/${i}`}>
                {isThing(thing) ? nameOf(kind, thing, stationName) : ''}
              </a>
            </li>
          ))}
        </ul>
      )}
      <p>
        <a class="button quiet" href={`/editing/${kind.list}/new`}>
          {say(`page-kind-new-${kind.list}`, {})}
        </a>
      </p>
    </section>
  );
}

interface FilePageProps {
  readonly view: View;
  readonly text: string;
  readonly version: number;
  /** What taking the text over would change; null before it was asked. */
  readonly changes: readonly SeasonChange[] | null;
  readonly wrongs?: readonly Wrong[];
}

export function SeasonFilePage({ view, text, version, changes, wrongs }: FilePageProps) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-edit-file', {})}
      answer={say('page-edit-file-answer', {})}
      current="editing"
      cautions={false}
    >
      <RefusedForm view={view} wrongs={wrongs} not={say('page-edit-refused', {})} />
      {changes === null ? null : <Changes view={view} changes={changes} />}
      <form method="post" action="/editing/file">
        <Csrf view={view} />
        <input type="hidden" name="version" value={String(version)} />
        <label>
          {capitalised(say('page-edit-file-text', {}))}
          <textarea {...pointed(wrongs, FILE_TEXT)} name="text" rows={28} spellcheck={false}>
            {text}
          </textarea>
        </label>
        <div class="actions">
          <button type="submit" name="do" value="preview" class="quiet">
            {say('page-edit-file-preview', {})}
          </button>
          <button type="submit" name="do" value="apply">
            {say('page-edit-file-apply', {})}
          </button>
        </div>
      </form>
      <p class="on-paper-only">{say('page-edit-file-paper', {})}</p>
    </Frame>
  );
}

export function Changes({ view, changes }: { view: View; changes: readonly SeasonChange[] }) {
  if (changes.length === 0) return <p class="note">{view.say('page-edit-file-same', {})}</p>;
  return (
    <section class="note">
      <h2>{view.say('page-edit-changes', { count: changes.length })}</h2>
      <ul>
        {changes.slice(0, 100).map((change) => (
          <Change view={view} change={change} />
        ))}
      </ul>
    </section>
  );
}

/** A change in words, the key of the season file in it as a key, to find its line by. */
function Change({ view, change }: { view: View; change: SeasonChange }) {
  const sentence = sayIn(view.language, change);
  const key = change.code === 'season.changed' ? `(${change.with.field})` : '';
  const at = key === '' ? -1 : sentence.indexOf(key);
  if (at < 0) return <li>{sentence}</li>;
  return (
    <li>
      {sentence.slice(0, at + 1)}
      <code>{key.slice(1, -1)}</code>
      {sentence.slice(at + key.length - 1)}
    </li>
  );
}

interface HistoryProps {
  readonly view: View;
  readonly versions: readonly SeasonVersionRow[];
  /** The group's time zone. */
  readonly zone: string;
  /** What the newest versions changed, by version. */
  readonly changes: ReadonlyMap<number, readonly SeasonChange[]>;
}

export function HistoryPage({ view, versions, changes, zone }: HistoryProps) {
  const { say } = view;
  const standing = versions[0]?.version ?? 0;
  return (
    <Frame
      view={view}
      title={say('page-edit-history', {})}
      answer={say('page-edit-history-answer', { versions: versions.length })}
      current="editing"
      cautions={false}
    >
      <ol reversed class="steps">
        {versions.map(({ version, by, at }) => (
          <li value={version}>
            {say('page-edit-version', {
              version,
              by,
              at: dayAndTime(view.language, at, zone),
            })}
            {version === standing ? (
              ` (${say('page-edit-version-now', {})})`
            ) : (
              <form method="post" action="/editing/undo">
                <Csrf view={view} />
                <input type="hidden" name="version" value={String(standing)} />
                <input type="hidden" name="to" value={String(version)} />
                <button type="submit" class="link">
                  {say('page-edit-undo', { version })}
                </button>
              </form>
            )}
            <ul class="small">
              {changes
                .get(version)
                ?.slice(0, 8)
                .map((change) => (
                  <Change view={view} change={change} />
                ))}
            </ul>
          </li>
        ))}
      </ol>
    </Frame>
  );
}
