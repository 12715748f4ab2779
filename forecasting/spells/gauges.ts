import type { Source } from '../table.js';
import type { Candidate } from './candidate.js';
import type { GaugeRecord, SpellInput } from './input.js';
import type { PassedLimit, SpellKind } from './spell.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** What is usual: the median of the days before, so many of them, and so many at least (ours). */
const USUAL_DAYS = 30;
const LEAST_DAYS = 10;
/** A freshet: three times the usual flow, or half a metre above the usual level, for six hours (ours). */
const HIGH = { discharge: 3, level: 0.5, hours: 6 };
/** Very low: under a third of the usual flow, or 0.3 m under the usual level, for a day (ours). */
const LOW = { discharge: 1 / 3, level: -0.3, hours: 24 };
/** A rise in these months (December to March) is a midwinter break-up, not the freshet of spring. */
const MIDWINTER: readonly number[] = [11, 0, 1, 2];
/** Rises less than this apart are one. */
const APART = 2 * DAY;

const OURS: Source = {
  cite: 'limits at gauges are a choice of this project',
  mark: 'ours',
  of: 'limit, hours',
};
const BREAK_UP: Source = {
  cite: 'Cunjak et al. 1998, Can. J. Fish. Aquat. Sci. 55 (Suppl. 1):161-180 (egg survival was lowest in the winter of a midwinter break-up)',
  mark: 'abstract',
};

/**
 * What gauges tell, noted against every box that was in the water: freshets, midwinter break-ups, very low water.
 * Nobody has published what they kill, so no figure is given.
 */
export function gaugeEvents(input: SpellInput): Candidate[] {
  return input.gauges.flatMap((gauge) =>
    eventsAt(gauge, input.dayOffset).flatMap((event) =>
      input.boxes.flatMap((box) =>
        box.lots.flatMap((lot): Candidate[] => {
          const from = Math.max(event.from, lot.planted);
          const to = Math.min(event.to, box.lifted ?? input.now, input.now);
          if (from >= to) return [];
          return [
            {
              kind: event.kind,
              station: gauge.station,
              box: box.box,
              lot: lot.lot,
              eggs: lot.eggs,
              severity: 'event',
              certainty: 'measured',
              origin: 'measured',
              from: event.from,
              to,
              hours: (to - event.from) / HOUR,
              degreeHours: null,
              peak: null,
              chance: null,
              limit: event.limit,
              stages: [],
              mortality: [],
              sign: null,
            },
          ];
        }),
      ),
    ),
  );
}

interface GaugeEvent {
  readonly kind: SpellKind;
  readonly from: number;
  readonly to: number;
  readonly limit: PassedLimit;
}

function eventsAt(gauge: GaugeRecord, dayOffset: number): GaugeEvent[] {
  const usual = usualAt(gauge);
  return [
    ...runs(gauge, usual, (value, is) => beyond(gauge, value, is, 'high'), HIGH.hours).map(
      ({ from, to }): GaugeEvent => {
        const midwinter = MIDWINTER.includes(new Date(from + dayOffset).getUTCMonth());
        const sources = midwinter ? [OURS, BREAK_UP] : [OURS];
        return { kind: midwinter ? 'break-up' : 'freshet', from, to, limit: limitOf(gauge, HIGH, sources) };
      },
    ),
    ...runs(gauge, usual, (value, is) => beyond(gauge, value, is, 'low'), LOW.hours).map(
      ({ from, to }): GaugeEvent => ({ kind: 'low-water', from, to, limit: limitOf(gauge, LOW, [OURS]) }),
    ),
  ];
}

function limitOf({ quantity }: GaugeRecord, of: typeof HIGH, sources: readonly Source[]): PassedLimit {
  const unit = quantity === 'level' ? 'metres' : 'times-usual';
  return { value: Number(of[quantity].toFixed(2)), unit, hours: of.hours, sources };
}

function beyond({ quantity }: GaugeRecord, value: number, usual: number, side: 'high' | 'low'): boolean {
  const by = quantity === 'level' ? value - usual : usual > 0 ? value / usual : Number.NaN;
  return side === 'high' ? by >= HIGH[quantity] : by <= LOW[quantity];
}

/** The median of the days before each reading; NaN while there are too few. */
function usualAt({ at, value }: GaugeRecord): Float64Array {
  const days = new Map<number, { sum: number; n: number }>();
  for (let i = 0; i < at.length; i++) {
    const day = Math.floor(at[i] / DAY);
    const mean = days.get(day) ?? { sum: 0, n: 0 };
    mean.sum += value[i];
    mean.n++;
    days.set(day, mean);
  }
  const known = new Map<number, number>();
  const usual = (day: number): number => {
    const made = known.get(day);
    if (made !== undefined) return made;
    const before: number[] = [];
    for (let d = day - USUAL_DAYS; d < day; d++) {
      const mean = days.get(d);
      if (mean !== undefined) before.push(mean.sum / mean.n);
    }
    before.sort((a, b) => a - b);
    const middle = before.length < LEAST_DAYS ? Number.NaN : before[before.length >> 1];
    known.set(day, middle);
    return middle;
  };
  return at.map((instant) => usual(Math.floor(instant / DAY)));
}

function runs(
  { at, value }: GaugeRecord,
  usual: Float64Array,
  is: (value: number, usual: number) => boolean,
  hours: number,
): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = [];
  for (let i = 0; i < at.length; i++) {
    if (Number.isNaN(usual[i]) || !is(value[i], usual[i])) continue;
    const last = found.at(-1);
    if (last !== undefined && at[i] - last.to <= APART) last.to = at[i];
    else found.push({ from: at[i], to: at[i] });
  }
  return found.filter(({ from, to }) => to - from >= hours * HOUR);
}
