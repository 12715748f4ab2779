import { randomUUID } from 'node:crypto';
import { type Context, Hono } from 'hono';
import {
  type AutumnCaution,
  lotBalances,
  planFills,
  plantingCautions,
  siteCards,
} from '../../autumn/index.js';
import { entryCautions, fieldsOf, receiveEntries, settleEntry, whyWaiting } from '../../field/index.js';
import type { Environment } from '../../http/environment.js';
import { HttpRefused } from '../../http/refused.js';
import { closedWinters } from '../../reports/index.js';
import type { Season } from '../../season/index.js';
import { type AnyRefusal, isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { type Form, forms } from '../client/field/forms.js';
import { viewOf } from '../view.js';
import { EnterPage, heardOf } from './enter.js';
import { EntriesPage, type EntryShown } from './entries.js';
import { GridPage, type GridRow, gridRows, heardOfRows } from './grid.js';
import { AutumnPage } from './page.js';
import { postedFields, typedBefore } from './posted.js';
import { SheetPage } from './sheet.js';
import { SitePage } from './site.js';
import { wrongsOfEntry } from './wrongs.js';

export function autumnRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/autumn', async (c) => {
      const season = await c.var.group.season();
      const kept = c.req.query('did') !== undefined;
      const view = await viewOf(c);
      return c.html(<AutumnPage view={view} season={season} balances={lotBalances(season)} kept={kept} />);
    })
    .get('/autumn/entries', async (c) => c.html(await entriesPage(c)))
    .get('/autumn/entries/:id', async (c) => c.html(await correctPage(c)))
    .post('/autumn/entries/:id', settle)
    .get('/autumn/sheet', async (c) =>
      c.html(<SheetPage view={await viewOf(c)} season={await c.var.group.season()} />),
    )
    .get('/autumn/sites/:id', sitePage)
    .get('/autumn/grid', async (c) => {
      const asked = c.req.query('plan') !== undefined;
      const planned = asked ? plannedRows(await c.var.group.season()) : [];
      return c.html(await gridPage(c, planned, asked));
    })
    .post('/autumn/enter/grid', postGrid)
    .get('/autumn/enter/:kind', async (c) => c.html(await enterPage(c, formOf(c), randomUUID())))
    .post('/autumn/enter/:kind', postEntry);
}

async function sitePage(c: Context<Environment>) {
  const { group } = c.var;
  const cards = siteCards(await group.season(), await closedWinters(group));
  const index = cards.findIndex(({ site }) => site.id === c.req.param('id'));
  const card = cards[index];
  if (card === undefined)
    throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 200) } });
  return c.html(<SitePage view={await viewOf(c)} card={card} index={index} />);
}

function formOf(c: Context<Environment>): Form {
  const form = forms.find(({ kind }) => kind === c.req.param('kind'));
  if (form === undefined)
    throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 200) } });
  return form;
}

async function enterPage(
  c: Context<Environment>,
  form: Form,
  id: string,
  refusal?: AnyRefusal,
  cautions: readonly AutumnCaution[] = [],
) {
  const { group } = c.var;
  const view = await viewOf(c);
  return (
    <EnterPage
      view={view}
      form={form}
      id={id}
      season={await group.season()}
      tables={await group.tables()}
      typed={(name) => c.var.form.all(name)}
      cautions={cautions}
      {...(refusal === undefined ? {} : { wrongs: wrongsOfEntry(view, form, refusal) })}
    />
  );
}

/** One entry typed at a desk: taken, or the form again with what is wrong. Sent twice, it is taken once. */
async function postEntry(c: Context<Environment>) {
  const form = formOf(c);
  const id = c.var.form.field('entry') || randomUUID();
  const now = Date.now();
  const fields = postedFields(form, c.var.form);
  const sent = { id, kind: form.kind, entered: new Date(now).toISOString(), fields };
  const cautions = entryCautions(await c.var.group.season(), await c.var.group.tables(), sent);
  // Eggs in hand can still be tempered or left where they are: said once before it is kept.
  if (c.var.form.field('heard') !== heardOf(cautions) && cautions.length > 0)
    return c.html(await enterPage(c, form, id, undefined, cautions));
  const batch = { now: sent.entered, entries: [sent] };
  const { group, person } = c.var;
  const [receipt] = await receiveEntries(group, batch, person.name, now, false);
  if (receipt?.refusal) return c.html(await enterPage(c, form, id, receipt.refusal), 422);
  return c.redirect(`/autumn?did=${form.kind}`, 303);
}

async function settle(c: Context<Environment>) {
  const { group, person, form } = c.var;
  const id = c.req.param('id') ?? '';
  const correcting = form.field('do') === 'correct';
  try {
    const how = form.field('do') === 'leave' ? 'leave' : { take: correcting ? await corrected(c) : null };
    await settleEntry(group, id, how, person.name, Date.now());
  } catch (error) {
    if (!isRefusal(error)) throw error;
    const page = correcting ? await correctPage(c, error) : await entriesPage(c, error);
    return c.html(page, 422);
  }
  return c.redirect('/autumn/entries', 303);
}

