import { type Context, Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { HttpRefused } from '../../http/refused.js';
import { compareSeasons, readSeason, type SeasonChange, seasonDocument } from '../../season/index.js';
import { type AnyRefusal, isRefusal } from '../../words/refusals.js';
import { wrongsIn } from '../parts/refused-form.js';
import { changeSeason, type Document, listIn, standingVersion } from '../parts/season-change.js';
import { viewOf } from '../view.js';
import { fieldOf } from './field-of.js';
import { wrongsInFile } from './file-wrongs.js';
import { ThingPage } from './form.js';
import { type Kind, kinds } from './kinds.js';
import { EditingPage, HistoryPage, SeasonFilePage } from './pages.js';
import { isThing, stated } from './thing.js';

/** What the season is called in sentences about it. */
const SEASON = 'season';

/** Versions whose changes are shown; older ones are listed. */
const SHOWN = 10;

export function editingRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/editing', async (c) => {
      const { group } = c.var;
      const [document, versions] = await Promise.all([group.season(), group.seasonVersions()]);
      return c.html(
        <EditingPage view={await viewOf(c)} document={seasonDocument(document)} standing={versions[0]} />,
      );
    })
    .get('/editing/file', async (c) => {
      const text = await c.var.group.seasonText();
      return c.html(
        <SeasonFilePage
          view={await viewOf(c)}
          text={text}
          version={await standingVersion(c)}
          changes={null}
        />,
      );
    })
    .post('/editing/file', postFile)
    .get('/editing/history', async (c) => {
      const [versions, { group }] = await Promise.all([c.var.group.seasonVersions(), c.var.group.season()]);
      return c.html(
        <HistoryPage
          view={await viewOf(c)}
          versions={versions}
          zone={group.zone}
          changes={await newestChanges(c)}
        />,
      );
    })
    .post('/editing/undo', async (c) => {
      const { group, form, person } = c.var;
      const text = await group.seasonAt(Number(form.field('to')));
      await group.applySeason(text, SEASON, person.name, Number(form.field('version')));
      return c.redirect('/editing/history', 303);
    })
    .get('/editing/:kind/:index', async (c) => {
      const kind = kindOf(c);
      const thing = await thingOf(c, kind);
      return c.html(await thingPage(c, kind, thing, await standingVersion(c)));
    })
    .post('/editing/:kind/:index', async (c) => {
      const kind = kindOf(c);
      const index = indexOf(c);
      const thing = stated(kind, await thingOf(c, kind), c.var.form);
      return changed(c, kind, thing, (things) =>
        index === null ? [...things, thing] : things.map((one, i) => (i === index ? thing : one)),
      );
    })
    .post('/editing/:kind/:index/remove', async (c) => {
      const kind = kindOf(c);
      const index = indexOf(c);
      return changed(c, kind, await thingOf(c, kind), (things) => things.filter((_, i) => i !== index));
    });
}

async function postFile(c: Context<Environment>) {
  const { group, form, person } = c.var;
  const text = form.field('text');
  const version = Number(form.field('version'));
  try {
    if (form.field('do') === 'apply') {
      await group.applySeason(text, SEASON, person.name, version);
      return c.redirect('/editing', 303);
    }
    const changes = await group.previewSeason(text, SEASON);
    return c.html(<SeasonFilePage view={await viewOf(c)} text={text} version={version} changes={changes} />);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    const view = await viewOf(c);
    const wrongs = wrongsInFile(view, error);
    return c.html(
      <SeasonFilePage view={view} text={text} version={version} changes={null} wrongs={wrongs} />,
      422,
    );
  }
}

async function changed(
  c: Context<Environment>,
  kind: Kind,
  thing: Document,
  edit: (things: readonly unknown[]) => readonly unknown[],
) {
  try {
    await changeSeason(c, (document) => ({ ...document, [kind.list]: edit(listIn(document, kind.list)) }));
  } catch (error) {
    if (!isRefusal(error)) throw error;
    const moved = error.remark.code === 'season-moved';
    return c.html(
      await thingPage(c, kind, thing, Number(c.var.form.field('version')), error),
      moved ? 409 : 422,
    );
  }
  return c.redirect('/editing', 303);
}

async function thingPage(
  c: Context<Environment>,
  kind: Kind,
  thing: Document,
  version: number,
  refusal?: AnyRefusal,
) {
  const { group } = c.var;
  const view = await viewOf(c);
  const season = await group.season();
  const index = indexOf(c);
  const place = index ?? listIn(seasonDocument(season), kind.list).length;
  return (
    <ThingPage
      view={view}
      kind={kind}
      thing={thing}
      index={index}
      version={version}
      season={season}
      tables={await group.tables()}
      {...(refusal === undefined ? {} : { wrongs: wrongsIn(view, refusal, fieldOf(view, kind, place)) })}
    />
  );
}

function kindOf(c: Context<Environment>): Kind {
  const kind = kinds.find(({ list }) => list === c.req.param('kind'));
  if (kind === undefined) throw notFound(c);
  return kind;
}

/** Its place in the list; null for a new one. */
function indexOf(c: Context<Environment>): number | null {
  const given = c.req.param('index') ?? '';
  if (given === 'new') return null;
  if (!/^\d{1,6}$/.test(given)) throw notFound(c);
  return Number(given);
}

async function thingOf(c: Context<Environment>, kind: Kind): Promise<Document> {
  const index = indexOf(c);
  if (index === null) return {};
  const thing = listIn(seasonDocument(await c.var.group.season()), kind.list)[index];
  if (!isThing(thing)) throw notFound(c);
  return thing;
}

function notFound(c: Context<Environment>): HttpRefused {
  return new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 200) } });
}

async function newestChanges(c: Context<Environment>): Promise<ReadonlyMap<number, readonly SeasonChange[]>> {
  const { group } = c.var;
  const versions = (await group.seasonVersions()).slice(0, SHOWN + 1);
  const seasons = await Promise.all(
    versions.map(async ({ version }) => ({
      version,
      season: readSeason(await group.seasonAt(version), SEASON),
    })),
  );
  return new Map(
    seasons.slice(0, -1).map(({ version, season }, i) => {
      const before = seasons[i + 1];
      return [version, before === undefined ? [] : compareSeasons(before.season, season)];
    }),
  );
}
