import {
  CLIMATE_ID,
  climateHourlyWritten,
  ofQuantity,
  throughRdbDischarge,
  writeClimateDaily,
  writeClimateHourly,
  writeHydrometric,
  writeRdb,
} from './agencies.js';
import { fixedOffset } from './clock.js';
import { type Expected, knowsNothing, knowsZone, type Layout } from './layout.js';
import { type InventedRecord, type InventedSeries, invent, inventDaily, type Plan } from './record.js';
import { plainStyle, type Style, stamp } from './style.js';
import { writeDaily, writeDailyPlaces, writeLong, writeWide } from './tables.js';
import { kept, throughText } from './units.js';
import { nilAt, type WaterMlStyle, writeWaterMl } from './write-waterml.js';

const first = Date.UTC(2025, 10, 20, 5);
const three = ['weir-pool', 'ford', 'alder-bank'];
const plan = (stations: readonly string[], readings: number, stepMinutes = 60): Omit<Plan, 'seed'> => ({
  stations,
  first,
  stepMinutes,
  readings,
});

interface Kept {
  readonly station: string | null;
  readonly unit?: 'C' | 'F' | 'K';
  readonly decimals: number;
  readonly written?: readonly number[];
  readonly medium?: 'water' | 'air';
}

function temperature(
  series: InventedSeries,
  { station, unit = 'C', decimals, written, medium }: Kept,
): Expected {
  const rows = written ?? [...series.at.keys()];
  return {
    station,
    quantity: 'temperature',
    span: 'instant',
    ...(medium === undefined ? {} : { medium }),
    at: rows.map((i) => series.at[i]!),
    value: rows.map((i) => throughText(series.value[i]!, unit, decimals)),
  };
}

/** A day's mean stands at 00:00 of its date in the zone's standard offset. */
function dayMeans(series: InventedSeries, standard: string, what: Kept): Expected {
  const offset = fixedOffset(standard) ?? 0;
  const whole = temperature(series, what);
  return { ...whole, span: 'day', at: whole.at.map((at) => at - offset * 60_000) };
}

const defaults = {
  days: false,
  anyDate: true,
  record: invent,
  asked: {},
  known: knowsNothing,
  understood: {},
};

const style = (differs: Partial<Style>): Style => ({ ...plainStyle, ...differs });
const longFr = style({
  language: 'fr',
  delimiter: ';',
  decimal: ',',
  encoding: 'windows-1252',
  zone: 'America/Halifax',
  saysOffset: 'no',
  time: stamp('y-m-d'),
});
const wide = style({ zone: 'UTC-04:00', saysOffset: 'value' });
const wideBare = style({ zone: 'UTC-04:00', saysOffset: 'value', saysUnit: 'preamble' });

const shapes: readonly Layout[] = [
  {
    ...defaults,
    file: 'long-table.csv',
    plan: plan(three, 60),
    write: (record) => writeLong(record, style({})),
    expected: (record) =>
      record.map((series) => temperature(series, { station: series.station, decimals: 2 })),
  },
  {
    ...defaults,
    file: 'table-longue.csv',
    plan: plan(['pont-couvert', 'étang-du-moulin'], 60),
    write: (record) => writeLong(record, longFr),
    expected: (record) =>
      record.map((series) => temperature(series, { station: series.station, decimals: 2 })),
    asked: { zone: 'America/Halifax' },
  },
  {
    ...defaults,
    file: 'wide-table.csv',
    plan: plan(three, 60),
    write: (record) => writeWide(record, wide),
    expected: (record) =>
      record.map((series) => temperature(series, { station: series.station, decimals: 2 })),
  },
  {
    ...defaults,
    file: 'wide-table-unit-in-preamble.csv',
    plan: plan(three, 60),
    write: (record) => writeWide(record, wideBare),
    expected: (record) =>
      record.map((series) => temperature(series, { station: series.station, decimals: 2 })),
  },
];

const frenchDays = style({ language: 'fr', delimiter: ';', decimal: ',', decimals: 1, time: stamp('d/m/y') });
const englishDays = style({ decimals: 1, time: stamp('y-m-d') });

const dailies: readonly Layout[] = [
  {
    ...defaults,
    file: 'daily-means-places.csv',
    plan: plan(['weir-pool', 'ford'], 60),
    days: true,
    understood: { daily: true, unit: 'C' as const },
    record: inventDaily,
    write: (record) => writeDailyPlaces(record, warmer(record), style({})),
    expected: (record) => {
      const days = (medium: 'water' | 'air') => (series: InventedSeries) =>
        dayMeans(series, 'UTC-04:00', { station: series.station, decimals: 2, medium });
      return [...record.map(days('water')), ...warmer(record).map(days('air'))];
    },
    asked: { zone: 'America/Moncton' },
  },
  {
    ...defaults,
    file: 'daily-means.csv',
    plan: plan(['weir-pool'], 90),
    days: true,
    understood: { daily: true, unit: 'C' as const },
    record: inventDaily,
    write: (record) => writeDaily(record, englishDays),
    expected: (record) => [dayMeans(record[0]!, 'UTC-05:00', { station: null, decimals: 1 })],
    asked: { zone: 'America/Toronto' },
  },
  {
    ...defaults,
    file: 'moyennes-journalieres.csv',
    plan: plan(['weir-pool'], 90),
    days: true,
    understood: { daily: true, unit: 'C' as const },
    record: inventDaily,
    write: (record) => writeDaily(record, frenchDays),
    expected: (record) => [dayMeans(record[0]!, 'UTC-05:00', { station: null, decimals: 1 })],
    known: knowsZone('America/Toronto'),
  },
];

