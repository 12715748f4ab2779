import { type DaySeries, Origin } from '../../../forecasting/day-series.js';
import { fillsAt } from '../../../forecasting/quality/index.js';
import { recordChart, type Stretch } from '../../charts/index.js';
import type { LoadRow, Series, StationFinding, StationRow } from '../../group/index.js';
import type { Season } from '../../season/index.js';
import { decimal, isoDay } from '../../words/index.js';
import { ChartFigure } from '../parts/figure.js';
import { Frame, WorkedOut } from '../parts/frame.js';
import { momentNames } from '../parts/moments.js';
import { mayAdd, type View } from '../view.js';
import { Checks } from './checks.js';

const DAY = 86_400_000;

/** From this QARTOD flag on a reading is doubted: 3 suspect, 4 fail. */
const DOUBTED = 3;

export interface StationProps {
  readonly view: View;
  readonly row: StationRow;
  readonly season: Season;
  readonly loads: readonly LoadRow[];
  readonly series: Series | null;
  readonly days: DaySeries | null;
  readonly findings: readonly StationFinding[];
  /** The stretch asked for, as dates; null: all of it. */
  readonly from: string | null;
  readonly to: string | null;
}

/** A station's record from years down to single readings, and what made it. */
export function StationPage(props: StationProps) {
  const { view, row, season, loads, series } = props;
  const { say } = view;
  const { records } = row;
  const readings = records.reduce((sum, one) => sum + one.readings, 0);
  const station = season.stations.find(({ id }) => id === row.station);
  return (
    <Frame
      view={view}
      title={say('page-station-title', { station: row.name })}
      answer={
        readings === 0
          ? say('page-station-empty', { station: row.name })
          : say('page-station-answer', {
              station: row.name,
              kind: row.kind,
              readings,
              from: Math.min(...records.map(({ first }) => first)) / DAY,
              to: Math.max(...records.map(({ last }) => last)) / DAY,
            })
      }
      current="stations"
      scripts={['record.js']}
      styles={['record.css']}
    >
      {records.some(({ last }) => last / DAY > view.today + 1) ? (
        <p class="note">{say('page-station-later-readings', { day: view.today })}</p>
      ) : null}
      {row.inSeason ? null : <p class="note">{say('page-station-not-in-season', {})}</p>}
      {station?.place ? <p class="small">{station.place}</p> : null}
      {readings > 0 || !mayAdd(view) ? null : (
        <p class="no-print">
          <a class="button" href="/downloads">
            {say('page-station-load', {})}
          </a>
        </p>
      )}
      {series === null || series.at.length === 0 ? null : <Record {...props} series={series} />}
      {readings === 0 ? null : (
        <Checks view={view} season={season} station={row.station} findings={props.findings} />
      )}
      <h2>{say('page-station-deployments', {})}</h2>
      <Deployments view={view} season={season} station={row.station} />
      <h2>{say('page-station-loads', {})}</h2>
      {loads.length === 0 ? <p>{say('page-downloads-no-loads', {})}</p> : null}
      <ul>
        {loads.map((load) => (
          <li class={load.withdrawn === null ? undefined : 'done'}>
            {view.named(load.load, load.file)}, {view.whole(load.readings)} {say('page-column-readings', {})}
            {load.withdrawn === null
              ? ''
              : ` (${say('page-downloads-withdrawn', { day: load.withdrawn / DAY })})`}
            {load.battery
              .filter((one) => one.station === row.station)
              .map((one) => (
                <p class="small">
                  {say('battery-said', { ...one, station: row.name, zone: season.group.zone })}
                </p>
              ))}
          </li>
        ))}
      </ul>
    </Frame>
  );
}

