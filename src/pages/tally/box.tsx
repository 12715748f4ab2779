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

interface AskedProps {
  /** What was typed, and what of it was refused. */
  readonly given: Pick<TallyBoxProps, 'typed' | 'refused'>;
  readonly name: string;
  readonly label: string;
  readonly value?: string;
  readonly wide?: boolean;
  readonly type?: 'date';
  readonly inputmode?: 'numeric' | 'decimal';
  readonly autocomplete?: 'off' | 'name';
}

/** One question with its field. */
function Asked({ given: { typed, refused }, name, label, value, wide, ...input }: AskedProps) {
  return (
    <label class={wide === true ? 'wide' : undefined}>
      {label}
      <input {...input} {...pointed(refused?.wrongs, name)} name={name} value={value ?? typed(name)} />
    </label>
  );
}

const COUNT = { inputmode: 'numeric', autocomplete: 'off' } as const;

function Quick({ view, box, entry, typed, refused }: TallyBoxProps) {
  const { say } = view;
  const given = { typed, refused };
  const wrong = (name: string) => pointed(refused?.wrongs, name);
  const parts = box.fills.flatMap(({ part }) => part ?? []);
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/tally`} class="sheet quick on-paper">
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        {(['empty', 'dead', 'alive'] as const).map((name) => (
          <Asked given={given} name={name} label={say(`page-tally-${name}`, {})} {...COUNT} />
        ))}
      </div>
      <button type="submit">{say('page-tally-keep', {})}</button>
      <details open={typed('more') !== ''}>
        <summary>{say('page-tally-more', {})}</summary>
        <div class="fields">
          <Day view={view} given={given} />
          <Asked given={given} name="counter" label={say('page-tally-counter', {})} autocomplete="name" />
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
          <Asked given={given} name="foundAt" label={say('page-tally-found-at', {})} />
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
          <Asked given={given} name="aliveEggs" label={say('page-tally-alive-eggs', {})} {...COUNT} />
          <Asked given={given} name="siltMm" label={say('page-tally-silt', {})} inputmode="decimal" />
          <Asked given={given} name="damage" label={say('page-tally-damage', {})} wide />
          <Asked given={given} name="note" label={capitalised(say('page-note', {}))} wide />
        </div>
        <fieldset>
          <legend>{say('page-tally-kinds', {})}</legend>
          <div class="fields">
            {deadKinds.map((kind) => (
              <Asked
                given={given}
                name={kind}
                label={say(`page-tally-kind-${kind}`, {})}
                inputmode="numeric"
              />
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

function Day({ view, given, wide = false }: { view: View; given: AskedProps['given']; wide?: boolean }) {
  const label = capitalised(view.say('page-day', {}));
  const value = given.typed('when') || isoDay(view.today);
  return <Asked given={given} name="when" label={label} value={value} type="date" wide={wide} />;
}

function PutBackForm({ view, box, entry, typed, refused }: TallyBoxProps) {
  const { say } = view;
  const given = { typed, refused };
  return (
    <form method="post" action={`/boxes/${encodeURIComponent(box.id)}/put-back`} class="sheet quick on-paper">
      <h2>{say('page-put-back-title', {})}</h2>
      <p>{say('page-put-back-note', {})}</p>
      <Csrf view={view} />
      <input type="hidden" name="entry" value={entry} />
      <div class="three">
        <Asked given={given} name="alive" label={say('page-put-back-alive', {})} {...COUNT} />
        <Asked given={given} name="empty" label={say('page-tally-empty', {})} {...COUNT} />
        <Asked given={given} name="aliveEggs" label={say('page-tally-alive-eggs', {})} {...COUNT} />
        <Day view={view} given={given} wide />
      </div>
      <button type="submit" class="quiet">
        {say('page-put-back-keep', {})}
      </button>
    </form>
  );
}
