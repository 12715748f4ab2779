import { boxesOver, type TallyRow, tallyRows } from '../../lifting/index.js';
import { nameIn, plantedIn, type Season } from '../../season/index.js';
import { say as sayIn } from '../../words/index.js';
import { Figures } from '../parts/figure.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';

/** Boxes to count, a thumb's width each, and what has been counted. */
export function TallyListPage({ view, season }: { view: View; season: Season }) {
  const { say } = view;
  const rows = tallyRows(season, view.language);
  const counted = new Set(rows.map(({ tally }) => tally.box));
  const yet = season.boxes.filter(({ id }) => !counted.has(id));
  const over = boxesOver(season, view.today);
  const toLift = yet.toSorted((a, b) => Number(over.has(b.id)) - Number(over.has(a.id)));
  return (
    <Frame
      view={view}
      title={say('page-tally-title', {})}
      answer={say('page-tally-answer', { tallied: counted.size, boxes: season.boxes.length })}
      current="lifting"
    >
      {toLift.length === 0 ? null : (
        <>
          <h2>{say('page-tally-yet', {})}</h2>
          <ul class="thumbs">
            {toLift.map((box) => (
              <li>
                <a href={`/tally/${encodeURIComponent(box.id)}`}>
                  <strong>{box.id}</strong> {nameIn(season.sites, box.site)},{' '}
                  {say('page-tally-eggs', { eggs: plantedIn(box, null) })}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>{say('page-tally-done', {})}</h2>
      {rows.length === 0 ? <p>{say('page-tally-none', {})}</p> : <Counted view={view} rows={rows} />}
      <p class="small">{say('tally-empty-left-or-gone', {})}</p>
      <p class="no-print">
        <WorkedOut view={view} about="survival" />
      </p>
      <SameAs view={view} json="/api/v1/tallies" csv="/api/v1/tallies.csv" />
    </Frame>
  );
}

function Counted({ view, rows }: { view: View; rows: readonly TallyRow[] }) {
  const { say } = view;
  const number = (value: number | null) => (value === null ? '–' : view.whole(value));
  const numbers = ['column-planted', 'column-empty', 'column-dead', 'column-alive'] as const;
  return (
    <Figures
      caption={say('page-tally-done', {})}
      columns={[
        { name: say('column-box', {}) },
        { name: say('column-day', {}) },
        { name: say('column-counter', {}) },
        ...numbers.map((word) => ({ name: say(word, {}), number: true })),
        { name: say('page-note', {}) },
      ]}
      rows={rows.map(({ tally, planted, remarks }) => [
        tally.part === null ? tally.box : `${tally.box} (${tally.part})`,
        view.short(Date.parse(`${tally.when.date}T00:00Z`) / 86_400_000),
        tally.counter ?? '–',
        view.whole(planted),
        number(tally.empty),
        number(tally.dead),
        number(tally.alive),
        remarks.map((remark) => sayIn(view.language, remark)).join(' '),
      ])}
    />
  );
}
