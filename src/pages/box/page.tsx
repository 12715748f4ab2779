import type { BoxForecast, Forecast, ForecastRemark } from '../../../forecasting/forecast.js';
import type { DevelopmentTable } from '../../../forecasting/index.js';
import { epochMillis, type Season, standardOffset } from '../../season/index.js';
import type { SpellRow } from '../../spells/contract.js';
import type { StockBeside } from '../../stock/index.js';
import { isoDay, say as sayIn } from '../../words/index.js';
import { Frame, SameAs } from '../parts/frame.js';
import { RefusedForm, type Wrong } from '../parts/refused-form.js';
import { SpellList } from '../parts/spell-list.js';
import { byStationNames } from '../parts/station-names.js';
import { nextWindow } from '../season/next-event.js';
import { whereNow } from '../season/now.js';
import { stockSentence } from '../tables/stock.js';
import type { View } from '../view.js';
import { Courses } from './courses.js';
import { ObservedSection } from './observed.js';
import { WaterSection } from './water.js';
import { Windows } from './windows.js';

const DAY = 86_400_000;

export interface BoxProps {
  readonly view: View;
  readonly forecast: Forecast;
  readonly box: BoxForecast;
  readonly season: Season;
  readonly tables: readonly DevelopmentTable[];
  readonly spells: readonly SpellRow[];
  readonly stock: readonly StockBeside[];
  readonly version: number;
  readonly wrongs?: readonly Wrong[];
  readonly typed?: (field: string) => string;
}

export function BoxPage(props: BoxProps) {
  const { view, forecast, box, season, tables, spells, stock, version, wrongs, typed } = props;
  const { say } = view;
  const { asOf } = forecast;
  const stationName = (station: string) => season.stations.find(({ id }) => id === station)?.name ?? station;
  const address = `/api/v1/boxes/${encodeURIComponent(box.box)}?as_of=${isoDay(asOf)}`;
  const csv = `/api/v1/forecast.csv?as_of=${isoDay(asOf)}&box=${encodeURIComponent(box.box)}`;
  const stages = [...new Set(box.lots.flatMap((lot) => lot.windows.map(({ stage }) => stage)))];
  return (
    <Frame
      view={view}
      title={say('page-box-title', { box: box.box, day: asOf })}
      answer={answer(view, box)}
      current="season"
    >
      <RefusedForm view={view} wrongs={wrongs} not={say('page-edit-refused', {})} />
      <Windows view={view} box={box} />
      {spells.length === 0 ? null : (
        <section>
          <h2>{say('page-spells-of-box', {})}</h2>
          <SpellList view={view} rows={spells} zone={season.group.zone} />
        </section>
      )}
      <Remarks
        view={view}
        title={say('page-box-sharpen', {})}
        remarks={byStationNames(box.sharpenBy, season)}
      />
      <WaterSection view={view} box={drawnTo(box)} asOf={asOf} stationName={stationName} />
      <Courses view={view} box={drawnTo(box)} asOf={asOf} lots={lotsOf(season, tables)} />
      <Contents view={view} box={box} season={season} tables={tables} stationName={stationName} />
      <ObservedSection
        view={view}
        box={box}
        seen={season.observed.filter((seen) => seen.box === box.box)}
        version={version}
        stages={stages}
        typed={typed ?? (() => '')}
        wrongs={wrongs}
      />
      <Stock view={view} box={box} season={season} all={stock} />
      <Remarks view={view} title={say('page-box-method', {})} remarks={byStationNames(box.method, season)} />
      <Remarks
        view={view}
        title={say('page-box-assumes', {})}
        remarks={byStationNames(box.assumptions, season)}
      />
      <SameAs view={view} json={address} csv={csv} />
    </Frame>
  );
}

/** Days drawn after the last window has closed. */
const AFTER = 10;

/** The box with its water as far as its windows reach: what comes after them says nothing of its eggs. */
function drawnTo(box: BoxForecast): BoxForecast {
  const { water } = box;
  const ends = box.windows.flatMap(({ last }) => last.p90 ?? last.p50 ?? []);
  if (water === null || ends.length === 0) return box;
  const { days } = water;
  const length = Math.min(days.mean.length, Math.ceil(Math.max(...ends)) + AFTER - days.firstDay);
  const cut = (column: Float64Array) => column.subarray(0, length);
  const shorter = {
    firstDay: days.firstDay,
    mean: cut(days.mean),
    min: cut(days.min),
    max: cut(days.max),
    coverage: cut(days.coverage),
    spread: cut(days.spread),
    origin: days.origin.subarray(0, length),
  };
  return { ...box, water: { ...water, days: shorter } };
}

