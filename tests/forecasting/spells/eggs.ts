import { atlanticSalmon, type DevelopmentTable } from '../../../forecasting/index.js';
import type { LotDraws } from '../../../forecasting/lifting/lot-draws.js';
import type { Finding } from '../../../forecasting/quality/finding.js';
import {
  type BoxAtRisk,
  type FoundSpell,
  judgeSpells,
  type Lying,
  type SpellInput,
  type WaterRecord,
} from '../../../forecasting/spells/index.js';

/** Invented eggs in an invented river, hour by hour: where one thing is tested, all others stay below every limit. */
export const DAY = 86_400_000;
export const HOUR = 3_600_000;
/** Midnight on which the eggs were fertilised and planted; days of the tests count from here. */
export const BEGIN = Date.UTC(2025, 10, 1);
const DRAWS = 51;

/** Days after fertilisation on which the median egg comes to each stage, the same in every draw but for `spread`. */
export interface Stages {
  readonly 'eye-up': number;
  readonly hatch: number;
  readonly 'button-up': number;
}

export const STAGES: Stages = { 'eye-up': 100, hatch: 200, 'button-up': 240 };

function drawsOf(stages: Stages, spread: number): LotDraws {
  const at = (day: number, late: number) =>
    Float64Array.from(
      { length: DRAWS },
      (_, k) => BEGIN / DAY + day + late + spread * (k / (DRAWS - 1) - 0.5),
    );
  const one = (day: number) => ({ first: at(day, -1), median: at(day, 0), last: at(day, 1) });
  return {
    stages: {
      'eye-up': one(stages['eye-up']),
      hatch: one(stages.hatch),
      'button-up': one(stages['button-up']),
      emergence: one(stages['button-up']),
    },
    leaves: new Float64Array(DRAWS).fill(10),
  };
}

export interface Given {
  readonly table?: DevelopmentTable;
  /** °C, hour by hour from `from` (days after fertilisation); 4 °C before and after. */
  readonly from: number;
  readonly hours: readonly number[];
  readonly accuracy?: number;
  /** How far the draws of stages lie apart, days. */
  readonly spread?: number;
  readonly lay?: Lying['lay'];
  readonly findings?: readonly Finding[];
  readonly base?: number;
  readonly days?: number;
}

/** A box B1 whose own logger recorded it all. */
export function river(given: Given): SpellInput {
  const { table = atlanticSalmon, from, hours, accuracy = 0.2, spread = 0, lay = 'in-box' } = given;
  const length = 24 * (given.days ?? 260);
  // Spring comes before the fry do.
  const value = Float64Array.from({ length }, (_, h) => (h < 24 * 225 ? (given.base ?? 4) : 10));
  hours.forEach((celsius, h) => {
    value[Math.round(24 * from) + h] = celsius;
  });
  const record: WaterRecord = {
    station: 'own',
    kind: 'stream',
    accuracy,
    at: Float64Array.from({ length }, (_, h) => BEGIN + h * HOUR),
    value,
    flag: new Uint8Array(length).fill(2),
    findings: given.findings ?? [],
    lying: [
      { lay, box: lay === 'bank' || lay === 'stream' ? null : 'B1', from: BEGIN, to: BEGIN + 400 * DAY },
    ],
  };
  const box: BoxAtRisk = {
    box: 'B1',
    stations: ['own'],
    lots: [
      {
        lot: 'A',
        eggs: 1000,
        table,
        fertilised: BEGIN,
        planted: BEGIN,
        hatchery: null,
        draws: drawsOf(STAGES, spread),
      },
    ],
    lifted: null,
    water: null,
  };
  return { now: BEGIN + length * HOUR, dayOffset: 0, boxes: [box], records: [record], gauges: [] };
}

export const judged = (given: Given): FoundSpell[] => judgeSpells(river(given));

/** `n` hours at one temperature. */
export const held = (celsius: number, n: number): number[] => Array.from({ length: n }, () => celsius);
