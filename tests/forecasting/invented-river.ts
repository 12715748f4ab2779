import {
  atlanticSalmon,
  type BoxInput,
  type DayNumber,
  emptyDays,
  type ForecastInput,
  type LotInput,
  Origin,
  type StationDays,
} from '../../forecasting/index.js';

/** An invented river, the same every time: a cosine year with winters that differ, on a plateau at 0 °C. */

export const dayOf = (iso: string): DayNumber => Date.parse(`${iso}T00:00Z`) / 86_400_000;
export const isoOf = (day: number): string =>
  new Date(Math.floor(day) * 86_400_000).toISOString().slice(0, 10);

export interface River {
  readonly station: string;
  readonly from: string;
  readonly to: string;
  /** °C added to every day before the floor at freezing. */
  readonly warmer?: number;
  readonly reports?: boolean;
  readonly accuracy?: number;
  readonly kind?: StationDays['kind'];
  /** Days without a reading. */
  readonly missing?: (day: DayNumber) => boolean;
}

export function waterOn(day: DayNumber, warmer = 0): number {
  const year = Math.floor(day / 365.25);
  const season = 7.2 - 10.5 * Math.cos((2 * Math.PI * ((day % 365.25) - 28)) / 365.25);
  return Math.max(0, season + 1.2 * Math.sin(year * 7.3) + Math.sin(day / 9) + warmer);
}

export function river({ station, from, to, warmer = 0, missing, ...rest }: River): StationDays {
  const firstDay = dayOf(from);
  const days = emptyDays(firstDay, dayOf(to) - firstDay + 1);
  for (let i = 0; i < days.mean.length; i++) {
    if (missing?.(firstDay + i)) continue;
    const celsius = waterOn(firstDay + i, warmer);
    days.mean[i] = celsius;
    days.min[i] = celsius;
    days.max[i] = celsius;
    days.coverage[i] = 1;
    days.spread[i] = 0;
    days.origin[i] = Origin.measured;
  }
  return {
    station,
    kind: rest.kind ?? 'stream',
    latitude: null,
    longitude: null,
    accuracy: rest.accuracy ?? 0.2,
    reports: rest.reports ?? true,
    days,
  };
}

/** A station whose days are all one temperature. */
export function steady(station: string, celsius: number, from: string, to: string): StationDays {
  const made = river({ station, from, to, kind: 'tank' });
  made.days.mean.fill(celsius);
  return made;
}

export const lot = (changes: Partial<LotInput> = {}): LotInput => ({
  lot: 'L1',
  fertilised: dayOf('2025-11-01') + 0.5,
  table: atlanticSalmon,
  before: { kind: 'none' },
  ...changes,
});

export const box = (changes: Partial<BoxInput> = {}): BoxInput => ({
  box: 'B1',
  site: 'S1',
  fills: [{ lot: 'L1', eggs: 1000, planted: dayOf('2025-11-01') + 0.5 }],
  lifted: null,
  stations: ['bridge'],
  ...changes,
});

export const season = (changes: Partial<ForecastInput> = {}): ForecastInput => ({
  asOf: dayOf('2026-02-15'),
  stations: [river({ station: 'bridge', from: '2013-09-01', to: '2026-02-15' })],
  sightings: [],
  curve: null,
  lots: [lot()],
  boxes: [box()],
  oldRule: { thermalUnits: 500, base: 0 },
  seed: 7,
  ...changes,
});
