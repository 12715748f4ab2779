import { readFile } from 'node:fs/promises';
import { type Context, Hono } from 'hono';
import {
  type EarlierField,
  type EarlierTable,
  earlierFields,
  keepEarlier,
  readEarlier,
  withdrawEarlier,
} from '../../earlier/index.js';
import type { Environment } from '../../http/environment.js';
import type { Earlier } from '../../season/index.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf, Frame } from '../parts/frame.js';
import { mayEdit, type View, viewOf } from '../view.js';

/** Rows of a preview. */
const SHOWN = 12;

/** Past seasons from a table: looked at first, with the columns to be set right, then kept; or taken out again. */
export function earlierRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/autumn/earlier', async (c) => c.html(await page(c, {})))
    .post('/autumn/earlier', async (c) => {
      const { group, person, form, spool, language } = c.var;
      const id = form.files[0]?.id ?? form.field('file');
      try {
        const { path, name } = spool.file(id);
        const table = readEarlier(await textOf(path), asked(c));
        if (form.field('do') !== 'take') return c.html(await page(c, { file: id, table }));
        await keepEarlier(group, name, table, person.name);
        await spool.drop(id);
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await page(c, { refusal: sayRefusalOnPage(language, error) }), 422);
      }
      return c.redirect('/autumn/earlier', 303);
    })
    .post('/autumn/earlier/:id/withdraw', async (c) => {
      await withdrawEarlier(c.var.group, c.req.param('id'), c.var.person.name);
      return c.redirect('/autumn/earlier', 303);
    });
}

async function textOf(path: string): Promise<string> {
  const bytes = await readFile(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes, { stream: true });
  }
}

/** Which column is which, as the preview's selects say. */
function asked({ var: { form } }: Context<Environment>): Partial<Record<EarlierField, string>> {
  return Object.fromEntries(
    earlierFields.flatMap((field) => {
      const [column] = form.all(`column.${field}`);
      return column === undefined ? [] : [[field, column]];
    }),
  );
}

interface Shown {
  readonly file?: string;
  readonly table?: EarlierTable;
  readonly refusal?: string;
}

async function page(c: Context<Environment>, shown: Shown) {
  const { earlier } = await c.var.group.season();
  return <EarlierPage view={await viewOf(c)} earlier={earlier} {...shown} />;
}

function EarlierPage({
  view,
  earlier,
  file,
  table,
  refusal,
}: Shown & { view: View; earlier: readonly Earlier[] }) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-autumn-earlier', {})}
      answer={say('page-earlier-answer', { tables: earlier.length })}
      current="autumn"
      cautions={false}
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      {table === undefined || file === undefined ? null : <Preview view={view} file={file} table={table} />}
      {mayEdit(view) ? (
        <form method="post" action="/autumn/earlier" enctype="multipart/form-data">
          <Csrf view={view} />
          <label>
            {say('page-earlier-file', {})}
            <input type="file" name="table" required accept=".csv,.txt,.tsv,.xlsx" />
          </label>
          <button type="submit">{say('page-earlier-read', {})}</button>
        </form>
      ) : null}
      {earlier.map((one) => (
        <section>
          <h2>{say('page-earlier-one', { file: one.file, boxes: one.boxes.length })}</h2>
          <Boxes view={view} columns={earlierFields} boxes={one.boxes} />
          {mayEdit(view) ? (
            <form method="post" action={`/autumn/earlier/${one.id}/withdraw`}>
              <Csrf view={view} />
              <button type="submit" class="quiet">
                {say('page-earlier-withdraw', {})}
              </button>
            </form>
          ) : null}
        </section>
      ))}
    </Frame>
  );
}

function Preview({ view, file, table }: { view: View; file: string; table: EarlierTable }) {
  const { say } = view;
  return (
    <form method="post" action="/autumn/earlier" class="sheet">
      <Csrf view={view} />
      <input type="hidden" name="file" value={file} />
      <div class="fields">
        {earlierFields.map((field) => (
          <label>
            {capitalised(say(`page-earlier-${field}`, {}))}
            <select name={`column.${field}`}>
              <option value=""></option>
              {table.headers.map((header) => (
                <option value={header} selected={header === table.columns[field]}>
                  {header}
                </option>
              ))}
            </select>
          </label>
        ))}
      </div>
      <Boxes
        view={view}
        columns={earlierFields.filter((field) => table.columns[field] !== null)}
        boxes={table.boxes}
      />
      <div class="actions">
        <button type="submit" name="do" value="preview" class="quiet">
          {say('page-earlier-read', {})}
        </button>
        <button type="submit" name="do" value="take">
          {say('page-earlier-take', {})}
        </button>
      </div>
    </form>
  );
}

interface BoxesProps {
  readonly view: View;
  readonly columns: readonly EarlierField[];
  readonly boxes: readonly { readonly [Field in EarlierField]?: string | number | null }[];
}

/** Columns of numbers. */
const COUNTS: readonly EarlierField[] = ['eggs', 'empty', 'dead'];

function Boxes({ view, columns, boxes }: BoxesProps) {
  const stated = columns.filter((field) => boxes.some((box) => (box[field] ?? '') !== ''));
  const cell = (field: EarlierField) =>
    COUNTS.includes(field) ? 'number' : field === 'note' ? undefined : 'short';
  const shown = (field: EarlierField, value: string | number | null | undefined) =>
    COUNTS.includes(field) && /^\d+$/.test(String(value)) ? view.whole(Number(value)) : (value ?? '');
  return (
    <div class="wide-table" tabindex={0}>
      <table>
        <thead>
          <tr>
            {stated.map((field) => (
              <th scope="col" class={cell(field)}>
                {view.say(`page-earlier-${field}`, {})}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {boxes.slice(0, SHOWN).map((box) => (
            <tr>
              {stated.map((field) => (
                <td class={cell(field)}>{shown(field, box[field])}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {boxes.length > SHOWN ? <p>{view.say('season.and-more', { more: boxes.length - SHOWN })}</p> : null}
    </div>
  );
}
