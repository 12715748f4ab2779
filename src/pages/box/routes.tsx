import { type Context, Hono } from 'hono';
import type { BoxForecast } from '../../../forecasting/forecast.js';
import { UnknownName } from '../../group/unknown-name.js';
import type { Environment } from '../../http/environment.js';
import { groupStock } from '../../stock/index.js';
import { type AnyRefusal, isRefusal } from '../../words/refusals.js';
import { asOfAsked } from '../parts/as-of.js';
import { wrongsIn } from '../parts/refused-form.js';
import { changeSeason, listIn, standingVersion } from '../parts/season-change.js';
import { viewOf } from '../view.js';
import { FilledPage, pairings } from './filled.js';
import { observedField } from './observed.js';
import { BoxPage } from './page.js';

export function boxRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/boxes/:box', async (c) => c.html(await boxPage(c)))
    .get('/boxes/:box/filled', async (c) => {
      const { box } = await forecastOf(c);
      const season = await c.var.group.season();
      const made = box.water === null ? [] : await pairings(c.var.group, box.water);
      const stationName = (id: string) => season.stations.find((one) => one.id === id)?.name ?? id;
      return c.html(
        <FilledPage
          view={await viewOf(c)}
          box={box.box}
          made={made}
          station={box.water?.station ?? ''}
          stationName={stationName}
        />,
      );
    })
    .post('/boxes/:box/observed', async (c) => {
      const { form } = c.var;
      const box = c.req.param('box');
      const fields = ['date', 'stage', 'lot', 'seen', 'of', 'note'];
      const stated = fields.map((name) => [name, form.field(name).trim()] as const);
      const seen = Object.fromEntries([['box', box], ...stated].filter(([, value]) => value !== ''));
      try {
        await changeSeason(c, (document) => ({
          ...document,
          observed: [...listIn(document, 'observed'), seen],
        }));
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await boxPage(c, error), 422);
      }
      return c.redirect(`/boxes/${encodeURIComponent(box)}#observed`, 303);
    });
}

async function forecastOf(c: Context<Environment>) {
  const box = c.req.param('box') ?? '';
  const { group } = c.var;
  const forecast = await group.forecast({ box, asOf: asOfAsked(c) });
  const found: BoxForecast | undefined = forecast.boxes.find((one) => one.box === box);
  if (found === undefined) throw new UnknownName({ code: 'unknown-box', with: { box, boxes: [] } });
  return { forecast, box: found };
}

async function boxPage(c: Context<Environment>, refusal?: AnyRefusal) {
  const { forecast, box } = await forecastOf(c);
  const { group, form } = c.var;
  const typed = refusal === undefined ? () => '' : (field: string) => form.field(field);
  const view = await viewOf(c);
  const given = refusal === undefined ? {} : { wrongs: wrongsIn(view, refusal, observedField(view)), typed };
  return (
    <BoxPage
      view={view}
      forecast={forecast}
      box={box}
      season={await group.season()}
      tables={await group.tables()}
      spells={await group.spells({ box: box.box, since: null })}
      stock={await groupStock(group)}
      version={await standingVersion(c)}
      {...given}
    />
  );
}
