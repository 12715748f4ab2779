import { Hono } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import type { Environment } from '../../http/environment.js';
import { viewOf } from '../view.js';
import { StationsPage } from './list.js';
import { StationPage } from './page.js';

const DAY = 86_400_000;

/** Points of a chart that is 720 px wide. */
const POINTS = 700;

export function stationRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/stations', async (c) => {
      const { group } = c.var;
      return c.html(
        <StationsPage view={await viewOf(c)} rows={await group.stations()} season={await group.season()} />,
      );
    })
    .get('/stations/:station', async (c) => {
      const { group } = c.var;
      const station = c.req.param('station');
      const all = await group.stations();
      const row = all.find((one) => one.station === station);
      if (row === undefined)
        throw new UnknownName({
          code: 'unknown-station-name',
          with: { station, stations: all.map((one) => one.station) },
        });
      const [from, to] = [dayAsked(c.req.query('from')), dayAsked(c.req.query('to'))];
      const quantity = row.records[0]?.quantity;
      const temperature = row.records.find((one) => one.quantity === 'temperature')?.quantity ?? quantity;
      const series =
        temperature === undefined
          ? null
          : await group.series({
              station,
              quantity: temperature,
              from: from === null ? null : Date.parse(from),
              to: to === null ? null : Date.parse(to) + DAY,
              points: POINTS,
            });
      const findings = await group.findings(station);
      const loads = (await group.loads()).filter(({ stations }) => stations.includes(station));
      return c.html(
        <StationPage
          view={await viewOf(c)}
          row={row}
          season={await group.season()}
          loads={loads}
          findings={findings}
          series={series}
          days={
            temperature === 'temperature' && row.inSeason
              ? await group.days({ station, from: null, to: null })
              : null
          }
          from={from}
          to={to}
        />,
      );
    });
}

function dayAsked(given: string | undefined): string | null {
  return given !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(given) && !Number.isNaN(Date.parse(given))
    ? given
    : null;
}
