import type { BoxForecast, Forecast } from '../../../forecasting/forecast.js';
import type { Season } from '../../season/index.js';
import type { SpellRow } from '../../spells/contract.js';
import { dayTimeOf } from '../../spells/days.js';
import { isoDay } from '../../words/index.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { SpellList } from '../parts/spell-list.js';
import { spellMark } from '../parts/spell-marks.js';
import type { View } from '../view.js';
import { type Asked, chosen } from './choice.js';
import { Choose } from './choose.js';
import { Legend, Reading } from './key.js';
import { barsOf } from './lanes.js';
import { Months } from './months.js';
import { whereNow } from './now.js';
import { seasonAnswer } from './season-answer.js';
import { sharpenings } from './sharpen.js';
import { Strip } from './strip.js';
import { timeAxis } from './time-axis.js';

interface SeasonProps {
  readonly view: View;
  readonly forecast: Forecast;
  readonly season: Season;
  readonly asked: Asked;
  readonly spells: readonly SpellRow[];
  /** Its name where the season in force is closed. */
  readonly closed: string | null;
}

/** The season at a glance: the page opened every week. */
export function SeasonPage({ view, forecast, season, asked, spells, closed }: SeasonProps) {
  const { say } = view;
  const at = { ...view, today: forecast.asOf };
  const names = new Map(season.sites.map(({ id, name }) => [id, name ?? id]));
  const groups = chosen(forecast.boxes, names, asked);
  const shown = groups.flatMap(({ boxes }) => boxes);
  const axis = timeAxis(shown, forecast.asOf);
  const bars = barsOf(shown, axis);
  const drawn = shown.some(({ windows }) => windows.some(({ median }) => median.p50 !== null));
  const bySite = groups.length > 1 && forecast.boxes.length > MANY;
  const { zone } = season.group;
  const told = toldBy(spells, forecast.asOf, zone);
  const marksOf = (box: string) =>
    told.filter(({ boxes }) => boxes.includes(box)).map((row) => spellMark(view, row, zone));
  const query = `?as_of=${isoDay(forecast.asOf)}`;
  return (
    <Frame
      view={view}
      title={say('page-season-title', { day: forecast.asOf })}
      answer={closed === null ? seasonAnswer(forecast, view) : say('page-season-closed', { season: closed })}
      current="season"
    >
      {closed === null ? null : (
        <p class="no-print">
          <a href="/report">{say('page-report-season', {})}</a>
        </p>
      )}
      {forecast.boxes.length > MANY || asked.any ? (
        <Choose view={view} asked={asked} boxes={forecast.boxes} shown={shown.length} />
      ) : null}
      <section class="season" aria-label={say('page-season-list', { boxes: shown.length })}>
        <Legend view={view} bars={drawn ? bars : []} />
        <Months view={at} axis={axis} />
        {groups.map(({ site, boxes }) => (
          <>
            {bySite ? <h2 class="site">{site}</h2> : null}
            <ul class="boxes">
              {boxes.map((box) => (
                <li>
                  <Row view={at} box={box} site={bySite ? null : (names.get(box.site) ?? box.site)} />
                  <Strip view={at} box={box} bars={bars} axis={axis} marks={marksOf(box.box)} />
                </li>
              ))}
            </ul>
          </>
        ))}
      </section>
      <Spells view={view} rows={told} zone={zone} />
      <Sharpen view={view} boxes={shown} season={season} />
      {drawn ? <Reading view={view} /> : null}
      <p>
        <WorkedOut view={view} about="window" />
      </p>
      <SameAs view={view} json={`/api/v1/forecast${query}`} csv={`/api/v1/forecast.csv${query}`} />
    </Frame>
  );
}

/** Spells that harm or may harm, begun by the day shown; what a gauge tells stands on the page of spells. */
function toldBy(spells: readonly SpellRow[], asOf: number, zone: string): readonly SpellRow[] {
  return spells.filter(
    ({ severity, state, from, certainty }) =>
      severity !== 'event' &&
      state !== 'withdrawn' &&
      (dayTimeOf(from, zone) < asOf + 1 || certainty === 'possible'),
  );
}

/** Spells named under the season; the rest are a page away. */
const MOST_SPELLS = 6;

function Spells({ view, rows, zone }: { view: View; rows: readonly SpellRow[]; zone: string }) {
  if (rows.length === 0) return null;
  const open = rows.filter(({ state }) => state === 'open');
  const lethal = open.filter(({ severity }) => severity === 'lethal').length;
  return (
    <section>
      <h2>{view.say('page-spells-of-box', {})}</h2>
      {open.length === 0 ? null : <p>{view.say('page-spells-season', { open: open.length, lethal })}</p>}
      <SpellList view={view} rows={rows.slice(0, MOST_SPELLS)} zone={zone} />
      <p class="small">
        {view.say('page-spells-key', {})}{' '}
        <a class="onward" href="/spells">
          {view.say('page-spells-all', {})}
        </a>
      </p>
    </section>
  );
}

/** How old a box's water is: the last day measured at the station that stands for it. */
function WaterAge({ view: { say, today }, box }: { view: View; box: BoxForecast }) {
  if (box.dataThrough === null) return <span class="water">{say('page-season-water-none', {})}</span>;
  const days = today - box.dataThrough;
  return (
    <span class="water">
      {days <= 0
        ? say('page-season-water-today', {})
        : say('page-season-water-through', { day: box.dataThrough })}
      {days <= 0 ? null : <span class="ago">{say('page-season-water-ago', { days })}</span>}
    </span>
  );
}

/** More boxes than this are sorted and filtered. */
const MANY = 12;

function Row({ view, box, site }: { view: View; box: BoxForecast; site: string | null }) {
  return (
    <p class="row">
      <a class="name" href={`/boxes/${encodeURIComponent(box.box)}`}>
        {box.box}
      </a>
      {site === null ? null : <span class="where">{site}</span>}
      <span class="now">{whereNow(box, view)}</span>
      <WaterAge view={view} box={box} />
    </p>
  );
}

function Sharpen(props: { view: View; boxes: readonly BoxForecast[]; season: Season }) {
  const { view, boxes, season } = props;
  const things = sharpenings(boxes, season, view);
  return (
    <section>
      <h2>{view.say('page-season-sharpen', {})}</h2>
      {things.length === 0 ? (
        <p>{view.say('page-season-sharpen-none', {})}</p>
      ) : (
        <ul class="sharpen">
          {things.slice(0, 12).map(({ sentence, boxes: served }) => (
            <li>
              <strong>
                {served.slice(0, 8).join(', ')}
                {served.length > 8 ? ' …' : ''}
              </strong>{' '}
              {sentence}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
