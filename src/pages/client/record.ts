/// <reference lib="dom" />
import uPlot from 'uplot';

/**
 * The zoomable record: the drawn chart of the page is replaced once the first stretch has come. Each stretch is asked
 * for at the width of the screen, never more.
 */
interface Stretch {
  readonly time: number[];
  readonly min: number[];
  readonly mean: number[];
  readonly max: number[];
  readonly flag: number[];
}

const place = document.querySelector<HTMLElement>('#record');
const buttons = document.querySelector<HTMLElement>('#record-buttons');
const DOUBTED = 3;

if (place?.dataset.record) void begin(place, place.dataset.record);

async function begin(root: HTMLElement, address: string): Promise<void> {
  const drawn = root.querySelector<HTMLElement>('.chart');
  const asked = new URLSearchParams(location.search);
  const from = asked.get('from');
  const to = asked.get('to');
  const first = await fetchStretch(
    address,
    from ? Date.parse(from) : null,
    to ? Date.parse(to) + 86_400_000 : null,
  );
  if (!drawn || first === null || first.time.length < 2) return;
  const days = await fetchDays(root.dataset.days ?? '');
  const lastDay = Math.max(...days.keys()) * 1000;
  const lastReading = first.time[first.time.length - 1] ?? 0;
  const whole: Span = {
    from: from ? Date.parse(from) : (first.time[0] ?? 0),
    to: to ? Date.parse(to) + 86_400_000 : Math.max(lastReading, lastDay),
  };
  let shown = whole;
  const chart = new uPlot(
    options(root, drawn, (span) => void show(span)),
    columns(first, days),
    drawn,
  );
  chart.setScale('x', { min: whole.from / 1000, max: whole.to / 1000 });
  // The drawn chart stays for the printer: a canvas keeps the colours of the screen.
  drawn.classList.add('live');
  if (buttons) buttons.hidden = false;
  buttons?.addEventListener('click', (event) => {
    const move = event.target instanceof HTMLElement ? event.target.dataset.move : undefined;
    if (move) void show(moved(shown, move));
  });
  chart.over.addEventListener('dblclick', () => void show(whole));
  addEventListener('resize', () => chart.setSize({ width: drawn.clientWidth, height: 300 }));

  async function show(span: Span): Promise<void> {
    const stretch = await fetchStretch(address, span.from, span.to);
    if (stretch === null) return;
    shown = span;
    // The dates of the form say what is shown.
    for (const name of ['from', 'to'] as const) {
      const input = document.querySelector<HTMLInputElement>(`form.choose input[name=${name}]`);
      if (input) input.value = new Date(span[name]).toISOString().slice(0, 10);
    }
    chart.setData(columns(stretch, days), false);
    chart.setScale('x', { min: span.from / 1000, max: span.to / 1000 });
  }
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Half of the stretch to either side, or half and twice as much of it. */
function moved({ from, to }: Span, move: string): Span {
  const half = (to - from) / 2;
  const quarter = half / 2;
  if (move === 'earlier') return { from: from - half, to: to - half };
  if (move === 'later') return { from: from + half, to: to + half };
  if (move === 'closer') return { from: from + quarter, to: to - quarter };
  return { from: from - half, to: to + half };
}

async function fetchStretch(
  address: string,
  from: number | null,
  to: number | null,
): Promise<Stretch | null> {
  const query = new URL(address, location.href);
  if (from !== null) query.searchParams.set('from', new Date(from).toISOString());
  if (to !== null) query.searchParams.set('to', new Date(to).toISOString());
  query.searchParams.set('points', String(Math.min(1500, Math.max(200, innerWidth))));
  const answer = await fetch(query);
  return answer.ok ? answer.json() : null;
}

/** Days by their noon in seconds; null where a day was measured, so that no line runs across it. */
type Days = Map<number, number | null>;

async function fetchDays(address: string): Promise<Days> {
  const known: Days = new Map();
  const answer = await fetch(address);
  if (!answer.ok) return known;
  const { date, mean_c, origin }: { date: string[]; mean_c: (number | null)[]; origin: string[] } =
    await answer.json();
  date.forEach((day, i) => {
    const mean = mean_c[i];
    known.set(Date.parse(day) / 1000 + 43_200, origin[i] === 'measured' ? null : (mean ?? null));
  });
  return known;
}

/** A line breaks where nothing was recorded for so long: twenty times the usual step, as on the drawn chart. */
const HOLE = 20;

/** Time, lowest, highest, mean, filled days, doubted readings: all on one time axis; null breaks a line. */
function columns({ time, min, mean, max, flag }: Stretch, days: Days): uPlot.AlignedData {
  const steps = time.slice(1).map((at, i) => at - time[i]!);
  const usual = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
  const at: number[] = [];
  const rows: (number | null)[][] = [[], [], [], []];
  const read = new Set<number>();
  time.forEach((instant, i) => {
    if (i > 0 && instant - time[i - 1]! > HOLE * usual) {
      at.push((instant + time[i - 1]!) / 2000);
      for (const row of rows) row.push(null);
    }
    at.push(instant / 1000);
    read.add(Math.floor(instant / 86_400_000));
    const doubted = (flag[i] ?? 0) >= DOUBTED ? mean[i]! : null;
    for (const [column, value] of [min[i]!, max[i]!, mean[i]!, doubted].entries()) rows[column]?.push(value);
  });
  const noons = [...days.keys()];
  const filled = noons.map((noon) => (read.has(Math.floor(noon / 86_400)) ? null : (days.get(noon) ?? null)));
  // What the other table's instants add is no hole (1); a measured day between filled ones is (2: also around it).
  return uPlot.join(
    [
      [at, ...rows],
      [noons, filled],
    ],
    [
      [1, 2, 2, 2, 1],
      [1, 2],
    ],
  );
}

function options(root: HTMLElement, drawn: HTMLElement, zoom: (span: Span) => void): uPlot.Options {
  const ink = (name: string) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  const locale = root.dataset.language === 'fr' ? 'fr-CA' : 'en-GB';
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
  const figureOf = (value: number) => number.format(value).replace('-', '\u2212');
  const figure = (_: uPlot, value: number | null) => (value === null ? '–' : figureOf(value));
  const axis = {
    stroke: ink('--ink'),
    grid: { stroke: ink('--line'), width: 1 },
    ticks: { stroke: ink('--line') },
  };
  const broken = { spanGaps: false, points: { show: false } };
  return {
    width: drawn.clientWidth,
    height: 300,
    cursor: { drag: { x: true, y: false, setScale: false } },
    hooks: {
      setSelect: [
        (chart) => {
          const { left, width } = chart.select;
          if (width < 4) return;
          zoom({ from: chart.posToVal(left, 'x') * 1000, to: chart.posToVal(left + width, 'x') * 1000 });
          chart.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
    },
    axes: [
      {
        ...axis,
        // A month with its year needs so much room, px.
        space: 80,
        values: (_, ticks) =>
          ticks.map((at, i) => dateName(locale, at, (ticks[1] ?? at) - (ticks[0] ?? at), i)),
      },
      {
        ...axis,
        // Room for −0.02 beside the unit, px.
        size: 64,
        values: (_, ticks) => ticks.map(figureOf),
        label: root.dataset.unit ?? '',
      },
    ],
    series: [
      {
        label: root.dataset.time ?? '',
        value: (_, at) => (at === null ? '–' : new Date(at * 1000).toLocaleString(locale)),
      },
      { label: root.dataset.low ?? '', stroke: ink('--band'), ...broken, value: figure },
      { label: root.dataset.high ?? '', stroke: ink('--band'), ...broken, value: figure },
      { label: root.dataset.measured ?? '', stroke: ink('--measured'), width: 1.6, ...broken, value: figure },
      {
        label: root.dataset.doubted ?? '',
        stroke: ink('--today'),
        paths: () => null,
        points: { show: true, size: 5 },
        value: figure,
      },
      {
        label: root.dataset.filled ?? '',
        stroke: ink('--filled'),
        width: 1.6,
        dash: [6, 3],
        points: { show: false },
        value: figure,
      },
    ],
    bands: [{ series: [2, 1], fill: ink('--band') }],
  };
}

function dateName(locale: string, seconds: number, step: number, index: number): string {
  const date = new Date(seconds * 1000);
  if (step < 86_400) {
    const clock = date.toLocaleTimeString(locale, { hour: '2-digit', minute: '2-digit' });
    const named = locale === 'fr-CA' ? clock.replace(/^0(?=\d)/, '').replace(/(?<=h)\s00$/, '') : clock;
    return index === 0 ? `${dayName(locale, date)}, ${named}` : named;
  }
  if (step > 2_000_000) return date.toLocaleDateString(locale, { month: 'short', year: 'numeric' });
  return dayName(locale, date);
}

function dayName(locale: string, date: Date): string {
  const day = date.toLocaleDateString(locale, { day: 'numeric', month: 'short' });
  return locale === 'fr-CA' ? day.replace(/^1(?= )/, '1er') : day;
}
