import sharp from 'sharp';
import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import { waterChart } from '../charts/index.js';
import type { Group } from '../group/index.js';
import { type Language, words } from '../words/index.js';
import { kindOf } from './kinds/index.js';
import type { News } from './news.js';

/** Narrow enough that its letters are read where a phone shrinks it, pixels. */
export const CHART_WIDTH = 440;

/** How much of the winter a message shows, days. */
const BACK = 35;
const AHEAD = 21;

/** What the pages' style gives a chart's colours (src/pages/client/ground.css): a picture has no style of its own. */
const COLOURS: Readonly<Record<string, string>> = {
  '--ground': '#f8f8f5',
  '--ink': '#18272c',
  '--line': '#cdd5d6',
  '--today': '#a3271b',
  '--measured': '#0b4f5c',
  '--filled': '#b8552b',
  '--projected': '#5b6f8c',
  '--band': '#c9d3e2',
};

export interface Chart {
  readonly title: string;
  readonly svg: string;
}

/** How much is shown before a spell began and after it ended, days. */
const BEFORE = 14;
const AFTER = 14;
const DAY = 86_400_000;

/** The water at the station a spell was judged on, around it; null where the news is of no spell, or nothing is known. */
export async function spellChart(
  language: Language,
  news: readonly News[],
  group: Group,
  stationName: (station: string) => string,
): Promise<Chart | null> {
  const found = news.find((one) => one.kind === 'spell');
  const { stations } = await group.season();
  if (found?.kind !== 'spell' || !stations.some(({ id }) => id === found.spell.station)) return null;
  const { station, from, to } = found.spell;
  const first = Math.floor(from / DAY) - BEFORE;
  const last = Math.min(first + 90, Math.floor(to / DAY) + AFTER);
  const days = await group.days({ station, from: first, to: last });
  const known = Array.from(days.mean, (mean, i) => (Number.isNaN(mean) ? [] : [i])).flat();
  const [begin] = known;
  const end = known.at(-1);
  if (begin === undefined || end === undefined) return null;
  const title = words(language, 'letter-chart-spell', { station: stationName(station) });
  const unit = words(language, 'letter-chart-axis', {});
  const shown = cut(days, Math.max(begin, first - days.firstDay), Math.min(end, last - days.firstDay) + 1);
  return {
    title,
    svg: coloured(waterChart({ language, title, days: shown, asOf: null, unit, width: CHART_WIDTH })),
  };
}

/** The water of the box that the news is about (any box where it is about none), around today; null where none is known. */
export function chartOf(language: Language, news: readonly News[], forecast: Forecast): Chart | null {
  const about = news.flatMap((one) => kindOf(one).boxes?.(one) ?? []);
  const known = forecast.boxes.filter(({ water }) => water !== null);
  const box = known.find((one) => about.includes(one.box)) ?? known[0];
  if (box?.water == null) return null;
  const title = words(language, 'letter-chart', { box: box.box });
  const days = around(box.water.days, forecast.asOf);
  if (days.mean.every(Number.isNaN)) return null;
  const unit = words(language, 'letter-chart-axis', {});
  const svg = waterChart({ language, title, days, asOf: forecast.asOf, unit, width: CHART_WIDTH });
  return { title, svg: coloured(svg) };
}

/** The chart as a picture that every mail program shows, twice as fine as its frame. */
export function pictureOf(svg: string): Promise<Buffer> {
  return sharp(Buffer.from(svg), { density: 144 }).flatten({ background: '#ffffff' }).png().toBuffer();
}

function around(days: DaySeries, asOf: number): DaySeries {
  const from = Math.min(days.mean.length, Math.max(0, asOf - BACK - days.firstDay));
  const to = Math.max(from, Math.min(days.mean.length, asOf + AHEAD + 1 - days.firstDay));
  return cut(days, from, to);
}

function cut(days: DaySeries, from: number, to: number): DaySeries {
  return {
    firstDay: days.firstDay + from,
    mean: days.mean.slice(from, to),
    min: days.min.slice(from, to),
    max: days.max.slice(from, to),
    coverage: days.coverage.slice(from, to),
    spread: days.spread.slice(from, to),
    origin: days.origin.slice(from, to),
  };
}

function coloured(svg: string): string {
  return svg
    .replace(/var\((--[\w-]+)\)/g, (_, name: string) => COLOURS[name] ?? '#18272c')
    .replaceAll('currentColor', '#18272c')
    .replace('font-family="system-ui, sans-serif"', 'font-family="sans-serif"')
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ');
}
