import { type Context, Hono } from 'hono';
import { loadSampleSeason, sampleWinterDay } from '../../group/sample-season.js';
import type { Environment } from '../../http/environment.js';
import { renderSeason, seasonFrom, typedFigure } from '../../season/index.js';
import { isoDay } from '../../words/index.js';
import { type AnyRefusal, isRefusal } from '../../words/refusals.js';
import { wrongsIn } from '../parts/refused-form.js';
import { changeSeason, standingVersion } from '../parts/season-change.js';
import { viewOf } from '../view.js';
import { FirstVisitPage } from './page.js';
import { stepsDone } from './steps.js';
import { firstField } from './wrongs.js';

export function firstVisitRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/first-visit', async (c) => c.html(await firstPage(c)))
    .post('/first-visit/sample', async (c) => {
      await loadSampleSeason(c.var.group, c.var.person.name);
      return c.redirect(`/?as_of=${isoDay(sampleWinterDay)}`, 303);
    })
    .post('/first-visit', async (c) => {
      const { group, person, form } = c.var;
      try {
        const season = seasonFrom(
          firstSeason((name) => form.field(name).trim()),
          'season',
        );
        await group.applySeason(renderSeason(season), 'season', person.name, await standingVersion(c));
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await firstPage(c, error), 422);
      }
      return c.redirect('/first-visit', 303);
    })
    .post('/first-visit/curve', async (c) => {
      const seasonalCurve = { monthly: monthly(c.var.form.field('curve')) };
      try {
        await changeSeason(c, (document) => ({ ...document, seasonalCurve }));
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await firstPage(c, error), 422);
      }
      return c.redirect('/first-visit', 303);
    });
}

async function firstPage(c: Context<Environment>, refusal?: AnyRefusal) {
  const { group, form } = c.var;
  const [season, loads, tables] = await Promise.all([group.season(), group.loads(), group.tables()]);
  const forecast = season.boxes.length === 0 ? null : await group.forecast({ box: null, asOf: null });
  const view = await viewOf(c);
  const given =
    refusal === undefined
      ? {}
      : { wrongs: wrongsIn(view, refusal, firstField(view)), typed: (name: string) => form.field(name) };
  return (
    <FirstVisitPage
      view={view}
      steps={stepsDone(season, loads, forecast)}
      version={await standingVersion(c)}
      empty={season.stations.length === 0 && season.boxes.length === 0}
      tables={tables}
      zone={season.group.zone === 'UTC' ? '' : season.group.zone}
      {...given}
    />
  );
}

/** Twelve figures in a line, apart by spaces or semicolons: commas may be decimal ones, unless a space follows. */
function monthly(line: string): string[] {
  return line
    .split(/[;\s]+|,\s+/)
    .filter((one) => one !== '')
    .map((one) => typedFigure(one));
}

/** The least season that gives a window, in the shape of the season file. */
function firstSeason(field: (name: string) => string): Record<string, unknown> {
  const stated = (thing: Record<string, string>) =>
    Object.fromEntries(Object.entries(thing).filter(([, value]) => value !== ''));
  const moment = (name: string) => field(name).replace('T', ' ');
  const figure = (name: string) => typedFigure(field(name));
  const curve = monthly(field('curve'));
  const [station, site, lot] = [field('station'), field('site'), field('lot')];
  return {
    group: { name: field('group'), zone: field('zone') },
    stations: [stated({ id: station, latitude: figure('latitude'), longitude: figure('longitude') })],
    sites: [{ id: site, station }],
    lots: [{ id: lot, fertilised: moment('fertilised'), eggs: figure('eggs'), table: field('table') }],
    boxes: [
      {
        id: field('box'),
        site,
        fills: [{ lot, eggs: figure('eggs'), planted: moment('planted') }],
      },
    ],
    ...(curve.length === 0 ? {} : { seasonalCurve: { monthly: curve } }),
  };
}
