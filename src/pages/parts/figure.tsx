import { raw } from 'hono/html';
import type { Child } from 'hono/jsx';
import type { View } from '../view.js';

export interface Column {
  readonly name: string;
  readonly number?: boolean;
  /** Cells such as "73% (63% to 82%)": lines break between their pieces only. */
  readonly pieces?: boolean;
}

/** A cell this short stays on one line, whatever the other columns ask for. */
const SHORT = 20;

/** Breaks are left after ; and : and, where there are none, before a bracket; never beside a dash. */
const inPieces = (text: string) =>
  text.replace(/[;:]/.test(text) ? /(?<![;:]) /g : / (?!\()/g, '\u00a0').replaceAll('–', '\u2060–\u2060');

const cellClass = ({ number, pieces }: Column, cell: string) =>
  number ? 'number' : pieces ? 'pieces' : cell.length <= SHORT ? 'short' : undefined;

interface TableProps {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  readonly caption?: string;
}

/** A table of figures; it scrolls sideways on a narrow screen, also by keyboard. */
export function Figures({ columns, rows, caption }: TableProps) {
  return (
    <section class="scroll" tabindex={0} aria-label={caption ?? columns[0]?.name}>
      <table>
        {caption === undefined ? null : <caption>{caption}</caption>}
        <thead>
          <tr>
            {columns.map(({ name, number }) => (
              <th scope="col" class={number ? 'number' : undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells) => (
            <tr>
              {cells.map((cell, i) => (
                <td class={cellClass(columns[i] ?? { name: '' }, cell)}>
                  {columns[i]?.pieces ? inPieces(cell) : cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface ChartProps extends TableProps {
  readonly view: View;
  /** The finding, which the SVG carries as its own title too. */
  readonly title: string;
  readonly svg: string;
  /** Which line is which. */
  readonly lineKey?: Child;
  readonly note?: string;
}

/** A chart below its finding, with the table of its figures behind it. The SVG was drawn by src/charts. */
export function ChartFigure({ view, title, svg, lineKey, note, columns, rows }: ChartProps) {
  return (
    <figure>
      <figcaption>{title}</figcaption>
      {lineKey}
      <section class="chart" tabindex={0} aria-label={title}>
        {raw(svg)}
      </section>
      {note === undefined ? null : <p class="small">{note}</p>}
      <details>
        <summary>{view.say('page-table-behind', {})}</summary>
        <Figures columns={columns} rows={rows} caption={title} />
      </details>
    </figure>
  );
}
