import { eggsBySamples, type LotBalance, openEnds } from '../../autumn/index.js';
import type { Season } from '../../season/index.js';
import { dayAndTime, decimal, isoDay, longDay } from '../../words/index.js';
import { forms } from '../client/field/forms.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { mayAdd, type View } from '../view.js';

interface AutumnProps {
  readonly view: View;
  readonly season: Season;
  readonly balances: readonly LotBalance[];
  /** Something was kept just now. */
  readonly kept: boolean;
}

/** From adults to planted boxes: what is counted, where every egg is, and what is still open. */
export function AutumnPage({ view, season, balances, kept }: AutumnProps) {
  const { say } = view;
  const unplaced = balances.reduce((sum, lot) => sum + lot.unplaced, 0);
  return (
    <Frame
      view={view}
      title={say('page-autumn-title', {})}
      answer={
        balances.length === 0
          ? say('page-autumn-answer-none', {})
          : say('page-autumn-answer', { unplaced, lots: balances.length })
      }
      current="autumn"
    >
      {kept ? <p class="note">{say('page-autumn-did', {})}</p> : null}
      <p class="same">
        <a href="/field">{say('page-autumn-phone', {})}</a>
        <a href="/autumn/entries">{say('page-autumn-entries', {})}</a>
        <a href="/autumn/grid">{say('page-autumn-grid', {})}</a>
        <a href="/autumn/sheet">{say('page-autumn-sheet', {})}</a>
        <a href="/autumn/earlier">{say('page-autumn-earlier', {})}</a>
      </p>
      {mayAdd(view) ? (
        <section class="no-print">
          <h2>{say('page-autumn-enter', {})}</h2>
          <p class="actions">
            {forms.map(({ kind, word }) => (
              <a class="button quiet" href={`/autumn/enter/${kind}`}>
                {say(`face-${word}`, {})}
              </a>
            ))}
          </p>
        </section>
      ) : null}
      {balances.length === 0 ? null : <Lots view={view} season={season} balances={balances} />}
      <Ends view={view} season={season} />
      {season.sites.length === 0 ? null : (
        <section class="no-print">
          <h2>{say('page-site-cards', {})}</h2>
          <p class="same">
            {season.sites.map(({ id, name }) => (
              <a href={`/autumn/sites/${encodeURIComponent(id)}`}>{name ?? id}</a>
            ))}
          </p>
        </section>
      )}
      {season.permits.length === 0 ? null : (
        <section>
          <h2>{say('page-autumn-permits', {})}</h2>
          <ul>
            {season.permits.map(({ number, authority, from, to, reportDue }) => (
              <li>
                {say('page-autumn-permit', {
                  number: authority === null ? number : `${number} (${authority})`,
                  from,
                  to,
                  due: reportDue ?? '',
                })}
              </li>
            ))}
          </ul>
        </section>
      )}
      {season.visits.length === 0 ? null : <Visits view={view} season={season} />}
    </Frame>
  );
}

function Lots({ view, season, balances }: Omit<AutumnProps, 'kept'>) {
  const { say, whole } = view;
  const heads = [
    say('page-field-lot', {}),
    say('page-field-eggs', {}),
    say('page-autumn-in-boxes', {}),
    say('page-autumn-control', {}),
    say('page-autumn-lost', {}),
    say('page-autumn-left-over', {}),
    say('page-autumn-unplaced', {}),
  ];
  return (
    <section>
      <h2>{say('page-autumn-lots', {})}</h2>
      <div class="wide-table" tabindex={0}>
        <table>
          <thead>
            <tr>
              {heads.map((head, i) => (
                <th scope="col" class={i === 0 ? undefined : 'number'}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {balances.map((one) => (
              <tr>
                <th scope="row">{one.lot}</th>
                {[one.eggs, one.inBoxes, one.control, one.lost, one.leftOver, one.unplaced].map((eggs) => (
                  <td class="number">{whole(eggs)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <LotsSaid view={view} lots={season.lots} />
      <p class="no-print">
        <WorkedOut view={view} about="eggs" />
      </p>
      <SameAs view={view} json="/api/v1/eggs" csv="/api/v1/eggs.csv" />
    </section>
  );
}

/** How the eggs of each lot were counted, with the error the repeats give, and what the control sample showed. */
function LotsSaid({ view, lots }: { view: View; lots: Season['lots'] }) {
  const said = lots.map((lot) => [lot.id, lotSaid(view, lot)] as const).filter(([, text]) => text !== '');
  if (said.length === 0) return null;
  return (
    <ul>
      {said.map(([lot, text]) => (
        <li>{view.named(lot, text)}</li>
      ))}
    </ul>
  );
}

function lotSaid({ say, percent }: View, { measured, control }: Season['lots'][number]): string {
  const said: string[] = [];
  if (measured !== null && measured.samples.length > 0) {
    const { eggs, low, high } = eggsBySamples(measured.samples, measured.total);
    said.push(
      low === null || high === null
        ? say('page-autumn-count-one', {})
        : say('page-autumn-count', { eggs, low, high, samples: measured.samples.length }),
    );
  }
  const { fertilised, of } = control ?? { fertilised: null, of: null };
  if (fertilised !== null && of !== null)
    said.push(say('page-autumn-fertilised', { rate: percent(fertilised / of), of }));
  return said.join(' ');
}

function Ends({ view: { say }, season }: { view: View; season: Season }) {
  const { lotsWithoutBox, boxesWithoutLot } = openEnds(season);
  if (lotsWithoutBox.length + boxesWithoutLot.length === 0) return null;
  return (
    <ul class="note">
      {lotsWithoutBox.map((lot) => (
        <li>{say('page-autumn-no-box', { lot })}</li>
      ))}
      {boxesWithoutLot.map((box) => (
        <li>{say('page-autumn-no-lot', { box })}</li>
      ))}
    </ul>
  );
}

/** Visits shown; older ones are in the season file. */
const VISITS = 30;

function Visits({ view: { say, language, today }, season }: { view: View; season: Season }) {
  const happened = ({ at, date }: Season['visits'][number]['when']) =>
    at === null
      ? longDay(language, Date.parse(`${date}T00:00Z`) / 86_400_000)
      : dayAndTime(language, Date.parse(at), season.group.zone);
  // Looking back, a visit made later is not known yet.
  const known = season.visits.filter(({ when }) => when.date <= isoDay(today));
  if (known.length === 0) return null;
  const newest = known.toSorted((a, b) => (a.when.date < b.when.date ? 1 : -1)).slice(0, VISITS);
  return (
    <section>
      <h2>{say('page-autumn-visits', {})}</h2>
      <ul>
        {newest.map(({ site, when, who, hand, note, photographs }) => (
          <li>
            {[happened(when), season.sites.find(({ id }) => id === site)?.name ?? site, who.join(', ')]
              .filter(Boolean)
              .join(' · ')}
            {hand.length === 0
              ? ''
              : ` · ${hand.map(({ celsius }) => `${decimal(language, celsius, 1)} °C`).join(', ')}`}
            {note === null ? '' : ` · ${note}`}
            {photographs.map((name) => (
              <a href={`/api/v1/photographs/${name}`}> {say('face-photo', {})}</a>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
