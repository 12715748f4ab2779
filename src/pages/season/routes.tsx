import { Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { seasonId } from '../../survival/index.js';
import { asOfAsked } from '../parts/as-of.js';
import { viewOf } from '../view.js';
import { askedOf } from './choice.js';
import { SeasonPage } from './page.js';

export function seasonRoutes(): Hono<Environment> {
  return new Hono<Environment>().get('/', async (c) => {
    const { group } = c.var;
    const season = await group.season();
    if (season.boxes.length === 0) return c.redirect('/first-visit', 302);
    const [view, forecast, spells, closed] = await Promise.all([
      viewOf(c),
      group.forecast({ box: null, asOf: asOfAsked(c) }),
      group.spells({ box: null, since: null }),
      group.closedSeasons(),
    ]);
    const id = seasonId(season);
    // Looked back at, it stands as it did before it was closed.
    const over = asOfAsked(c) === null && closed.some((one) => one.season === id);
    const asked = askedOf((name) => c.req.query(name));
    return c.html(
      <SeasonPage
        view={view}
        forecast={forecast}
        season={season}
        asked={asked}
        spells={spells}
        closed={over ? id : null}
      />,
    );
  });
}
