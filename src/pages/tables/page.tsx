import { type DevelopmentTable, daysAtConstant, stageRow, wayTo } from '../../../forecasting/index.js';
import type { StockBeside } from '../../stock/index.js';
import { decimal } from '../../words/index.js';
import { capitalised } from '../../words/season-field.js';
import { Csrf, Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import { mayEdit, type View } from '../view.js';
import { OneTable } from './one-table.js';
import { StockSection } from './stock.js';

interface TablesProps {
  readonly view: View;
  readonly tables: readonly DevelopmentTable[];
  /** Ids of the group's own. */
  readonly own: readonly string[];
  readonly beside: readonly DevelopmentTable[];
  readonly stock: readonly StockBeside[];
  readonly version: number;
  readonly wrongs?: readonly Wrong[];
  readonly typed?: (field: string) => string;
}

export function TablesPage({ view, tables, own, beside, stock, version, wrongs, typed }: TablesProps) {
  const { say } = view;
  const [left, right] = beside;
  const list = (those: readonly DevelopmentTable[]) => (
    <ul>
      {those.map((table) => (
        <li>
          <a href={`/tables/${encodeURIComponent(table.id)}`}>{table.name[view.language]}</a>{' '}
          <span class="small">
            (<i lang="la">{table.species}</i>)
          </span>
        </li>
      ))}
    </ul>
  );
  return (
    <Frame
      view={view}
      title={say('page-tables-title', {})}
      answer={say('page-tables-answer', { tables: tables.length, own: own.length })}
      current="tables"
    >
      <RefusedForm view={view} wrongs={wrongs} not={say('page-edit-refused', {})} />
      <h2>{say('page-tables-shipped', {})}</h2>
      {list(tables.filter(({ id }) => !own.includes(id)))}
      {own.length === 0 ? null : (
        <>
          <h2>{say('page-tables-own', {})}</h2>
          {list(tables.filter(({ id }) => own.includes(id)))}
        </>
      )}
      <StockSection view={view} all={stock} />
      <h2 class={left === undefined || right === undefined ? 'no-print' : undefined}>
        {say('page-tables-beside', {})}
      </h2>
      <form method="get" action="/tables" class="choose whole-names">
        <Choose
          view={view}
          name="left"
          label={say('page-tables-left', {})}
          tables={tables}
          chosen={left?.id ?? tables[0]?.id}
        />
        <Choose
          view={view}
          name="right"
          label={say('page-tables-right', {})}
          tables={tables}
          chosen={right?.id ?? tables[1]?.id}
        />
        <button type="submit">{say('page-tables-compare', {})}</button>
      </form>
      {left === undefined || right === undefined ? null : (
        <div class="pair">
          {[left, right].map((table) => (
            <div>
              <h3>{table.name[view.language]}</h3>
              <OneTable view={view} table={table} />
            </div>
          ))}
        </div>
      )}
      {mayEdit(view) ? (
        <Add view={view} version={version} typed={typed ?? (() => '')} wrongs={wrongs} />
      ) : null}
      <p>
        <WorkedOut view={view} about="tables" />
      </p>
      <SameAs view={view} json="/api/v1/tables" csv="/api/v1/tables.csv" />
    </Frame>
  );
}

export function TablePage({ view, table }: { view: View; table: DevelopmentTable }) {
  const { say } = view;
  const name = table.name[view.language];
  const hatch = stageRow(table, 'hatch') === undefined ? null : wayTo(table, 'hatch');
  const [days, cold] = [5, 1].map((celsius) =>
    hatch === null ? Number.POSITIVE_INFINITY : daysAtConstant(hatch, celsius),
  );
  return (
    <Frame
      view={view}
      title={say('page-table-title', { table: name })}
      answer={
        days !== undefined && cold !== undefined && Number.isFinite(days + cold)
          ? say('page-table-answer', { table: name, days, cold })
          : say('page-table-answer-plain', { table: name })
      }
      current="tables"
    >
      <p>
        <i lang="la">{table.species}</i>
      </p>
      <OneTable view={view} table={table} />
      <p>
        <WorkedOut view={view} about="tables" />
      </p>
      <SameAs view={view} json={`/api/v1/tables/${encodeURIComponent(table.id)}`} csv="/api/v1/tables.csv" />
    </Frame>
  );
}

function Choose(props: {
  view: View;
  name: string;
  label: string;
  tables: readonly DevelopmentTable[];
  chosen: string | undefined;
}) {
  return (
    <label>
      {capitalised(props.label)}
      <select name={props.name}>
        {props.tables.map(({ id, name }) => (
          <option value={id} selected={id === props.chosen}>
            {name[props.view.language]}
          </option>
        ))}
      </select>
    </label>
  );
}

interface AddProps {
  readonly view: View;
  readonly version: number;
  readonly typed: (field: string) => string;
  readonly wrongs: readonly Wrong[] | undefined;
}

function Add({ view, version, typed, wrongs }: AddProps) {
  const { say } = view;
  const field = (name: string, label: string, value = '') => (
    <label>
      {capitalised(label)}
      <input
        {...pointed(wrongs, name)}
        name={name}
        required={name !== 'button'}
        value={typed(name) || value}
        maxlength={200}
      />
    </label>
  );
  return (
    <form method="post" action="/tables" class="sheet">
      <h2>{say('page-table-add', {})}</h2>
      <p>{say('page-table-add-what', {})}</p>
      <Csrf view={view} />
      <input type="hidden" name="version" value={String(version)} />
      <div class="fields">
        {field('name', say('page-table-name', {}))}
        {field('id', say('page-table-id', {}))}
        {field('species', say('page-table-species', {}))}
        {field('eye', say('page-table-eye', {}), decimal(view.language, 0.5, 1))}
        {field('button', say('page-table-button', {}), decimal(view.language, 1.7, 1))}
        {field('source', say('page-table-source', {}))}
        <label class="wide">
          {capitalised(say('page-table-rows', {}))}
          <textarea aria-describedby="rows-what" {...pointed(wrongs, 'rows')} name="rows" rows={5} required>
            {typed('rows')}
          </textarea>
          <span class="small" id="rows-what">
            {say('page-table-rows-what', {})}
          </span>
        </label>
      </div>
      <button type="submit">{say('page-keep', {})}</button>
    </form>
  );
}