function Record({ view, row, season, series, days, from, to }: StationProps & { series: Series }) {
  const { say, language } = view;
  const unit = { temperature: '°C', level: 'm', discharge: 'm³/s' }[series.quantity];
  const doubted = series.flag.filter((flag) => flag >= DOUBTED).length;
  const [low, high] = [Math.min(...series.min), Math.max(...series.max)];
  const digits = high - low < 0.2 ? 2 : 1;
  const title = say('page-station-record', {
    from: (series.at[0] ?? series.from) / DAY,
    to: (series.at.at(-1) ?? series.to) / DAY,
    low: decimal(language, low, digits),
    high: decimal(language, high, digits),
    unit,
  });
  const api = `/api/v1/stations/${encodeURIComponent(row.station)}`;
  const every = Math.max(1, Math.ceil(series.at.length / 60));
  const { zone } = season.group;
  const moment = momentNames(view, series.at, every, zone);
  const rows = Array.from(series.at, (at, i) => ({ at, i }))
    .filter(({ i }) => i % every === 0)
    .map(({ at, i }) => [moment(at), decimal(language, series.mean[i] ?? Number.NaN, 2)]);
  return (
    <section>
      <div
        id="record"
        data-record={`${api}/record?quantity=${series.quantity}`}
        data-days={`${api}/days`}
        data-unit={unit}
        data-language={language}
        data-measured={say('page-origin-measured', {})}
        data-low={say('page-station-lowest', {})}
        data-high={say('page-station-highest', {})}
        data-doubted={say('page-station-doubted', {})}
        data-time={say('page-column-when', {})}
        data-filled={say('page-station-filled-days', {})}
      >
        <ChartFigure
          view={view}
          title={title}
          svg={recordChart({
            language,
            title,
            unit,
            zone,
            there: series,
            brought: notMeasured(days, series),
          })}
          note={say('page-station-key', {})}
          columns={[{ name: say('page-column-when', {}) }, { name: unit, number: true }]}
          rows={rows}
        />
      </div>
      <form class="choose" method="get">
        <label>
          {say('page-station-from', {})}
          <input type="date" name="from" value={from ?? isoDay((series.at[0] ?? series.from) / DAY)} />
        </label>
        <label>
          {say('page-station-to', {})}
          <input type="date" name="to" value={to ?? isoDay((series.at.at(-1) ?? series.to) / DAY)} />
        </label>
        <button type="submit">{say('page-station-show', {})}</button>
        <a class="button quiet" href={`/stations/${encodeURIComponent(row.station)}`}>
          {say('page-station-whole', {})}
        </a>
      </form>
      <div class="actions" id="record-buttons" hidden>
        {(['earlier', 'later', 'closer', 'wider'] as const).map((move) => (
          <button type="button" class="quiet" data-move={move}>
            {say(`page-station-${move}`, {})}
          </button>
        ))}
        <span class="small">{say('page-station-zoom', {})}</span>
      </div>
      <p class="small">
        {doubted === 0
          ? say('page-station-unflagged', {})
          : say('page-station-flagged', { steps: doubted, of: series.at.length })}{' '}
        <WorkedOut view={view} about="record" />
      </p>
      <p class="same">
        <a href={`${api}/record.csv`}>{say('page-station-readings-csv', {})}</a>
        <a href={`${api}/record.csv?daily=true`}>{say('page-station-days-csv', {})}</a>
        <a href={`${api}/days`}>{say('page-station-days-json', {})}</a>
        <a href={`${api}/record`}>{say('page-station-record-json', {})}</a>
      </p>
    </section>
  );
}

/** Filled and projected days inside the stretch that is shown, at noon. */
function notMeasured(days: DaySeries | null, series: Series): Stretch | null {
  const { from, to, quantity } = series;
  if (days === null || quantity !== 'temperature') return null;
  const at: number[] = [];
  const mean: number[] = [];
  // As of an earlier day a day may be filled that has been read since: what was measured shows.
  const read = new Set(Array.from(series.at, (instant) => Math.floor(instant / DAY)));
  days.origin.forEach((origin, i) => {
    const noon = (days.firstDay + i + 0.5) * DAY;
    if (
      (origin !== Origin.filled && origin !== Origin.projected) ||
      noon < from ||
      noon > to ||
      read.has(days.firstDay + i)
    )
      return;
    at.push(noon);
    mean.push(days.mean[i] ?? Number.NaN);
  });
  return at.length === 0 ? null : { at, min: mean, mean, max: mean };
}

/** The day a logger that lies there is full. */
function Fills(props: { view: View; season: Season; logger: string; from: string }) {
  const known = props.season.loggers.find(({ id }) => id === props.logger);
  const full = fillsAt({
    from: Date.parse(props.from),
    memory: known?.memory ?? null,
    intervalMinutes: known?.interval ?? null,
  });
  return full === null ? null : <>, {props.view.say('quality-fills', { day: full / DAY })}</>;
}

function Deployments({ view, season, station }: { view: View; season: Season; station: string }) {
  const { say } = view;
  const here = season.deployments.filter((deployment) => deployment.station === station);
  const day = (moment: string) => Date.parse(moment) / DAY;
  if (here.length === 0) return <p>{say('page-station-no-deployments', {})}</p>;
  return (
    <ul>
      {here.map(({ logger, lay, from, to, lost, note }) => (
        <li>
          {say('page-station-deployment', {
            logger,
            lay: say(`page-lay-${lay}`, {}),
            from: day(from),
            to: to === null ? null : day(to),
            lost,
          })}
          {to === null && !lost ? <Fills view={view} season={season} logger={logger} from={from} /> : null}
          {note === null ? '' : `. ${note}`}
        </li>
      ))}
    </ul>
  );
}