/** What the group's own lots have shown of this box's tables; nothing where none was looked at. */
function Stock(props: { view: View; box: BoxForecast; season: Season; all: readonly StockBeside[] }) {
  const { view, box, season, all } = props;
  const mine = new Set(box.lots.flatMap(({ lot }) => season.lots.find(({ id }) => id === lot)?.table ?? []));
  const shown = all.filter(({ published }) => mine.has(published.id));
  if (shown.length === 0) return null;
  return (
    <section id="stock">
      <h2>{view.say('page-stock-title', {})}</h2>
      {shown.map((one) => (
        <p>
          {stockSentence(view, one)} <a href="/tables#stock">{view.say('page-stock-link', {})}</a>
        </p>
      ))}
    </section>
  );
}

function answer(view: View, box: BoxForecast): string {
  const next = nextWindow(box);
  const median = next?.median ?? null;
  return view.say('page-box-answer', {
    box: box.box,
    eggs: box.eggs,
    now: box.lots.every(({ stage }) => stage === 'unknown') ? null : whereNow(box, view),
    next: next?.stage ?? null,
    median: median?.p50 ?? null,
    from: median?.p10 ?? null,
    to: median?.p90 ?? null,
  });
}

function Remarks(props: { view: View; title: string; remarks: readonly ForecastRemark[] }) {
  const { view, title, remarks } = props;
  if (remarks.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul>
        {remarks.map((remark) => (
          <li>{sayIn(view.language, remark)}</li>
        ))}
      </ul>
    </section>
  );
}

interface ContentsProps {
  readonly view: View;
  readonly box: BoxForecast;
  readonly season: Season;
  readonly tables: readonly DevelopmentTable[];
  readonly stationName: (station: string) => string;
}

/** Its fills, where it lies and how to find it, and the stations that stand for its water. */
function Contents({ view, box, season, tables, stationName }: ContentsProps) {
  const { say } = view;
  const stated = season.boxes.find(({ id }) => id === box.box);
  const site = season.sites.find(({ id }) => id === box.site);
  const day = (moment: string) => view.long(Date.parse(`${moment.slice(0, 10)}T00:00Z`) / DAY);
  const tableName = (id: string) => tables.find((table) => table.id === id)?.name[view.language] ?? id;
  return (
    <section>
      <h2>{say('page-box-lots', {})}</h2>
      <ul>
        {stated?.fills.map((fill) => {
          const lot = season.lots.find(({ id }) => id === fill.lot);
          return lot === undefined ? null : (
            <li>
              {say('page-box-lot', {
                lot: fill.lot,
                eggs: fill.eggs,
                part: fill.part,
                fertilised: day(lot.fertilised),
                planted: day(fill.planted),
                table: tableName(lot.table),
              })}
            </li>
          );
        })}
      </ul>
      <p>
        {[say('page-box-place', { site: site?.name ?? box.site }), site?.access, stated?.find ?? site?.find]
          .flatMap((told) => (told == null || told === '' ? [] : [/[.!?…]$/.test(told) ? told : `${told}.`]))
          .join(' ')}
      </p>
      <p>
        {say('page-box-stations', {})}{' '}
        {stated?.stations.map((station, i) => (
          <>
            {i > 0 ? ', ' : ''}
            <a href={`/stations/${encodeURIComponent(station)}`}>{stationName(station)}</a>
          </>
        ))}
      </p>
    </section>
  );
}

function lotsOf(season: Season, tables: readonly DevelopmentTable[]) {
  const offset = standardOffset(season.group.zone) * 60_000;
  return new Map(
    season.lots.flatMap((lot) => {
      const table = tables.find(({ id }) => id === lot.table);
      const fertilised = (epochMillis(lot.fertilised) + offset) / DAY;
      return table === undefined ? [] : [[lot.id, { table, fertilised }] as const];
    }),
  );
}
