import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { hiddenWinter } from '../forecasting/hindcast/hidden-winter.js';
import { hindcastRecord, sharedPairs, wholeWinters } from '../forecasting/hindcast/winter.js';
import {
  atlanticSalmon,
  type BoxForecast,
  type DevelopmentTable,
  liftingPlan,
  stageRow,
  USUAL_LEVELS,
} from '../forecasting/index.js';
import { emerged, lotShares, stillInBox } from '../forecasting/lifting/index.js';
import { lotDraws } from '../forecasting/lifting/lot-draws.js';
import { normalDraws, seedFor } from '../forecasting/windows/draws.js';
import { type Ensemble, ensemble } from '../forecasting/windows/ensemble.js';
import { stageCourse } from '../forecasting/windows/stage-draws.js';
import { dailyFile } from '../src/hindcast/daily-file.js';

/**
 * How often a recommended lifting day was within both levels in truth, beside the chance it was given:
 * `node dist/bench/lifting.js WINTERS FILE.csv.gz…` over past winters, each hidden in turn, eggs fertilised on
 * 1 November. The water of the truth is the record; what no record tells (lot, table, days to leave, logger) is drawn
 * for it as for the forecast, with another seed. With `WINTERS` whole winters at most, spread over the files.
 */
const FERTILISED = { month: 11, day: 1 };
const LEADS = [121, 151, 181];
const TRACES = 101;
const SEED = 20_260_215;
const OFFSET = 0.2;

/** Nothing uncertain but the water. */
const waterOnly: DevelopmentTable = {
  ...atlanticSalmon,
  lotSpread: 0,
  ownSpread: 0,
  leavesBox: { ...atlanticSalmon.leavesBox, min: 10, max: 10 },
};

interface Judged {
  readonly lead: number;
  readonly of: string;
  readonly only: boolean;
  readonly chance: number;
  readonly held: number;
}

function boxOf(all: Ensemble, table: DevelopmentTable, fertilised: number): BoxForecast {
  const eggs = { lot: 'L', table, count: 1000, fertilised, planted: fertilised, before: null };
  const stages = ['hatch', 'emergence'].flatMap((stage) => {
    const row = stageRow(table, stage);
    return row === undefined ? [] : [[stage, stageCourse(all, eggs, row).draws] as const];
  });
  const lot = { lot: 'L', fertilised, table, before: { kind: 'none' as const } };
  const none = { p10: null, p50: null, p90: null };
  const windows = stages.map(([stage]) => ({
    stage,
    first: none,
    median: none,
    last: none,
    passed: false,
    unreached: null,
    outsideValidity: false,
  }));
  const oldRule = {
    thermalUnits: 500,
    hatch: null,
    why: { code: 'old-rule-no-water' as const, with: { rule: 500 } },
  };
  const draws = lotDraws(all, lot, new Map(stages));
  return {
    box: 'B',
    site: 'S',
    eggs: 1000,
    lots: [
      { lot: 'L', eggs: 1000, stage: 'unknown', progress: {}, thermalUnits: null, windows, oldRule, draws },
    ],
    water: null,
    dataThrough: null,
    days: { measured: 0, filled: 0, projected: 0 },
    windows,
    oldRule,
    method: [],
    assumptions: [],
    sharpenBy: [],
  };
}

function winters(firstDay: number, traces: readonly Float64Array[], offset: number, seed: number) {
  const drawn = normalDraws(traces.length, seedFor(seed, 'offset'));
  return { firstDay, traces, offset: drawn.map((z) => z * offset) };
}

