import type { StationRow } from '../../group/index.js';
import type { Season } from '../../season/index.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';

const DAY = 86_400_000;

interface ListProps {
  readonly view: View;
  readonly rows: readonly StationRow[];
  readonly season: Season;
}

/** Every station, and how far its record reaches. */
export function StationsPage({ view, rows, season }: ListProps) {
  const { say } = view;
  const silent = rows.filter(({ records }) => records.length === 0).length;
  return (
    <Frame
      view={view}
      title={say('page-stations-title', {})}
      answer={
        rows.length === 0
          ? say('page-stations-none', {})
          : say('page-stations-answer', { stations: rows.length, silent })
      }
      current="stations"
      cautions={false}
    >
      {rows.length === 0 ? null : (
        <section class="scroll" tabindex={0} aria-label={say('page-stations-title', {})}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say('page-station', {})}</th>
                <th scope="col">{say('page-station-kind', {})}</th>
                <th scope="col">{say('page-station-reports', {})}</th>
                <th scope="col" class="number">
                  {say('page-column-readings', {})}
                </th>
                <th scope="col">{say('page-station-first', {})}</th>
                <th scope="col">{say('page-station-last', {})}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Row view={view} row={row} season={season} />
              ))}
            </tbody>
          </table>
        </section>
      )}
      {mayEdit(view) ? (
        <p>
          <a class="button quiet" href="/editing/stations/new">
            {say('page-edit-new-station', {})}
          </a>
        </p>
      ) : null}
      {rows.length === 0 ? null : (
        <p>
          <WorkedOut view={view} about="record" />
        </p>
      )}
      <SameAs view={view} json="/api/v1/stations" csv="/api/v1/stations.csv" />
    </Frame>
  );
}

function Row({ view, row, season }: { view: View; row: StationRow; season: Season }) {
  const { records } = row;
  const stated = season.stations.find(({ id }) => id === row.station);
  const day = (at: number) => (Number.isFinite(at) ? view.long(at / DAY) : '');
  return (
    <tr>
      <td>
        <a href={`/stations/${encodeURIComponent(row.station)}`}>{row.name}</a>
      </td>
      <td>{kindName(view, row.kind)}</td>
      <td>{stated === undefined ? '' : view.say(stated.reports ? 'page-yes' : 'page-no', {})}</td>
      <td class="number">{view.whole(records.reduce((sum, { readings }) => sum + readings, 0))}</td>
      <td class="date">{day(Math.min(...records.map(({ first }) => first)))}</td>
      <td class="date">{day(Math.max(...records.map(({ last }) => last)))}</td>
    </tr>
  );
}

export function kindName(view: View, kind: string): string {
  const known = (['stream', 'gravel', 'air', 'tank', 'gauge'] as const).find((one) => one === kind);
  return known === undefined ? kind : view.say(`page-kind-${known}`, {});
}
