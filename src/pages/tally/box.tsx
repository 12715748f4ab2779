import { tallyRows } from '../../lifting/index.js';
import { deadKinds, foundWays, plantedIn, type Season } from '../../season/index.js';
import { isoDay, say as sayIn } from '../../words/index.js';
import { Csrf, Frame } from '../parts/frame.js';
import { mayAdd, type View } from '../view.js';

export interface TallyBoxProps {
  readonly view: View;
  readonly season: Season;
  readonly box: Season['boxes'][number];
  /** Made for this form alone: sent twice, it is kept once. */
  readonly entry: string;
  readonly refusal?: string;
  readonly typed: (field: string) => string;
}

/** The quick tally of one box: three numbers, large enough for a thumb; the rest folded away. */
export function TallyBoxPage(props: TallyBoxProps) {
  const { view, season, box, refusal, typed } = props;
  const { say } = view;
  const mine = tallyRows(season, view.language).filter(({ tally }) => tally.box === box.id);
  const back = season.checkedAndPutBack.filter((one) => one.box === box.id);
  return (
    <Frame
      view={view}
      title={say('page-tally-box-title', { box: box.id })}
      answer={say('page-tally-box-answer', {
        box: box.id,
        eggs: plantedIn(box, null),
        mayCount: mayAdd(view),
      })}
      current="lifting"
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      <ul>
        {mine.map(({ tally, remarks }) => (
          <li>
            {view.named(
              `${view.long(Date.parse(`${tally.when.date}T00:00Z`) / 86_400_000)}${tally.counter === null ? '' : `, ${tally.counter}`}`,
              [figures(view, tally), ...remarks.map((remark) => sayIn(view.language, remark))]
                .filter((one) => one !== '')
                .join(' '),
            )}
          </li>
        ))}
        {back.map(({ when, alive }) => (
          <li>
            {view.named(
              view.long(Date.parse(`${when.date}T00:00Z`) / 86_400_000),
              `${say('page-put-back-title', {})}, ${say('page-tally-alive', {}).toLowerCase()} ${view.whole(alive)}.`,
            )}
          </li>
        ))}
      </ul>
      {mayAdd(view) ? (
        <>
          <Quick {...props} />
          <PutBackForm {...props} typed={refusal === undefined ? () => '' : typed} />
        </>
      ) : null}
      <p class="same">
        <a href="/tally">{say('page-tally-next', {})}</a>
        <a href="/lifting">{say('page-nav-lifting', {})}</a>
      </p>
      <p class="small">{say('tally-empty-left-or-gone', {})}</p>
    </Frame>
  );
}

function figures(view: View, tally: Season['tallies'][number]): string {
  const said = (['empty', 'dead', 'alive'] as const)
    .flatMap((key) => {
      const number = tally[key];
      return number === null
        ? []
        : [`${view.say(`page-tally-${key}`, {}).toLowerCase()} ${view.whole(number)}`];
    })
    .join(', ');
  return said === '' ? '' : `${said}.`;
}

function Number3({ view, name, typed }: { view: View; name: 'empty' | 'dead' | 'alive'; typed: string }) {
  return (
    <label>
      {view.say(`page-tally-${name}`, {})}
      <input name={name} inputmode="numeric" autocomplete="off" value={typed} />
    </label>
  );
}

function Quick({ view, box, entry, typed }: TallyBoxProps) {
  const { say } = view;
  const parts = box.fills.flatMap(({ part }) => part ?? []);
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/tally`} class="sheet quick">
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        <Number3 view={view} name="empty" typed={typed('empty')} />
        <Number3 view={view} name="dead" typed={typed('dead')} />
        <Number3 view={view} name="alive" typed={typed('alive')} />
      </div>
      <button type="submit">{say('page-tally-keep', {})}</button>
      <details open={typed('more') !== ''}>
        <summary>{say('page-tally-more', {})}</summary>
        <div class="fields">
          <label>
            {say('page-day', {})}
            <input type="date" name="when" value={typed('when') || isoDay(view.today)} />
          </label>
          <label>
            {say('page-tally-counter', {})}
            <input name="counter" autocomplete="name" value={typed('counter')} />
          </label>
          <label>
            {say('page-tally-found', {})}
            <select name="found">
              {foundWays.map((way) => (
                <option value={way} selected={typed('found') === way}>
                  {say(`tally-found-${way}`, {})}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say('page-tally-found-at', {})}
            <input name="foundAt" value={typed('foundAt')} />
          </label>
          {parts.length === 0 ? null : (
            <label>
              {say('page-tally-part', {})}
              <select name="part">
                <option value="">{say('page-tally-part-whole', {})}</option>
                {parts.map((part) => (
                  <option selected={typed('part') === part}>{part}</option>
                ))}
              </select>
            </label>
          )}
          <label>
            {say('page-tally-alive-eggs', {})}
            <input name="aliveEggs" inputmode="numeric" autocomplete="off" value={typed('aliveEggs')} />
          </label>
          <label>
            {say('page-tally-silt', {})}
            <input name="siltMm" inputmode="decimal" value={typed('siltMm')} />
          </label>
          <label class="wide">
            {say('page-tally-damage', {})}
            <input name="damage" value={typed('damage')} />
          </label>
          <label class="wide">
            {say('page-note', {})}
            <input name="note" value={typed('note')} />
          </label>
        </div>
        <fieldset>
          <legend>{say('page-tally-kinds', {})}</legend>
          <div class="fields">
            {deadKinds.map((kind) => (
              <label>
                {say(`page-tally-kind-${kind}`, {})}
                <input name={kind} inputmode="numeric" value={typed(kind)} />
              </label>
            ))}
          </div>
        </fieldset>
        <label class="choice">
          <input type="checkbox" name="countStands" value="yes" checked={typed('countStands') === 'yes'} />
          {say('page-tally-stands', {})}
        </label>
        <button type="submit">{say('page-tally-keep', {})}</button>
      </details>
    </form>
  );
}

function PutBackForm({ view, box, entry, typed }: TallyBoxProps) {
  const { say } = view;
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/put-back`} class="sheet quick">
      <h2>{say('page-put-back-title', {})}</h2>
      <p>{say('page-put-back-note', {})}</p>
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        <label>
          {say('page-put-back-alive', {})}
          <input name="alive" inputmode="numeric" autocomplete="off" value={typed('alive')} />
        </label>
        <label>
          {say('page-tally-empty', {})}
          <input name="empty" inputmode="numeric" autocomplete="off" value={typed('empty')} />
        </label>
        <label>
          {say('page-tally-alive-eggs', {})}
          <input name="aliveEggs" inputmode="numeric" autocomplete="off" value={typed('aliveEggs')} />
        </label>
        <label class="wide">
          {say('page-day', {})}
          <input type="date" name="when" value={typed('when') || isoDay(view.today)} />
        </label>
      </div>
      <button type="submit" class="quiet">
        {say('page-put-back-keep', {})}
      </button>
    </form>
  );
}