/** Air some degrees above the water, so that a mixed-up column cannot go unseen. */
const warmer = (record: InventedRecord): InventedRecord =>
  record.map((series) => ({ ...series, value: series.value.map((value) => kept(value + 11.5)) }));

/** A record of a gauge: the invented values moved into a level's or a discharge's range. */
const gauge = (plan: Plan, quantity: 'level' | 'discharge', base: number): InventedSeries => {
  const [series] = invent({ ...plan, seed: plan.seed + 1 });
  return { ...series!, quantity, value: series!.value.map((value) => kept(base + value / 10)) };
};

const air = (plan: Plan): InventedRecord =>
  invent(plan).map((series) => ({ ...series, value: series.value.map((value) => kept(value - 4)) }));
const airDays = (plan: Plan): InventedRecord =>
  air({ ...plan, first: Math.floor(plan.first / 86_400_000) * 86_400_000, stepMinutes: 1440 });

const climate = (language: 'en' | 'fr'): readonly Layout[] => [
  {
    ...defaults,
    file: `climate-hourly-${language}.csv`,
    plan: plan(['INVENTED HILL'], 72),
    record: air,
    write: (record) => writeClimateHourly(record[0]!, 'UTC-04:00', language),
    expected: ([series]) => [
      temperature(series!, {
        station: CLIMATE_ID,
        decimals: 1,
        written: climateHourlyWritten(series!),
      }),
    ],
    known: knowsZone('America/Halifax'),
  },
  {
    ...defaults,
    file: `climate-daily-${language}.csv`,
    plan: plan(['INVENTED HILL'], 60),
    days: true,
    understood: { daily: true, unit: 'C' as const },
    record: airDays,
    write: (record) => writeClimateDaily(record[0]!, language),
    expected: ([series]) => [dayMeans(series!, 'UTC-04:00', { station: CLIMATE_ID, decimals: 1 })],
    known: knowsZone('America/Halifax'),
  },
];

const agencies: readonly Layout[] = [
  {
    ...defaults,
    file: 'agency-exchange.rdb',
    plan: plan(['09999990'], 96, 30),
    record: (plan) => [...invent(plan), gauge(plan, 'discharge', 12)],
    write: (record) =>
      writeRdb(ofQuantity(record, 'temperature'), ofQuantity(record, 'discharge'), 'America/New_York'),
    expected: (record) => {
      const flow = ofQuantity(record, 'discharge');
      return [
        temperature(ofQuantity(record, 'temperature'), { station: '09999990', decimals: 1 }),
        {
          station: '09999990',
          quantity: 'discharge',
          span: 'instant',
          at: flow.at,
          value: flow.value.map(throughRdbDischarge),
        },
      ];
    },
  },
  ...climate('en'),
  ...climate('fr'),
  {
    ...defaults,
    file: 'hydrometric-real-time.csv',
    plan: plan(['09ZZ999'], 96, 5),
    record: (plan) => [gauge(plan, 'level', 2), gauge(plan, 'discharge', 30)],
    write: (record) => writeHydrometric(record[0]!, record[1]!, 'UTC-04:00'),
    expected: (record) => [
      {
        station: '09ZZ999',
        quantity: 'level',
        span: 'instant',
        at: record[0]!.at,
        value: record[0]!.value.map((v) => Number(v.toFixed(3))),
      },
      {
        station: '09ZZ999',
        quantity: 'discharge',
        span: 'instant',
        at: record[1]!.at,
        value: record[1]!.value.map((v) => Number(v.toFixed(2))),
      },
    ],
  },
];

const pointSeries: WaterMlStyle = {
  zone: 'America/Halifax',
  unit: 'C',
  decimals: 2,
  nilEvery: 11,
  offsets: 'value',
};
const fahrenheitSeries: WaterMlStyle = {
  zone: 'UTC-03:30',
  unit: 'F',
  decimals: 2,
  nilEvery: 0,
  offsets: 'monitoring point',
};

const waterMl = (file: string, stations: readonly string[], look: WaterMlStyle): Layout => ({
  ...defaults,
  file,
  plan: plan(stations, 72),
  write: (record) => writeWaterMl(record, look),
  expected: (record) =>
    record.map((series) =>
      temperature(series, {
        station: series.station,
        unit: look.unit,
        decimals: look.decimals,
        written: [...series.at.keys()].filter((i) => !nilAt(i, look)),
      }),
    ),
});

export const tableLayouts: readonly Layout[] = [
  ...shapes,
  ...dailies,
  ...agencies,
  waterMl('point-series.waterml', ['weir-pool', 'ford'], pointSeries),
  waterMl('point-series-fahrenheit.xml', ['weir-pool'], fahrenheitSeries),
];
