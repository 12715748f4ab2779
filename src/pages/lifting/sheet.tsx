import type { BoxPlan } from '../../../forecasting/index.js';
import type { DayNumber } from '../../../forecasting/units.js';
import {
  dayOf,
  gaugeRemark,
  type LiftingState,
  type StopRule,
  standingRemarks,
  stopRule,
} from '../../lifting/index.js';
import { deadKinds, type Season } from '../../season/index.js';
import { say as sayIn } from '../../words/index.js';
import { Frame } from '../parts/frame.js';
import type { View } from '../view.js';

interface SheetProps {
  readonly view: View;
  readonly state: LiftingState;
  readonly day: DayNumber;
  readonly site: string;
}

/** The field sheet of a day and a site: one page on paper, the stop rule first. */
export function SheetPage({ view, state, day, site }: SheetProps) {
  const { say } = view;
  const { plan, season } = state;
  const place = season.sites.find(({ id }) => id === site);
  const here = plan.boxes.filter((box) => box.site === site);
  const approved = approvedFor(state, day);
  const planned = here.filter(({ box, planned: on }) => approved?.includes(box) ?? on === day);
  const boxes = planned.length > 0 ? planned : here;
  const moved = planned.some((box) => box.planned !== day);
  return (
    <Frame view={view} title={say('page-sheet-title', { site: place?.name ?? site, day })} current="lifting">
      <div class="field-sheet">
        {approved === null ? <p class="draft">{say('page-sheet-draft', {})}</p> : null}
        {approved === null || !moved ? null : (
          <p class="note">
            {standingRemarks(state)
              .map((remark) => sayIn(view.language, remark))
              .join(' ')}
          </p>
        )}
        {planned.length > 0 ? null : <p class="note">{say('page-sheet-not-planned', {})}</p>}
        <Stop view={view} rule={stopRule(state, boxes, day)} />
        <section>
          <h2>{say('page-sheet-water', {})}</h2>
          <ul>
            <Gauge view={view} state={state} />
            <li>{say('caution-ice', {})}</li>
            <li>{say('caution-decide', {})}</li>
          </ul>
        </section>
        <Where view={view} season={season} place={place} boxes={boxes} day={day} />
        <section>
          <h2>{say('page-sheet-bring', {})}</h2>
          <p>{say('page-sheet-bring-list', {})}</p>
        </section>
        <EmptyForms view={view} boxes={boxes} season={season} />
      </div>
      <p class="no-print small">{say('page-sheet-print', {})}</p>
      <p class="same">
        {boxes.map(({ box }) => (
          <a href={`/tally/${encodeURIComponent(box)}`}>{say('page-tally-box-title', { box })}</a>
        ))}
      </p>
    </Frame>
  );
}

/** The boxes a person approved for this day; null where nobody did: then it is a draft. */
function approvedFor({ approved }: LiftingState, day: DayNumber): readonly string[] | null {
  const stated = approved?.days.find(({ date }) => dayOf(date) === day);
  return stated?.boxes ?? null;
}

function Gauge({ view, state }: { view: View; state: LiftingState }) {
  const gauge = gaugeRemark(state);
  return gauge === null ? null : <li>{sayIn(view.language, gauge)}</li>;
}

function Stop({ view: { say }, rule }: { view: View; rule: StopRule | null }) {
  if (rule === null) return null;
  return (
    <section class="stop">
      <h2>{say('page-sheet-stop', {})}</h2>
      <p>
        <strong>
          {rule.boxes > 1 ? say('page-sheet-stop-rule', rule) : say('page-sheet-stop-alone', rule)}
        </strong>{' '}
        {say('page-sheet-stop-enter', {})}
      </p>
    </section>
  );
}

interface WhereProps {
  readonly view: View;
  readonly season: Season;
  readonly place: Season['sites'][number] | undefined;
  readonly boxes: readonly BoxPlan[];
  readonly day: DayNumber;
}

function Where({ view: { say }, season, place, boxes, day }: WhereProps) {
  const stated = [place?.access, place?.consent, place?.find].filter((one) => one != null);
  return (
    <section>
      <h2>{say('page-sheet-where', {})}</h2>
      {stated.map((sentence) => (
        <p>{sentence}</p>
      ))}
      <ul>
        {boxes.map((one) => {
          const at = one.days.find((candidate) => candidate.day === day);
          const box = season.boxes.find(({ id }) => id === one.box);
          const said = say('page-sheet-box', {
            box: one.box,
            eggs: one.eggs,
            still: at?.stillInBox.mean ?? 0,
            out: at?.emerged.mean ?? 0,
          });
          return <li>{[said, box?.find, box?.note].filter((sentence) => sentence != null).join(' ')}</li>;
        })}
      </ul>
    </section>
  );
}

const KINDS = deadKinds.map((kind) => `page-tally-kind-${kind}` as const);

/** Boxes and parts to count, with room to write. */
function EmptyForms({ view: { say }, boxes, season }: Omit<WhereProps, 'place' | 'day'>) {
  const rows = boxes.flatMap(({ box }) => {
    const parts = season.boxes.find(({ id }) => id === box)?.fills.flatMap(({ part }) => part ?? []) ?? [];
    return parts.length > 1 ? parts.map((part) => `${box} ${part}`) : [box];
  });
  return (
    <section class="empty-forms" tabindex={0} aria-label={say('page-sheet-form', {})}>
      <h2>{say('page-sheet-form', {})}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('column-box', {})}</th>
            <th scope="col">{say('page-tally-empty', {})}</th>
            <th scope="col">{say('page-tally-dead', {})}</th>
            <th scope="col">{say('page-tally-alive', {})}</th>
            <th scope="col" class="kind">
              {say('page-tally-alive-eggs', {})}
            </th>
            {KINDS.map((word) => (
              <th scope="col" class="kind">
                {say(word, {})}
              </th>
            ))}
            <th scope="col">{say('page-tally-silt', {})}</th>
            <th scope="col">{say('page-sheet-signed', {})}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr>
              <th scope="row">{row}</th>
              {Array.from({ length: KINDS.length + 6 }, () => (
                <td></td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
