import {
  eggOfStage,
  type HindcastCase,
  type HindcastOptions,
  type MonthDay,
} from '../../forecasting/hindcast/index.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import { HindcastRefused } from './refused.js';

export const CASES = ['history', 'late-download', 'under-ice', 'gaps'] as const;

/** What a person asks of a hindcast, as they wrote it; empty lists and null take the usual. */
export interface HindcastAsked {
  readonly cases: readonly (HindcastCase | 'gaps')[];
  readonly fertilised: string | null;
  readonly leads: readonly string[];
  readonly gaps: readonly string[];
  readonly stage: string | null;
  /** Visits a crew could have made count as evidence, simulated from the hidden record. */
  readonly visits?: boolean;
}

const USUAL_LEADS = ['11-01', '12-15', '03-01', '04-01', '05-01'];
const USUAL_GAPS = ['7', '30', '120'];
/** Days from 1 November to the end of June, the longest stretch a hidden gap can have. */
const LONGEST_GAP = 242;
/** The same question always draws the same courses. */
const SEED = 20_260_215;
const TRACES = 101;

/** @throws HindcastRefused for what is no day of the year, no length of a gap or no stage of the table */
export function hindcastOptions(asked: HindcastAsked, table: DevelopmentTable): HindcastOptions {
  const stage = asked.stage ?? 'hatch';
  const stages = table.stages.map((row) => row.stage);
  if (eggOfStage(table, stage) === null) {
    throw new HindcastRefused({ code: 'hindcast-no-stage', with: { stage, table: table.id, stages } });
  }
  return {
    cases: asked.cases.length > 0 ? asked.cases : CASES,
    table,
    stages: [stage],
    fertilised: dayOfYear('--fertilised', asked.fertilised ?? '11-01'),
    leads: (asked.leads.length > 0 ? asked.leads : USUAL_LEADS).map((day) => dayOfYear('--lead', day)),
    gapDays: (asked.gaps.length > 0 ? asked.gaps : USUAL_GAPS).map(gapLength),
    winters: 'leave-one-out',
    visits: asked.visits === true,
    seed: SEED,
    traces: TRACES,
  };
}

/** MM-DD, a day that every year has. */
function dayOfYear(option: string, value: string): MonthDay {
  const [, month, day] = /^(\d{1,2})-(\d{1,2})$/.exec(value)?.map(Number) ?? [];
  const days = month >= 1 && month <= 12 ? new Date(Date.UTC(2001, month, 0)).getUTCDate() : 0;
  if (!(day >= 1 && day <= days)) {
    throw new HindcastRefused({ code: 'hindcast-not-a-day', with: { option, value } });
  }
  return { month, day };
}

function gapLength(value: string): number {
  const days = /^\d{1,3}$/.test(value) ? Number(value) : 0;
  if (days < 1 || days > LONGEST_GAP) {
    throw new HindcastRefused({ code: 'hindcast-not-a-gap', with: { value } });
  }
  return days;
}
