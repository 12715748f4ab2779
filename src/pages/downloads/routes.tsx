import { type Context, Hono } from 'hono';
import type { Series } from '../../group/index.js';
import { dropLayout, saveLayoutOf } from '../../group/layouts.js';
import type { Environment } from '../../http/environment.js';
import { loadWaiting, type WaitingOutcome } from '../../http/received/load-waiting.js';
import { nameIn, type Season } from '../../season/index.js';
import { isRefusal, sayRefusal } from '../../words/refusals.js';
import { mayEdit, viewOf } from '../view.js';
import { AcceptedPage } from './accepted.js';
import { type Answers, answersFrom, askedFrom, layoutNamed, mayMake } from './answers.js';
import { FilePage, type Over } from './file.js';
import { LayoutsPage } from './layouts.js';
import { DownloadsPage } from './list.js';

/** Points of a chart that is 720 px wide. */
const POINTS = 700;

export function downloadRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/downloads', async (c) => c.html(await listPage(c)))
    .post('/downloads', (c) => {
      const [only, ...more] = c.var.form.files;
      return c.redirect(only === undefined || more.length > 0 ? '/downloads' : `/downloads/${only.id}`, 303);
    })
    .post('/downloads/pasted', async (c) => {
      const { form, spool, person } = c.var;
      const file = await spool.receive(form.field('name'), person.name, bytesOf(form.field('text')));
      return c.redirect(`/downloads/${file.id}`, 303);
    })
    .get('/downloads/layouts', async (c) => c.html(await layoutsPage(c)))
    .post('/downloads/layouts/remove', async (c) => {
      try {
        await dropLayout(c.var.group, c.var.form.field('name'), c.var.person.name);
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await layoutsPage(c, sayRefusal(c.var.language, error)), 409);
      }
      return c.redirect('/downloads/layouts', 303);
    })
    .get('/downloads/:file', async (c) => {
      const answers = answersFrom((name) => c.req.query(name));
      return c.html(await filePage(c, c.req.param('file'), answers));
    })
    .post('/downloads/:file/accept', async (c) => {
      const answers = answersFrom((name) => c.var.form.field(name));
      const { group } = c.var;
      const before = await group.forecast({ box: null, asOf: null });
      const made = await waitingOutcome(c, c.req.param('file'), answers, false);
      if (made.outcome.refused !== null) return c.html(await filePage(c, c.req.param('file'), answers), 422);
      const layout = await keptLayout(c, made, answers);
      const now = await group.forecast({ box: null, asOf: null });
      const view = await viewOf(c);
      return c.html(
        <AcceptedPage
          view={view}
          outcome={made.outcome}
          before={before}
          now={now}
          layout={layout}
          stationName={stationNames(await group.season())}
        />,
      );
    })
    .post('/downloads/:file/leave', async (c) => {
      const { id } = c.var.spool.file(c.req.param('file'));
      await c.var.spool.drop(id);
      return c.redirect('/downloads', 303);
    })
    .post('/downloads/loads/:load/withdraw', async (c) => {
      try {
        await c.var.group.withdraw(c.req.param('load'), c.var.person.name);
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await listPage(c, sayRefusal(c.var.language, error)), 409);
      }
      return c.redirect('/downloads', 303);
    });
}

const stationNames =
  ({ stations }: Season) =>
  (station: string): string =>
    nameIn(stations, station);

async function layoutsPage(c: Context<Environment>, refusal?: string) {
  const { layouts } = await c.var.group.season();
  return (
    <LayoutsPage view={await viewOf(c)} layouts={layouts} {...(refusal === undefined ? {} : { refusal })} />
  );
}

/** Keeps how the file was read, where a name for it was given; a sentence on what came of it, else null. */
async function keptLayout(
  c: Context<Environment>,
  { outcome }: WaitingOutcome,
  answers: Answers,
): Promise<string | null> {
  const view = await viewOf(c);
  const layout = layoutNamed((name) => c.var.form.field(name));
  if (layout === '' || !mayEdit(view)) return null;
  try {
    await saveLayoutOf(c.var.group, layout, outcome, askedFrom(answers), c.var.person.name);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return view.say('page-accepted-layout-not', { reason: sayRefusal(view.language, error) });
  }
  return view.say('page-accepted-layout', { layout });
}

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

async function listPage(c: Context<Environment>, refusal?: string) {
  const { group, spool } = c.var;
  const season = await group.season();
  return (
    <DownloadsPage
      view={await viewOf(c)}
      waiting={spool.list()}
      loads={await group.loads()}
      stationName={stationNames(season)}
      layouts={season.layouts.length}
      {...(refusal === undefined ? {} : { refusal })}
    />
  );
}

async function waitingOutcome(
  c: Context<Environment>,
  file: string,
  answers: Answers,
  dryRun: boolean,
): Promise<WaitingOutcome> {
  const { group, spool, person } = c.var;
  const [made] = await loadWaiting(group, spool, {
    files: [{ file }],
    asked: askedFrom(answers),
    createStations: mayMake(answers),
    dryRun,
    who: person.name,
  });
  if (made === undefined) throw new Error('a file that waits came to nothing');
  return made;
}

async function filePage(c: Context<Environment>, file: string, answers: Answers) {
  const { outcome, brings } = await waitingOutcome(c, file, answers, true);
  const over = await Promise.all(brings.slice(0, MOST_CHARTS).map((brought) => withThere(c, brought)));
  return (
    <FilePage
      view={await viewOf(c)}
      file={file}
      outcome={outcome}
      answers={answers}
      over={over}
      season={await c.var.group.season()}
    />
  );
}

/** A file of a whole network is not drawn station by station. */
const MOST_CHARTS = 4;

async function withThere(c: Context<Environment>, brought: Series): Promise<Over> {
  const { group } = c.var;
  const known = (await group.stations()).some(
    ({ station, records }) =>
      station === brought.station && records.some(({ quantity }) => quantity === brought.quantity),
  );
  if (!known) return { brought, there: null };
  const { station, quantity, at } = brought;
  const from = at[0] ?? brought.from;
  const to = (at.at(-1) ?? brought.to) + 1;
  return { brought, there: await group.series({ station, quantity, from, to, points: POINTS }) };
}
