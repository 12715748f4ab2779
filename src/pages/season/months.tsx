import type { View } from '../view.js';
import type { TimeAxis } from './time-axis.js';

/** What the name of a day takes of the axis, percent: on a phone, and on a laptop. */
const ON_PHONE = 16;
const ON_LAPTOP = 7;

interface Named {
  readonly day: number;
  readonly at: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** The names of months above the strips, and the day the page is for. None runs into another or over an end. */
export function Months({ view, axis }: { view: View; axis: TimeAxis }) {
  const named = (day: number): Named => ({ day, at: axis.at(day), anchor: anchorAt(axis.at(day)) });
  const today = named(view.today);
  const months = axis.months.map(named);
  const everywhere = withRoom(months, today, ON_PHONE);
  return (
    <svg class="months" height="16" aria-hidden="true">
      {withRoom(months, today, ON_LAPTOP).map((month) => (
        <text
          class={everywhere.includes(month) ? undefined : 'roomy'}
          x={`${month.at}%`}
          y="12"
          text-anchor={month.anchor}
        >
          {view.short(month.day)}
        </text>
      ))}
      <text class="today" x={`${today.at}%`} y="12" text-anchor={today.anchor}>
        {view.short(view.today)}
      </text>
    </svg>
  );
}

const anchorAt = (at: number) => (at > 100 - ON_PHONE / 2 ? 'end' : at < ON_PHONE / 2 ? 'start' : 'middle');

/** Those that keep clear of today and of each other where each takes so much. */
function withRoom(months: readonly Named[], today: Named, width: number): readonly Named[] {
  const from = ({ at, anchor }: Named) => at - { start: 0, middle: width / 2, end: width }[anchor];
  const apart = (one: Named, other: Named) => Math.abs(from(one) - from(other)) >= width;
  const kept: Named[] = [];
  for (const month of months)
    if (apart(month, today) && kept.every((one) => apart(one, month))) kept.push(month);
  return kept;
}
