import type { BoxForecast, Interval, StageWindow } from '../../../forecasting/forecast.js';
import { type SpellMark, SpellMarks } from '../parts/spell-marks.js';
import type { View } from '../view.js';
import { type Bar, windowOfBar } from './lanes.js';
import type { TimeAxis } from './time-axis.js';

/** Height of a lane, its bar, and the room for the day's name, in px. */
const LANE = 14;
const BAR = 9;

interface StripProps {
  readonly view: View;
  readonly box: BoxForecast;
  readonly bars: readonly Bar[];
  readonly axis: TimeAxis;
  readonly marks: readonly SpellMark[];
}

/**
 * A box's windows on the shared axis, a lane a stage: pale from the early end of its first eggs' interval to the late
 * end of its last ones', solid from first to last egg, a mark at the median. Everything stands in percent, so it fits
 * any width without a script. A passed stage is drawn hollow and ticked.
 */
export function Strip({ view, box, bars, axis, marks }: StripProps) {
  const height = (1 + Math.max(0, ...bars.map(({ lane }) => lane))) * LANE;
  return (
    <svg
      class="strip"
      height={height}
      role={marks.length > 0 ? 'group' : 'img'}
      aria-label={[spoken(view, box), ...marks.map((mark) => mark.spoken)].join(' ')}
    >
      {axis.months.map((month) => (
        <line class="month" x1={`${axis.at(month)}%`} x2={`${axis.at(month)}%`} y1="0" y2={height} />
      ))}
      {bars.map(({ stages, style, lane }) => {
        const window = windowOfBar(box, stages);
        const y = lane * LANE + (LANE - BAR) / 2;
        return window === null ? null : (
          <Window view={view} window={window} stages={stages} axis={axis} y={y} style={style} />
        );
      })}
      <SpellMarks marks={marks} at={axis.at} height={height} begins={axis.from} />
      <line class="today" x1={`${axis.at(view.today)}%`} x2={`${axis.at(view.today)}%`} y1="0" y2={height} />
    </svg>
  );
}

interface WindowProps {
  readonly view: View;
  readonly window: StageWindow;
  readonly stages: readonly string[];
  readonly axis: TimeAxis;
  readonly y: number;
  readonly style: number;
}

function Window({ view, window, stages, axis, y, style }: WindowProps) {
  const { first, median, last, passed } = window;
  if (median.p50 === null) return null;
  const from = first.p10 ?? first.p50 ?? median.p10 ?? median.p50;
  const to = last.p90 ?? axis.to;
  const [solidFrom, solidTo] = [first.p50 ?? median.p50, last.p50 ?? axis.to];
  const x = (day: number) => `${axis.at(day)}%`;
  const wide = (a: number, b: number) =>
    `${Math.max(0.4, Math.round((axis.at(b) - axis.at(a)) * 100) / 100)}%`;
  const roomRight = axis.at(to) < 78;
  return (
    <g class={`s${style}${passed ? ' passed' : ''}`}>
      <rect class="wide" x={x(from)} width={wide(from, to)} y={y} height={BAR} rx="2" />
      <rect class="solid" x={x(solidFrom)} width={wide(solidFrom, solidTo)} y={y + 2} height={BAR - 4} />
      <line class="median" x1={x(median.p50)} x2={x(median.p50)} y1={y - 1} y2={y + BAR + 1} />
      <text
        x={x(roomRight ? to : from)}
        dx={roomRight ? 4 : -4}
        y={y + BAR - 1}
        text-anchor={roomRight ? 'start' : 'end'}
      >
        {passed ? '✓ ' : ''}
        <tspan class="stage">{stages.map(view.stage).join(', ')} </tspan>
        {view.short(median.p50)}
      </text>
    </g>
  );
}

/** The strip in words, for who does not see it. */
function spoken(view: View, box: BoxForecast): string {
  const windows = box.windows.map(({ stage, first, median, last }) =>
    view.say('page-season-strip-window', {
      stage: view.stage(stage),
      first: interval(view, first),
      median: interval(view, median),
      last: interval(view, last),
    }),
  );
  return view.say('page-season-strip', { box: box.box, windows: windows.join(' ') });
}

/** "14 May (7 May to 20 May)" */
/** A day and its month never part over a line. */
const together = (day: string): string => day.replace(' ', '\u00a0');

export function interval(view: View, { p10, p50, p90 }: Interval): string {
  if (p50 === null) return view.say('page-no-date', {});
  const [date, from, to] = [p50, p10 ?? p50, p90].map((day) =>
    day === null ? '…' : together(view.short(day)),
  );
  return from === to
    ? (date ?? '')
    : view.say('page-interval', { date: date ?? '', from: from ?? '', to: to ?? '' });
}
