import type { SpellRow } from '../../spells/contract.js';
import { spellSentences } from '../../spells/sentences.js';
import { Figures } from '../parts/figure.js';
import { SpellMarks, spellMark } from '../parts/spell-marks.js';
import type { View } from '../view.js';

const HEIGHT = 16;
/** Of more boxes than this, only those that a spell touched have a line. */
const MANY = 24;

interface TimelineProps {
  readonly view: View;
  readonly rows: readonly SpellRow[];
  readonly boxes: readonly string[];
  readonly zone: string;
  /** First day drawn, where no spell began before it. */
  readonly begin: number;
}

/** Every box a line, every spell a mark on the lines of its boxes; the same as a table behind. */
export function Timeline({ view, rows, boxes, zone, begin }: TimelineProps) {
  const { say } = view;
  if (boxes.length === 0 || (rows.length === 0 && boxes.length > MANY)) return null;
  const touched = new Set(rows.flatMap((row) => row.boxes));
  const drawn = boxes.length > MANY ? boxes.filter((box) => touched.has(box)) : boxes;
  const marks = rows.map((row) => ({ row, mark: spellMark(view, row, zone) }));
  const from = Math.floor(Math.min(begin, ...marks.map(({ mark }) => mark.from))) - 3;
  const to = Math.ceil(Math.max(view.today, ...marks.map(({ mark }) => mark.to))) + 3;
  const at = (day: number) => Math.round(((day - from) / (to - from)) * 10_000) / 100;
  const months = monthsBetween(from, to);
  const monthName = new Intl.DateTimeFormat(view.language === 'fr' ? 'fr-CA' : 'en-CA', {
    month: 'short',
    timeZone: 'UTC',
  });
  return (
    <section>
      <h2>
        {say(drawn.length === boxes.length ? 'page-spells-timeline' : 'page-spells-timeline-touched', {})}
      </h2>
      <div class="timeline">
        <span />
        <svg class="months" height="16" aria-hidden="true">
          {months.map((month) =>
            at(month) > 96 ? null : (
              <text x={`${at(month)}%`} y="12" text-anchor="start">
                {monthName.format(month * 86_400_000)}
              </text>
            ),
          )}
        </svg>
        {drawn.map((box) => {
          const own = marks.filter(({ row }) => row.boxes.includes(box)).map(({ mark }) => mark);
          return (
            <>
              <a href={`/boxes/${encodeURIComponent(box)}`}>{box}</a>
              <svg
                class="strip"
                height={HEIGHT}
                role={own.length > 0 ? 'group' : 'img'}
                aria-label={`${box}: ${own.map(({ spoken }) => spoken).join('; ') || '–'}`}
              >
                {months.map((month) => (
                  <line class="month" x1={`${at(month)}%`} x2={`${at(month)}%`} y1="0" y2={HEIGHT} />
                ))}
                <line class="base" x1="0" x2="100%" y1={HEIGHT - 1} y2={HEIGHT - 1} />
                <SpellMarks marks={own} at={at} height={HEIGHT} />
                <line class="today" x1={`${at(view.today)}%`} x2={`${at(view.today)}%`} y1="0" y2={HEIGHT} />
              </svg>
            </>
          );
        })}
      </div>
      <p class="small">
        {say('page-spells-timeline-key', {})}
        {drawn.length === boxes.length
          ? null
          : ` ${say('page-spells-timeline-others', { boxes: boxes.length - drawn.length })}`}
      </p>
      <details>
        <summary>{say('page-table-behind', {})}</summary>
        <Figures
          caption={say('page-spells-timeline', {})}
          columns={[
            { name: say('page-spells-box', {}) },
            { name: say('page-spells-what', {}) },
            { name: say('page-spells-class', {}) },
            { name: say('page-spells-from', {}) },
            { name: say('page-spells-to', {}) },
            { name: say('page-spells-state', {}) },
          ]}
          rows={boxes.flatMap((box) =>
            rows
              .filter((row) => row.boxes.includes(box))
              .map((row) => {
                const said = spellSentences(view.language, row, zone);
                return [box, said.title, said.severity, said.from, said.to, said.state];
              }),
          )}
        />
      </details>
    </section>
  );
}

function monthsBetween(from: number, to: number): number[] {
  const first = new Date(from * 86_400_000);
  const months: number[] = [];
  for (let month = first.getUTCMonth() + 1; months.length < 60; month++) {
    const day = Date.UTC(first.getUTCFullYear(), month, 1) / 86_400_000;
    if (day > to) break;
    months.push(day);
  }
  return months;
}