const [wanted, ...files] = process.argv.slice(2);
const judged: Judged[] = [];
let count = 0;
for (const file of files) {
  const stations = dailyFile(gunzipSync(readFileSync(file)).toString('utf8')).filter(
    ({ kind }) => kind !== 'air',
  );
  const record = hindcastRecord(stations, FERTILISED);
  const all = record.stations.flatMap((target) => {
    const own = wholeWinters(record, target);
    return own.length < 2 ? [] : own.map((winter) => ({ target, winter }));
  });
  const step = Math.max(1, Math.floor(all.length / (Number(wanted) / files.length)));
  for (const { target, winter } of all.filter((_, i) => i % step === 0)) {
    count++;
    const pairsWith = sharedPairs(record.axis, target.mean);
    const options = {
      cases: [],
      table: atlanticSalmon,
      stages: ['hatch'],
      fertilised: FERTILISED,
      leads: [],
      gapDays: [],
      winters: 'leave-one-out' as const,
      seed: SEED,
      traces: TRACES,
    };
    const hidden = hiddenWinter(record, target, winter, pairsWith, options);
    const fertilised = record.axis.first + winter.window.from;
    for (const of of ['history', 'under-ice'] as const) {
      for (const lead of LEADS) {
        const waters = hidden.forecast(of, lead);
        if (waters.traces.length === 0) continue;
        const courses = waters.traces.map((trace) =>
          trace.subarray(winter.window.from - winter.window.start),
        );
        for (const only of [true, false]) {
          const table = only ? waterOnly : atlanticSalmon;
          const offset = only ? 0 : OFFSET;
          const known = winters(fertilised, courses, offset, SEED);
          const view = ensemble('S', known, hidden.winters(of), fertilised + lead, SEED);
          const plan = liftingPlan({
            forecast: { asOf: fertilised + lead, boxes: [boxOf(view, table, fertilised)] },
            rule: 'before-emergence',
            levels: USUAL_LEVELS,
            blocked: [],
            boxesADay: null,
            trips: [],
            over: new Set(),
          });
          const day = plan.recommended[0]?.day;
          if (day === undefined || day + 1 > fertilised + winter.measured.length) continue;
          const copies = Array.from({ length: 33 }, () => winter.measured);
          const truthSeed = seedFor(SEED + 1, target.station.station, String(winter.year));
          const end = fertilised + winter.measured.length;
          const truth = ensemble('S', winters(fertilised, copies, offset, truthSeed), 0, end, truthSeed);
          const lots = lotShares(boxOf(truth, table, fertilised)) ?? [];
          let held = 0;
          for (let k = 0; k < truth.draws; k++) {
            const within =
              stillInBox(lots, k, day + 0.5) <= USUAL_LEVELS.stillInBox &&
              emerged(lots, k, day + 0.5) <= USUAL_LEVELS.emerged;
            if (within) held++;
          }
          judged.push({ lead, of, only, chance: plan.chance, held: held / truth.draws });
        }
      }
    }
  }
}

const BINS = [0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0001];
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const line = (name: string, rows: readonly Judged[]) => {
  if (rows.length === 0) return;
  const [said, held] = [mean(rows.map(({ chance }) => chance)), mean(rows.map(({ held }) => held))];
  const error = 2 * Math.sqrt(mean(rows.map((row) => (row.held - held) ** 2)) / rows.length);
  console.log(
    `${name.padEnd(34)} ${String(rows.length).padStart(5)}  said ${said.toFixed(3)}  held ${held.toFixed(3)}  ± ${error.toFixed(3)}`,
  );
};
console.log(`${count} winters`);
for (const only of [true, false]) {
  const rows = judged.filter((row) => row.only === only);
  console.log(only ? 'the water alone uncertain' : 'everything uncertain, drawn for the truth too');
  for (const [i, from] of BINS.slice(0, -1).entries())
    line(
      `  said ${from} to ${Math.min(1, BINS[i + 1])}`,
      rows.filter(({ chance }) => chance >= from && chance < BINS[i + 1]),
    );
  for (const of of ['history', 'under-ice'])
    for (const lead of LEADS)
      line(
        `  ${of}, day ${lead}`,
        rows.filter((row) => row.of === of && row.lead === lead),
      );
  line('  all', rows);
}
