import { tallyRows } from '../../lifting/index.js';
import { deadKinds, foundWays, plantedIn, type Season } from '../../season/index.js';
import { isoDay, say as sayIn } from '../../words/index.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm } from '../parts/refused-form.js';
import { mayAdd, type View } from '../view.js';
import type { WrongTally } from './wrongs.js';

export interface TallyBoxProps {
  readonly view: View;
  readonly season: Season;
  readonly box: Season['boxes'][number];
  /** Made for this form alone: sent twice, it is kept once. */
  readonly entry: string;
  readonly refused?: WrongTally | undefined;
  readonly typed: (field: string) => string;
}

/** The form that was not the one refused: empty. */
const FRESH = { typed: () => '', refused: undefined };

/** The quick tally of one box: three numbers, large enough for a thumb; the rest folded away. */
export function TallyBoxPage(props: TallyBoxProps) {
  const { view, season, box, refused } = props;
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
      {refused === undefined ? null : <RefusedForm view={view} not={refused.not} wrongs={refused.wrongs} />}
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
          <Quick {...props} {...(refused?.form === 'tally' ? {} : FRESH)} />
          <PutBackForm {...props} {...(refused?.form === 'put-back' ? {} : FRESH)} />
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

interface Number3Props {
  readonly view: View;
  readonly name: 'empty' | 'dead' | 'alive';
  readonly typed: string;
  readonly wrong: Record<string, string>;
}

function Number3({ view, name, typed, wrong }: Number3Props) {
  return (
    <label>
      {view.say(`page-tally-${name}`, {})}
      <input name={name} inputmode="numeric" autocomplete="off" value={typed} {...wrong} />
    </label>
  );
}

function Quick({ view, box, entry, typed, refused }: TallyBoxProps) {
  const { say } = view;
  const wrong = (name: string) => pointed(refused?.wrongs, name);
  const parts = box.fills.flatMap(({ part }) => part ?? []);
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/tally`} class="sheet quick on-paper">
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        <Number3 view={view} name="empty" typed={typed('empty')} wrong={wrong('empty')} />
        <Number3 view={view} name="dead" typed={typed('dead')} wrong={wrong('dead')} />
        <Number3 view={view} name="alive" typed={typed('alive')} wrong={wrong('alive')} />
      </div>
      <button type="submit">{say('page-tally-keep', {})}</button>
      <details open={typed('more') !== ''}>
        <summary>{say('page-tally-more', {})}</summary>
        <div class="fields">
          <label>
            {capitalised(say('page-day', {}))}
            <input type="date" {...wrong('when')} name="when" value={typed('when') || isoDay(view.today)} />
          </label>
          <label>
            {say('page-tally-counter', {})}
            <input {...wrong('counter')} name="counter" autocomplete="name" value={typed('counter')} />
          </label>
          <label>
            {say('page-tally-found', {})}
            <small class="on-paper-only">
              {' '}
              {foundWays.map((way) => say(`tally-found-${way}`, {})).join(' · ')}
            </small>
            <select {...wrong('found')} name="found">
              {foundWays.map((way) => (
                <option value={way} selected={typed('found') === way}>
                  {say(`tally-found-${way}`, {})}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say('page-tally-found-at', {})}
            <input {...wrong('foundAt')} name="foundAt" value={typed('foundAt')} />
          </label>
          {parts.length === 0 ? null : (
            <label>
              {say('page-tally-part', {})}
              <select {...wrong('part')} name="part">
                <option value="">{say('page-tally-part-whole', {})}</option>
                {parts.map((part) => (
                  <option selected={typed('part') === part}>{part}</option>
                ))}
              </select>
            </label>
          )}
          <label>
            {say('page-tally-alive-eggs', {})}
            <input
              {...wrong('aliveEggs')}
              name="aliveEggs"
              inputmode="numeric"
              autocomplete="off"
              value={typed('aliveEggs')}
            />
          </label>
          <label>
            {say('page-tally-silt', {})}
            <input {...wrong('siltMm')} name="siltMm" inputmode="decimal" value={typed('siltMm')} />
          </label>
          <label class="wide">
            {say('page-tally-damage', {})}
            <input {...wrong('damage')} name="damage" value={typed('damage')} />
          </label>
          <label class="wide">
            {capitalised(say('page-note', {}))}
            <input {...wrong('note')} name="note" value={typed('note')} />
          </label>
        </div>
        <fieldset>
          <legend>{say('page-tally-kinds', {})}</legend>
          <div class="fields">
            {deadKinds.map((kind) => (
              <label>
                {say(`page-tally-kind-${kind}`, {})}
                <input {...wrong(kind)} name={kind} inputmode="numeric" value={typed(kind)} />
              </label>
            ))}
          </div>
        </fieldset>
        <label class="choice">
          <input
            type="checkbox"
            {...wrong('countStands')}
            name="countStands"
            value="yes"
            checked={typed('countStands') === 'yes'}
          />
          {say('page-tally-stands', {})}
        </label>
        <button type="submit">{say('page-tally-keep', {})}</button>
      </details>
    </form>
  );
}

function PutBackForm({ view, box, entry, typed, refused }: TallyBoxProps) {
  const { say } = view;
  const wrong = (name: string) => pointed(refused?.wrongs, name);
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/put-back`} class="sheet quick on-paper">
      <h2>{say('page-put-back-title', {})}</h2>
      <p>{say('page-put-back-note', {})}</p>
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        <label>
          {say('page-put-back-alive', {})}
          <input
            {...wrong('alive')}
            name="alive"
            inputmode="numeric"
            autocomplete="off"
            value={typed('alive')}
          />
        </label>
        <label>
          {say('page-tally-empty', {})}
          <input
            {...wrong('empty')}
            name="empty"
            inputmode="numeric"
            autocomplete="off"
            value={typed('empty')}
          />
        </label>
        <label>
          {say('page-tally-alive-eggs', {})}
          <input
            {...wrong('aliveEggs')}
            name="aliveEggs"
            inputmode="numeric"
            autocomplete="off"
            value={typed('aliveEggs')}
          />
        </label>
        <label class="wide">
          {capitalised(say('page-day', {}))}
          <input type="date" {...wrong('when')} name="when" value={typed('when') || isoDay(view.today)} />
        </label>
      </div>
      <button type="submit" class="quiet">
        {say('page-put-back-keep', {})}
      </button>
    </form>
  );
}
