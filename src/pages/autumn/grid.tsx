import { randomUUID } from 'node:crypto';
import type { AutumnCaution } from '../../autumn/index.js';
import type { Form } from '../../http/received/form.js';
import type { Season } from '../../season/index.js';
import { isoDay } from '../../words/index.js';
import { plainFigure } from '../client/field/checks.js';
import { Csrf, Frame } from '../parts/frame.js';
import { pointed, RefusedForm, type Wrong } from '../parts/refused-form.js';
import type { View } from '../view.js';

/** The columns of the grid, as a planting entry names them. */
const COLUMNS = [
  'site',
  'box',
  'lot',
  'eggs',
  'when',
  'unfilled',
  'doubled',
  'transportC',
  'siteC',
  'temperedMinutes',
  'tiedTo',
  'bankMark',
] as const;
const FIGURES: readonly string[] = ['transportC', 'siteC', 'temperedMinutes'];

/** Letters that a field shows, where five are too few. */
const WIDE: Partial<Record<(typeof COLUMNS)[number], number>> = {
  site: 9,
  when: 15,
  tiedTo: 8,
  bankMark: 10,
};

/** Empty rows offered. */
const SPARE = 12;

export interface GridRow {
  readonly id: string;
  readonly fields: Readonly<Record<string, string>>;
  /** Why it was not kept; none where it was not refused. */
  readonly wrongs: readonly Wrong[];
}

/** The rows that were filled in; each keeps the id it was drawn with. */
export function gridRows(form: Form): GridRow[] {
  return form.all('row').flatMap((id, i): GridRow[] => {
    const fields = Object.fromEntries(
      COLUMNS.flatMap((name) => {
        const given = (form.all(name)[i] ?? '').trim();
        return given === '' ? [] : [[name, FIGURES.includes(name) ? plainFigure(given) : given]];
      }),
    );
    return Object.keys(fields).length === 0 ? [] : [{ id, fields, wrongs: [] }];
  });
}

interface GridProps {
  readonly view: View;
  readonly season: Season;
  /** Rows that were refused, to be mended. */
  readonly rows: readonly GridRow[];
  readonly cautions: readonly { readonly box: string; readonly caution: AutumnCaution }[];
  /** The cautions are of the rows themselves: said once before they are kept. */
  readonly hear?: boolean;
  /** It was asked for the eggs that are nowhere yet. */
  readonly planned?: boolean;
}

/** Which cautions of which boxes a person has been shown. */
export const heardOfRows = (cautions: GridProps['cautions']): string =>
  cautions.map(({ box, caution }) => `${box} ${caution.code}`).join(', ');

const cellAt = (row: number, name: string): string => `${row}.${name}`;

/** What is wrong with a row, at its cell and under its box. */
const inRow = (row: number, box: string, { at, label, sentence }: Wrong): Wrong =>
  label === ''
    ? { at: at === null ? null : cellAt(row, at), label: box, sentence }
    : {
        at: at === null ? null : cellAt(row, at),
        label: [box, label].filter((part) => part !== '').join(', '),
        sentence,
      };

/** Sheets from the field typed in, a row a box: Tab goes on, Enter keeps. */
export function GridPage({ view, season, rows, cautions, hear = false, planned = false }: GridProps) {
  const { say } = view;
  const empty = Array.from({ length: SPARE }, () => ({ id: randomUUID(), fields: {}, wrongs: [] }));
  const shown: readonly GridRow[] = [...rows, ...empty];
  const wrongs = rows.flatMap(({ fields, wrongs }, row) =>
    wrongs.map((wrong) => inRow(row, fields.box ?? '', wrong)),
  );
  const lists = { site: season.sites, box: season.boxes, lot: season.lots };
  return (
    <Frame
      view={view}
      title={say('page-autumn-grid', {})}
      answer={say('page-autumn-grid-answer', {})}
      current="autumn"
    >
      {season.boxes.some(({ fills }) => fills.length === 0) ? (
        <p class="same">
          <a href="/autumn/grid?plan=yes">{say('page-autumn-plan', {})}</a>
        </p>
      ) : null}
      {planned && rows.length === 0 ? <p class="note">{say('page-autumn-plan-none', {})}</p> : null}
      <p class="on-paper-only">{say('page-autumn-paper', {})}</p>
      <RefusedForm
        view={view}
        wrongs={wrongs.length === 0 ? undefined : wrongs}
        not={say('page-autumn-grid-refused', {})}
      />
      {cautions.length === 0 ? null : (
        <div class="note" role={hear ? 'alert' : undefined}>
          {hear ? (
            <p>
              <strong>{say('page-autumn-hear', {})}</strong>
            </p>
          ) : null}
          <ul>
            {cautions.map(({ box, caution }) => (
              <li>{view.named(box, say(caution.code, caution.with))}</li>
            ))}
          </ul>
        </div>
      )}
      <form method="post" action="/autumn/enter/grid">
        <Csrf view={view} />
        <input type="hidden" name="heard" value={hear ? heardOfRows(cautions) : ''} />
        {Object.entries(lists).map(([name, things]) => (
          <datalist id={`grid-${name}`}>
            {things.map(({ id }) => (
              <option value={id}></option>
            ))}
          </datalist>
        ))}
        <div class="wide-table" tabindex={0}>
          <table class="grid">
            <thead>
              <tr>
                {COLUMNS.map((name) => (
                  <th scope="col">{say(`face-${name}`, {})}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map(({ id, fields, wrongs: wrong }, row) => (
                <tr class={wrong.length === 0 ? undefined : 'refused'}>
                  {COLUMNS.map((name, i) => (
                    <td>
                      {i === 0 ? <input type="hidden" name="row" value={id} /> : null}
                      <input
                        {...pointed(wrongs, cellAt(row, name))}
                        name={name}
                        aria-label={say(`face-${name}`, {})}
                        value={fields[name] ?? ''}
                        list={name in lists ? `grid-${name}` : undefined}
                        size={WIDE[name] ?? 5}
                        placeholder={name === 'when' ? `${isoDay(view.today)} 14:30` : undefined}
                      />
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <button type="submit">{say(hear ? 'page-autumn-keep-anyway' : 'page-autumn-grid-keep', {})}</button>
      </form>
    </Frame>
  );
}
