import type { Acknowledged, SpellRow } from '../../spells/contract.js';
import { spellSentences } from '../../spells/sentences.js';
import { dayAndTime } from '../../words/index.js';
import { Csrf } from '../parts/frame.js';
import { mayAdd, type View } from '../view.js';

const MOST_NOTE = 2000;

interface OneSpellProps {
  readonly view: View;
  readonly row: SpellRow;
  readonly zone: string;
  readonly stationName: (station: string) => string;
}

/** A spell with what happened, its limit and where that comes from, what to do, and who has seen it. */
export function OneSpell({ view, row, zone, stationName }: OneSpellProps) {
  const { say, language } = view;
  const said = spellSentences(language, row, zone, stationName);
  const then = (one: Acknowledged) => ({ ...one, at: dayAndTime(language, one.at, zone) });
  return (
    <article class={`spell-entry ${row.severity}`} id={row.id}>
      <h3>
        {said.title} <span class="tag">{said.severity}</span> <span class="tag quiet">{said.state}</span>
      </h3>
      <p>
        {said.from} – {said.to}
      </p>
      <ul>
        {said.what.map((sentence) => (
          <li>{sentence}</li>
        ))}
      </ul>
      {said.toDo.map((sentence) => (
        <p>{sentence}</p>
      ))}
      <p class="small">{said.limit.join(' ')}</p>
      <details>
        <summary>{say('page-spells-sources', {})}</summary>
        <ul class="small">
          {said.sources.map((source) => (
            <li>{source}</li>
          ))}
        </ul>
      </details>
      {row.settled === null ? null : (
        <p>{say('page-spells-settled', { ...then(row.settled), how: row.settled.how })}</p>
      )}
      {row.acknowledged === null || row.settled !== null ? null : (
        <p>{say('page-spells-acknowledged', then(row.acknowledged))}</p>
      )}
      {mayAdd(view) && row.severity !== 'event' ? <Forms view={view} row={row} /> : null}
    </article>
  );
}

function Forms({ view, row }: { view: View; row: SpellRow }) {
  const settles = row.kind === 'exposure' && row.settled === null && row.state !== 'withdrawn';
  if (settles) return <SettleForm view={view} row={row} />;
  if (row.acknowledged !== null) return null;
  const { say } = view;
  return (
    <form method="post" action={`/spells/${encodeURIComponent(row.id)}/acknowledge`} class="saw">
      <Csrf view={view} />
      <label>
        {say('page-spells-note', {})}
        <input name="note" maxlength={MOST_NOTE} />
      </label>
      <button type="submit" class="quiet">
        {say('page-spells-acknowledge', {})}
      </button>
    </form>
  );
}

function SettleForm({ view, row }: { view: View; row: SpellRow }) {
  const { say } = view;
  return (
    <form method="post" action={`/spells/${encodeURIComponent(row.id)}/settle`} class="saw">
      <Csrf view={view} />
      <fieldset>
        <legend>{say('page-spells-settle', {})}</legend>
        <label class="choice">
          <input type="radio" name="how" value="happened" required />
          {say('page-spells-happened', {})}
        </label>
        <label class="choice">
          <input type="radio" name="how" value="did-not-happen" required />
          {say('page-spells-did-not', {})}
        </label>
      </fieldset>
      <label>
        {say('page-spells-note', {})}
        <input name="note" maxlength={MOST_NOTE} />
      </label>
      <button type="submit">{say('page-spells-settle-keep', {})}</button>
    </form>
  );
}
