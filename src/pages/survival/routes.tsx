import { Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { SurvivalAnswer, seasonReport, seasonsThere } from '../../reports/index.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { SeasonChoice, seasonAsked } from '../report/choice.js';
import { viewOf } from '../view.js';

/** What survived, of any season: by box and together, and what the numbers can tell. */
export function survivalRoutes(): Hono<Environment> {
  return new Hono<Environment>().get('/survival', async (c) => {
    const view = await viewOf(c);
    const { group } = c.var;
    const there = await seasonsThere(group);
    const asked = seasonAsked(c);
    const { season, figures } = await seasonReport(group, asked);
    const query = asked === null ? '' : `?season=${encodeURIComponent(asked)}`;
    return c.html(
      <Frame view={view} title={view.say('page-survival-title', { season })} current="survival">
        <SeasonChoice view={view} there={there} season={season} path="/survival" />
        <div class="report">
          <SurvivalAnswer figures={figures} speech={view} />
        </div>
        <p class="no-print">
          <a href={`/report${query}`}>{view.say('page-report-season', {})}</a>
        </p>
        <p class="no-print">
          <WorkedOut view={view} about="survival" />
        </p>
        <SameAs view={view} json={`/api/v1/survival${query}`} csv={`/report-files/boxes.csv${query}`} />
      </Frame>,
    );
  });
}
