import { type BoxForecast, type Forecast, Origin } from '../../forecasting/index.js';
import type { Spell, SpellKind } from '../../forecasting/spells/spell.js';
import { epochMillis, type Season, standardOffset } from '../season/index.js';

const DAY = 86_400_000;
/** A day whose mean is at most this counts as a day at freezing, °C: what loggers of ±0.2 °C cannot tell from 0 (ours). */
export const AT_FREEZING = 0.2;
/** What the gauge saw, rather than the thermometer. */
export const AT_THE_GAUGE: readonly SpellKind[] = ['freshet', 'break-up', 'low-water'];

/** The winter one box had, from planting until it was lifted or the day of the report. */
export interface BoxWinter {
  readonly box: string;
  readonly site: string;
  /** Degree-days of the lot with the most eggs, above its table's base; null where the water is not known. */
  readonly thermalUnits: number | null;
  readonly days: { readonly measured: number; readonly filled: number; readonly projected: number };
  readonly atFreezing: number | null;
  /** Daily means, °C. */
  readonly lowest: number | null;
  readonly highest: number | null;
  /** Counts of what was judged harmful, of boxes out of the water, and of events at the gauge. */
  readonly spells: number;
  readonly spellHours: number;
  readonly exposures: number;
  readonly gaugeEvents: number;
  readonly depthM: number | null;
  readonly velocityMs: number | null;
  readonly find: string | null;
  readonly siltMm: number | null;
}

const dayOf = (date: string) => Date.parse(`${date}T00:00Z`) / DAY;

/** @param spells those of the season, as they were judged; empty where nothing was judged */
export function boxWinters(
  season: Season,
  { boxes, asOf }: Forecast,
  silt: ReadonlyMap<string, number | null>,
  spells: readonly Spell[],
): BoxWinter[] {
  const offset = standardOffset(season.group.zone) * 60_000;
  const day = (moment: string) => (epochMillis(moment) + offset) / DAY;
  return season.boxes.map((box) => {
    const forecast = boxes.find((one) => one.box === box.id);
    const planted = Math.min(...box.fills.map((fill) => day(fill.planted)));
    // A box that was not found is not known to have lain there any longer.
    const gone = season.tallies.find((tally) => tally.box === box.id)?.when.date ?? null;
    const end = box.lifted === null ? (gone === null ? asOf : dayOf(gone)) : Math.floor(day(box.lifted));
    const until = Math.min(asOf, end);
    const site = season.sites.find(({ id }) => id === box.site);
    const mine = spells.filter((one) => one.state !== 'withdrawn' && one.boxes.includes(box.id));
    const harm = mine.filter(({ kind }) => kind !== 'exposure' && !AT_THE_GAUGE.includes(kind));
    const [most] = forecast?.lots.toSorted((a, b) => b.eggs - a.eggs) ?? [];
    return {
      box: box.id,
      site: box.site,
      thermalUnits: most?.thermalUnits ?? null,
      ...waterOf(forecast, planted, until),
      spells: harm.length,
      spellHours: harm.reduce((sum, { hours }) => sum + hours, 0),
      exposures: mine.filter(({ kind }) => kind === 'exposure').length,
      gaugeEvents: mine.filter(({ kind }) => AT_THE_GAUGE.includes(kind)).length,
      depthM: box.depthM ?? site?.depthM ?? null,
      velocityMs: site?.velocityMs ?? null,
      find: box.find,
      siltMm: silt.get(box.id) ?? null,
    };
  });
}

function waterOf(forecast: BoxForecast | undefined, planted: number, until: number) {
  const days = { measured: 0, filled: 0, projected: 0 };
  let [atFreezing, lowest, highest] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const water = forecast?.water?.days ?? null;
  for (let day = Math.floor(planted); water !== null && day <= until; day++) {
    const i = day - water.firstDay;
    const celsius = i >= 0 && i < water.mean.length ? water.mean[i] : Number.NaN;
    if (!Number.isFinite(celsius)) continue;
    if (water.origin[i] === Origin.measured) days.measured++;
    else if (water.origin[i] === Origin.filled) days.filled++;
    else days.projected++;
    if (celsius <= AT_FREEZING) atFreezing++;
    lowest = Math.min(lowest, celsius);
    highest = Math.max(highest, celsius);
  }
  const known = Number.isFinite(lowest);
  return {
    days,
    atFreezing: known ? atFreezing : null,
    lowest: known ? lowest : null,
    highest: known ? highest : null,
  };
}
