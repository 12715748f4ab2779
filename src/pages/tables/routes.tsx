import { type Context, Hono } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import type { Environment } from '../../http/environment.js';
import { groupStock } from '../../stock/index.js';
import { type AnyRefusal, isRefusal } from '../../words/refusals.js';
import { wrongsIn } from '../parts/refused-form.js';
import { changeSeason, listIn, standingVersion } from '../parts/season-change.js';
import { viewOf } from '../view.js';
import { TablePage, TablesPage } from './page.js';
import { tableField } from './wrongs.js';

export function tableRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/tables', async (c) => c.html(await tablesPage(c)))
    .post('/tables', async (c) => {
      const field = (name: string) => c.var.form.field(name).trim();
      try {
        await changeSeason(c, (document) => ({
          ...document,
          tables: [...listIn(document, 'tables'), ownTable(field)],
        }));
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await tablesPage(c, error), 422);
      }
      return c.redirect(`/tables/${encodeURIComponent(field('id'))}`, 303);
    })
    .get('/tables/:table', async (c) => {
      const tables = await c.var.group.tables();
      const id = c.req.param('table');
      const table = tables.find((one) => one.id === id);
      if (table === undefined)
        throw new UnknownName({
          code: 'unknown-table',
          with: { table: id, tables: tables.map((one) => one.id) },
        });
      return c.html(<TablePage view={await viewOf(c)} table={table} />);
    });
}

async function tablesPage(c: Context<Environment>, refusal?: AnyRefusal) {
  const { group, form } = c.var;
  const tables = await group.tables();
  const asked = [c.req.query('left'), c.req.query('right')];
  const beside = asked.flatMap((id) => tables.find((table) => table.id === id) ?? []);
  const view = await viewOf(c);
  const given =
    refusal === undefined
      ? {}
      : { wrongs: wrongsIn(view, refusal, tableField(view)), typed: (name: string) => form.field(name) };
  return (
    <TablesPage
      view={view}
      tables={tables}
      own={(await group.season()).tables.map(({ id }) => id)}
      beside={beside}
      stock={await groupStock(group)}
      version={await standingVersion(c)}
      {...given}
    />
  );
}

/** A table from the form, in the shape of the season file; what is wrong with it the season says. */
function ownTable(field: (name: string) => string): Record<string, unknown> {
  const rows = field('rows')
    .split('\n')
    .map((line) => line.trim().split(/[\s;:]+/))
    .filter(([first]) => first !== undefined && first !== '')
    .map(([celsius, days]) => ({ celsius: number(celsius), days: number(days) }));
  const temperatures = rows.map(({ celsius }) => Number(celsius)).filter(Number.isFinite);
  const validity = { min: Math.min(...temperatures), max: Math.max(...temperatures) };
  const sources = [field('source')];
  const multiple = (stage: string, factor: string) => ({
    stage,
    needs: { multipleOf: 'hatch', factor: number(factor) },
    validity,
    sources,
  });
  return {
    id: field('id'),
    species: field('species'),
    name: field('name'),
    stages: [
      ...(field('eye') === '' ? [] : [multiple('eye-up', field('eye'))]),
      { stage: 'hatch', needs: { law: { form: 'days-at', rows } }, validity, sources },
      ...(field('button') === '' ? [] : [multiple('button-up', field('button'))]),
    ],
    sources,
  };
}

/** A number as people type it, decimal comma or point. */
function number(text: string | undefined): string {
  return (text ?? '').replace(',', '.');
}