/** An entry that waits, and the form that asked for it. */
async function waitingEntry(c: Context<Environment>) {
  const { entries } = await c.var.group.season();
  const entry = entries.find(({ id, state }) => id === c.req.param('id') && state === 'waiting');
  const form = forms.find(({ kind }) => kind === entry?.kind);
  if (entry === undefined || form === undefined)
    throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 200) } });
  return { entry, form };
}

/** What the form states; photographs stay those that were sent. */
async function corrected(c: Context<Environment>): Promise<Record<string, unknown>> {
  const { entry, form } = await waitingEntry(c);
  const { photographs } = fieldsOf(entry);
  return { ...postedFields(form, c.var.form), ...(photographs === undefined ? {} : { photographs }) };
}

/** An entry that waits as a form, to be put right. */
async function correctPage(c: Context<Environment>, refusal?: AnyRefusal) {
  const { group } = c.var;
  const { entry, form } = await waitingEntry(c);
  const view = await viewOf(c);
  const season = await group.season();
  const why = refusal ?? whyWaiting(season, entry, Date.now());
  const typed = refusal === undefined ? typedBefore(entry, form) : (name: string) => c.var.form.all(name);
  return (
    <EnterPage
      view={view}
      form={form}
      id={entry.id}
      season={season}
      tables={await group.tables()}
      typed={typed}
      cautions={[]}
      corrects
      {...(refusal === undefined ? { not: view.say('page-entries-why', {}) } : {})}
      {...(why === null ? {} : { wrongs: wrongsOfEntry(view, form, why) })}
    />
  );
}

async function entriesPage(c: Context<Environment>, refusal?: AnyRefusal) {
  const { group, language } = c.var;
  const season = await group.season();
  const entries = season.entries.map((entry): EntryShown => {
    const why = entry.state === 'waiting' ? whyWaiting(season, entry, Date.now()) : null;
    return {
      entry,
      fields: entry.fields === null ? {} : fieldsOf(entry),
      why: why === null ? null : sayRefusalOnPage(language, why),
    };
  });
  return (
    <EntriesPage
      view={await viewOf(c)}
      season={season}
      tables={await group.tables()}
      entries={entries}
      {...(refusal === undefined ? {} : { refusal: sayRefusalOnPage(language, refusal) })}
    />
  );
}

async function gridPage(c: Context<Environment>, rows: readonly GridRow[], planned = false) {
  const { group } = c.var;
  const season = await group.season();
  const tables = await group.tables();
  const cautions = season.boxes.flatMap((box) =>
    box.fills.flatMap(({ lot, planted }) =>
      plantingCautions(season, tables, {
        lot,
        at: Date.parse(planted),
        transportC: box.planting?.transportC ?? null,
        siteC: box.planting?.siteC ?? null,
      }).map((caution) => ({ box: box.id, caution })),
    ),
  );
  const view = await viewOf(c);
  return <GridPage view={view} season={season} rows={rows} cautions={cautions} planned={planned} />;
}

/** The eggs that are nowhere yet, put into the boxes that are empty, in their order, until the count is used up. */
function plannedRows(season: Season): GridRow[] {
  const empty = season.boxes.filter(({ fills, lifted }) => fills.length === 0 && lifted === null);
  const rooms = empty.flatMap(({ id, compartments }) =>
    compartments === null ? [] : [{ box: id, part: null, compartments, unfilled: 0, doubled: 0 }],
  );
  const lots = lotBalances(season).flatMap(({ lot, unplaced }) =>
    unplaced > 0 ? [{ lot, eggs: unplaced }] : [],
  );
  return planFills(lots, rooms).fills.map(({ lot, box, eggs }) => {
    const site = empty.find(({ id }) => id === box)?.site ?? '';
    return { id: randomUUID(), fields: { site, box, lot, eggs: String(eggs) }, wrongs: [] };
  });
}

/** A row a box: the rows that fit are taken; the others come back, each with what is wrong. */
async function postGrid(c: Context<Environment>) {
  const { group, person } = c.var;
  const now = Date.now();
  const rows = gridRows(c.var.form);
  const entered = new Date(now).toISOString();
  const sent = rows.map(({ id, fields }) => ({ id, kind: 'plant', entered, fields }));
  const [season, tables] = [await group.season(), await group.tables()];
  const cautions = sent.flatMap((row) =>
    entryCautions(season, tables, row).map((caution) => ({ box: row.fields.box ?? '', caution })),
  );
  // As at the form: eggs in hand can still be tempered or left where they are.
  if (cautions.length > 0 && c.var.form.field('heard') !== heardOfRows(cautions)) {
    const view = await viewOf(c);
    return c.html(<GridPage view={view} season={season} rows={rows} cautions={cautions} hear={true} />);
  }
  const receipts = await receiveEntries(group, { now: entered, entries: sent }, person.name, now, false);
  const view = await viewOf(c);
  const form = forms.find(({ kind }) => kind === 'plant');
  const refused = rows.flatMap((row): GridRow[] => {
    const refusal = receipts.find(({ id }) => id === row.id)?.refusal ?? null;
    return refusal === null || form === undefined
      ? []
      : [{ ...row, wrongs: wrongsOfEntry(view, form, refusal) }];
  });
  if (refused.length === 0) return c.redirect('/autumn?did=plant', 303);
  return c.html(await gridPage(c, refused), 422);
}
