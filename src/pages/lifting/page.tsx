import type { BoxPlan } from '../../../forecasting/index.js';
import { liftingChart } from '../../charts/lifting-chart.js';
import {
  GOOD_ENOUGH,
  gaugeRemark,
  type LiftingRemark,
  type LiftingState,
  standingRemarks,
  whyRemarks,
  wouldHelp,
} from '../../lifting/index.js';
import { nameIn } from '../../season/index.js';
import { isoDay, say as sayIn } from '../../words/index.js';
import { ChartFigure, Figures } from '../parts/figure.js';
import { Csrf, Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';
import { CrewCalendar, sheetAddress } from './calendar.js';
import { RuleForm } from './rule-form.js';

/** Curves of so many boxes are drawn at once; of more, those of the box asked for. */
const CURVES_AT_ONCE = 12;
/** Figures behind a curve are of every so many days where there are many. */
const ROWS = 40;

export interface LiftingProps {
  readonly view: View;
  readonly state: LiftingState;
  /** The box whose curve is asked for, where there are many. */
  readonly box: string | null;
  /** The page looks back: what it shows is not today's plan, and only today's can be approved. */
  readonly looksBack: boolean;
  readonly refusal?: string;
}

export function LiftingPage(props: LiftingProps) {
  const { view, state, refusal } = props;
  const { say } = view;
  const { plan } = state;
  const [days, sure, ...rest] = whyRemarks(state, view.language);
  const sentence = (remark: LiftingRemark) => sayIn(view.language, remark);
  const gauge = gaugeRemark(state);
  const help = wouldHelp(state, view.language);
  // Where no day is good, what that costs and what would make one possible stand before anything to approve.
  const good = plan.recommended.length === 0 || plan.chance >= GOOD_ENOUGH;
  const standing =
    plan.boxes.length === 0 && state.approved === null ? null : (
      <>
        <div class={state.approved === null ? 'note' : undefined}>
          {standingRemarks(state).map((remark) => (
            <p>{sentence(remark)}</p>
          ))}
        </div>
        <Approve {...props} />
      </>
    );
  return (
    <Frame
      view={view}
      title={say('page-lifting-title', { day: plan.asOf })}
      answer={[days, sure].flatMap((one) => (one === undefined ? [] : [sentence(one)])).join(' ')}
      current="lifting"
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      {good ? standing : null}
      <ul>
        {rest.map((remark) => (
          <li>{sentence(remark)}</li>
        ))}
        {gauge === null ? null : <li>{sentence(gauge)}</li>}
      </ul>
      {help.length === 0 ? null : (
        <section>
          <h2>{say('page-lifting-would', {})}</h2>
          <ul>
            {help.map((remark) => (
              <li>{sentence(remark)}</li>
            ))}
          </ul>
        </section>
      )}
      {plan.recommended.length === 0 ? null : <p>{say('lifting-costs', {})}</p>}
      {good ? null : standing}
      <CrewCalendar view={view} state={state} />
      <Sheets view={view} state={state} />
      <SeasonCurve view={view} state={state} />
      <Shifts view={view} state={state} />
      <Boxes {...props} />
      <section>
        <p>
          {say('page-lifting-rule', {
            after: plan.rule === 'after-emergence',
            stillInBox: plan.levels.stillInBox,
            emerged: plan.levels.emerged,
          })}
        </p>
        {mayEdit(view) ? <RuleForm view={view} state={state} /> : null}
      </section>
      <p class="same">
        <a href="/editing/blocked/new">{say('page-lifting-blocked-link', {})}</a>
        <a href="/tally">{say('page-lifting-tallies', {})}</a>
        <a href="/lifting/outcome">{say('page-lifting-outcome', {})}</a>
      </p>
      <p class="no-print">
        <WorkedOut view={view} about="lifting" />
      </p>
      <SameAs
        view={view}
        json={`/api/v1/lifting?as_of=${isoDay(plan.asOf)}`}
        csv={`/api/v1/lifting.csv?as_of=${isoDay(plan.asOf)}`}
      />
    </Frame>
  );
}

function Approve({ view, state, looksBack }: LiftingProps) {
  const { recommended } = state.plan;
  const same =
    state.approved?.days.map(({ date }) => date).join() === recommended.map(({ day }) => isoDay(day)).join();
  if (!mayEdit(view) || looksBack || recommended.length === 0 || same) return null;
  return (
    <form method="post" action="/lifting/approve" class="actions">
      <Csrf view={view} />
      {recommended.map(({ day }) => (
        <input type="hidden" name="day" value={isoDay(day)} />
      ))}
      <button type="submit">{view.say('page-lifting-approve', {})}</button>
      <span class="small">{view.say('page-lifting-approve-note', {})}</span>
    </form>
  );
}

function Sheets({ view, state: { plan, season } }: { view: View; state: LiftingState }) {
  const name = (site: string) => nameIn(season.sites, site);
  return (
    <ul class="no-print">
      {plan.recommended.flatMap(({ day, sites }) =>
        sites.map((site) => (
          <li>
            <a href={sheetAddress(day, site)}>{view.say('page-lifting-sheet', { site: name(site), day })}</a>
          </li>
        )),
      )}
    </ul>
  );
}

const SHARES = ['page-lifting-line-still', 'page-lifting-line-out', 'page-lifting-line-chance'] as const;

/** Which line is which, in the dashes that the chart draws them with; above it, where a phone shows it. */
function LineKey({ view: { say } }: { view: View }) {
  const line = (stroke: string, dash: string, width: number, upright = false) => (
    <svg width="30" height="12" aria-hidden="true">
      <path
        d={upright ? 'M15 0v12' : 'M0 6h30'}
        stroke={`var(--${stroke})`}
        stroke-width={width}
        stroke-dasharray={dash}
        fill="none"
      />
    </svg>
  );
  return (
    <ul class="line-key">
      <li>
        {line('s1', '', 2)} {say('page-lifting-line-still', {})}
      </li>
      <li>
        {line('s2', '6 3', 2)} {say('page-lifting-line-out', {})}
      </li>
      <li>
        {line('ink', '1.5 3', 1.6)} {say('page-lifting-line-chance', {})}
      </li>
      <li>
        {line('today', '', 1.5, true)} {say('page-lifting-recommended', {})}
      </li>
    </ul>
  );
}

function columnsOf(view: View) {
  return [
    { name: view.say('column-day', {}) },
    ...SHARES.map((word) => ({ name: view.say(word, {}), number: true })),
  ];
}

/** Where few draws hold nearly all, the mean lies outside the interval: told then by the end it passes. */
function shareOf(view: View, { mean, p10, p90 }: BoxPlan['days'][number]['emerged']): string {
  return view.say('lifting-share', { mean, from: p10, to: p90, digits: 0 });
}

function rowsOf(view: View, days: BoxPlan['days']): string[][] {
  const step = Math.ceil(days.length / ROWS);
  const shown = days.filter(({ stillInBox, emerged }) => stillInBox.p10 < 0.99 && emerged.p90 < 0.99);
  return shown
    .filter((_, i) => i % step === 0)
    .map(({ day, stillInBox, emerged, chance }) => [
      view.short(day),
      shareOf(view, stillInBox),
      shareOf(view, emerged),
      view.percent(chance),
    ]);
}

function SeasonCurve({ view, state: { plan } }: { view: View; state: LiftingState }) {
  const [first] = plan.recommended;
  if (first === undefined || plan.days.length === 0) return null;
  const then = plan.days.find(({ day }) => day === first.day);
  const title = view.say('page-lifting-curve-season', {
    day: first.day,
    stillInBox: then?.stillInBox.mean ?? 0,
    emerged: then?.emerged.mean ?? 0,
  });
  const planned = plan.recommended.map(({ day }) => day);
  const svg = liftingChart({
    language: view.language,
    title,
    days: plan.days,
    planned,
  });
  return (
    <ChartFigure
      view={view}
      title={title}
      lineKey={<LineKey view={view} />}
      svg={svg}
      columns={columnsOf(view)}
      rows={rowsOf(view, plan.days)}
    />
  );
}

function Shifts({ view, state: { plan } }: { view: View; state: LiftingState }) {
  if (plan.shifts.length === 0) return null;
  return (
    <section>
      <h2>{view.say('page-lifting-shifts', {})}</h2>
      <Figures
        caption={view.say('page-lifting-shifts', {})}
        columns={[
          { name: view.say('page-lifting-shift', {}) },
          { name: view.say('page-lifting-line-chance', {}), number: true },
          { name: view.say('page-lifting-shift-still', {}), number: true },
          { name: view.say('page-lifting-shift-out', {}), number: true },
        ]}
        rows={plan.shifts.map(({ by, chance, stillInBox, emerged }) => [
          view.say('page-lifting-shift-days', { by }),
          view.percent(chance),
          view.whole(stillInBox),
          view.whole(emerged),
        ])}
      />
    </section>
  );
}

function Boxes({ view, state: { plan }, box: asked }: LiftingProps) {
  if (plan.boxes.length === 0) return null;
  const all = plan.boxes.length <= CURVES_AT_ONCE;
  const drawn = plan.boxes.filter(({ box }) => all || box === asked);
  return (
    <section>
      <h2>{view.say('page-lifting-boxes', {})}</h2>
      {all ? null : (
        <p>
          {plan.boxes.map(({ box }) => (
            <>
              <a href={`/lifting?box=${encodeURIComponent(box)}#${encodeURIComponent(box)}`}>{box}</a>{' '}
            </>
          ))}
        </p>
      )}
      {drawn.map((one) => (
        <BoxCurve view={view} one={one} />
      ))}
    </section>
  );
}

function BoxCurve({ view, one }: { view: View; one: BoxPlan }) {
  const at = one.days.find(({ day }) => day === one.planned);
  const title =
    at === undefined
      ? view.say('page-lifting-curve-box-none', { box: one.box })
      : view.say('page-lifting-curve-box', { box: one.box, day: at.day, chance: at.chance });
  const planned = one.planned === null ? [] : [one.planned];
  const svg = liftingChart({
    language: view.language,
    title,
    days: one.days,
    planned,
    height: 170,
  });
  return (
    <div id={one.box}>
      <ChartFigure
        view={view}
        title={title}
        lineKey={<LineKey view={view} />}
        svg={svg}
        columns={columnsOf(view)}
        rows={rowsOf(view, one.days)}
      />
    </div>
  );
}
