// `node dist/bench/spells.js FILE.csv.gz…`: how many spells the icy winters of public records raise (60 or more days at or
// below 0.5 °C in the 182 from 1 November, eggs fertilised then). Daily means as they were observed, made into a logger's
// hours (see quality/network.ts: noise, resolution, a bias of up to 0.15 °C); the logger lies in the box and states 0.2 °C.
import Table from 'cli-table3';
import { measuredDays } from '../forecasting/day-series.js';
import { atlanticSalmon, type BoxForecast, forecast } from '../forecasting/index.js';
import { daily } from '../forecasting/quality/hours.js';
import { type Finding, hourly as hours, judgeStation } from '../forecasting/quality/index.js';
import { type FoundSpell, judgeSpells, type WaterRecord } from '../forecasting/spells/index.js';
import { type DailyWinter, HOUR, type HourlyWinter, hourly, wholeWinters } from './quality/network.js';

const DAY = 24 * HOUR;
/** 1 November, in winters that begin on 1 October. */
const FERTILISED = 31;

const tally = new Map<string, number>();
let [icy, all, lethalFreezing] = [0, 0, 0];
for (const file of process.argv.slice(2)) {
  const winters = wholeWinters(file);
  for (const winter of winters) {
    all++;
    if (!isIcy(winter)) continue;
    icy++;
    const clean = hourly(winter);
    for (const checked of [false, true]) {
      for (const spell of spellsOf(
        winter,
        clean,
        checked ? findingsOf(clean, besides(winter, winters)) : [],
      )) {
        if (spell.kind === 'freezing') lethalFreezing++;
        const name = `${checked ? 'with' : 'without'} quality checks: ${spell.kind}, ${spell.severity}, ${spell.certainty}${spell.sign === null ? '' : ` (${spell.sign})`}`;
        tally.set(name, (tally.get(name) ?? 0) + 1);
      }
    }
  }
}
const table = new Table({ head: ['spells', 'in all', 'a winter'], style: { head: [], border: [] } });
for (const [name, count] of [...tally].sort()) table.push([name, count, (count / icy).toFixed(3)]);
console.log(`${icy} icy winters of ${all}; freezing spells in them: ${lethalFreezing}`);
console.log(table.toString());
process.exitCode = lethalFreezing > 0 ? 1 : 0;

function isIcy({ water }: DailyWinter): boolean {
  return water.subarray(FERTILISED, FERTILISED + 182).filter((celsius) => celsius <= 0.5).length >= 60;
}

function spellsOf(winter: DailyWinter, kept: HourlyWinter, findings: readonly Finding[]): FoundSpell[] {
  const begin = (winter.firstDay + FERTILISED) * DAY;
  const box = boxOf(winter);
  const record: WaterRecord = {
    station: winter.station,
    kind: 'stream',
    accuracy: 0.2,
    at: kept.at,
    value: kept.water,
    flag: new Uint8Array(kept.at.length).fill(2),
    findings,
    lying: [{ lay: 'in-box', box: 'B', from: 0, to: Number.POSITIVE_INFINITY }],
  };
  return judgeSpells({
    now: (kept.at.at(-1) ?? begin) + HOUR,
    dayOffset: 0,
    boxes: [
      {
        box: 'B',
        stations: [winter.station],
        lots: box.lots.map(({ lot, eggs, draws }) => ({
          lot,
          eggs,
          table: atlanticSalmon,
          fertilised: begin,
          planted: begin,
          hatchery: null,
          draws: draws ?? null,
        })),
        lifted: null,
        water: null,
      },
    ],
    records: [record],
    gauges: [],
  });
}

function boxOf({ station, firstDay, water }: DailyWinter): BoxForecast {
  const at = firstDay + FERTILISED;
  const made = forecast({
    asOf: firstDay + water.length - 1,
    stations: [
      {
        station,
        kind: 'stream',
        latitude: null,
        longitude: null,
        accuracy: 0.2,
        reports: true,
        days: measuredDays(firstDay, water),
      },
    ],
    sightings: [],
    curve: null,
    lots: [{ lot: 'A', fertilised: at, table: atlanticSalmon, before: { kind: 'none' } }],
    boxes: [
      {
        box: 'B',
        site: 'S',
        fills: [{ lot: 'A', eggs: 1000, planted: at }],
        lifted: null,
        stations: [station],
      },
    ],
    oldRule: { thermalUnits: 500, base: 0 },
    seed: 1,
  });
  const [box] = made.boxes;
  if (box === undefined) throw new Error('a forecast of one box has one');
  return box;
}

/** Stations of the same network in the same winter, as the quality checks have them beside one. */
function besides(winter: DailyWinter, winters: readonly DailyWinter[]): HourlyWinter[] {
  return winters
    .filter((one) => one.firstDay === winter.firstDay && one.station !== winter.station)
    .slice(0, 4)
    .map(hourly);
}

function findingsOf({ at, water, air }: HourlyWinter, neighbours: readonly HourlyWinter[]): Finding[] {
  const grid = hours(at, air);
  const days = daily(grid, 0);
  return judgeStation({
    kind: 'stream',
    quantity: 'temperature',
    at,
    value: water,
    offsetMinutes: 0,
    accuracy: 0.2,
    deployments: [],
    batteries: [],
    air: [{ station: 'air', hours: grid, days, history: days }],
    neighbours: neighbours.map((one) => {
      const its = hours(one.at, one.water);
      const mean = daily(its, 0);
      return { station: one.station, hours: its, days: mean, history: mean };
    }),
    history: null,
  });
}
