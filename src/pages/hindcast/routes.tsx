import { Hono } from 'hono';
import { eggOfStage } from '../../../forecasting/hindcast/index.js';
import { askHindcast } from '../../hindcast/index.js';
import type { Environment } from '../../http/environment.js';
import { nameIn } from '../../season/index.js';
import { viewOf } from '../view.js';
import { HindcastPage, WorkingPage } from './page.js';
import { shownOf } from './shown.js';

/** A page is not held up for longer than this, ms; then it says how far the work is, and looks again. */
const WAIT = 1500;
const LOOK_AGAIN = '3';
const USUAL_TABLE = 'atlantic-salmon';

export function hindcastRoutes(): Hono<Environment> {
  return new Hono<Environment>().get('/hindcast', async (c) => {
    const { group } = c.var;
    const asked = (name: string) => c.req.query(name) || undefined;
    const table = asked('table') ?? USUAL_TABLE;
    const tables = await group.tables();
    const standing = tables.find(({ id }) => id === table);
    const wanted = asked('stage') ?? '';
    // A stage kept from another table's page: this one may not name it.
    const stage = standing !== undefined && eggOfStage(standing, wanted) !== null ? wanted : null;
    const fertilised = asked('fertilised') ?? null;
    const run = await askHindcast(group, { cases: [], fertilised, leads: [], gaps: [], stage }, table);
    const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), WAIT).unref());
    const report = run.ready ?? (await Promise.race([run.report, late]));
    const view = await viewOf(c);
    if (report === null) {
      c.header('Refresh', LOOK_AGAIN);
      return c.html(<WorkingPage view={view} done={run.done} all={run.all} />);
    }
    const shown = shownOf(report, asked);
    const { stations } = await group.season();
    const stationName = (station: string) => nameIn(stations, station);
    const query = new URLSearchParams({ table, ...(fertilised === null ? {} : { fertilised }) });
    if (stage !== null) query.set('stage', stage);
    return c.html(
      <HindcastPage
        view={view}
        report={report}
        shown={shown}
        tables={tables}
        stationName={stationName}
        query={query.toString()}
      />,
    );
  });
}
