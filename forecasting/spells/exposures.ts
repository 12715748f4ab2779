import type { Finding } from '../quality/finding.js';
import type { HarmLimit } from '../table.js';
import type { Celsius } from '../units.js';
import type { Candidate } from './candidate.js';
import { EXPOSURE_DOSES, type ExposureDose } from './exposure-doses.js';
import { frozenRuns, isIce, lyingWith } from './frozen.js';
import { inWaterOrIce } from './in-water.js';
import type { BoxAtRisk, LotAtRisk, SpellInput, WaterRecord } from './input.js';
import { dayTime, instant, longEnough } from './measured.js';
import type { ExposureSign } from './spell.js';
import { type StageChance, StageClock } from './stage-clock.js';
import { common, meet, type Stretch } from './stretches.js';

const HOUR = 3_600_000;
/** Signs of one logger less than this apart are one exposure: one thing that happened, one visit to settle it (ours). */
const APART = 72 * HOUR;
/** What is seen for less than this is a wave, a leaf, a hand (ours). */
const LEAST = HOUR;

interface Sign extends Stretch {
  readonly sign: ExposureSign;
}

const TOLD: Partial<Record<Finding['kind'], ExposureSign>> = {
  'in-air': 'in-air',
  'in-snow': 'in-snow',
  'frozen-in': 'frozen-in',
};

/**
 * A logger in a box, tied to it or in the gravel beside it that lay in air, snow or ice says that the box may have been
 * out of the water or frozen in: one possible exposure, until a person settles it. Anywhere else it says nothing.
 */
export function exposures(input: SpellInput): Candidate[] {
  const air = input.records.find(({ kind }) => kind === 'air') ?? null;
  return input.boxes.flatMap((box) =>
    box.stations.flatMap((station) => {
      const record = input.records.find((one) => one.station === station);
      if (record === undefined || record.kind === 'air') return [];
      const signs = signsOf(record, box, air).filter(
        (sign) => lyingWith(record, box.box, sign) === 'with-eggs',
      );
      return box.lots.flatMap((lot) => ofLot(box, lot, record, signs, input));
    }),
  );
}

function signsOf(record: WaterRecord, box: BoxAtRisk, air: WaterRecord | null): Sign[] {
  const found = record.findings.flatMap((finding): Sign[] => {
    const sign = TOLD[finding.kind];
    const { from, to, flag } = finding;
    return sign === undefined || flag < 3 || isPlateau(finding) ? [] : [{ sign, from, to }];
  });
  const water = inWaterOrIce(record);
  const all = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  const below = (limit: HarmLimit, sign: (ice: boolean) => ExposureSign | null) =>
    frozenRuns(water, record, limit, all)
      .filter((run) => longEnough(run, limit))
      .flatMap((run): Sign[] => {
        const told = sign(isIce(water, run, air));
        return told === null ? [] : [{ sign: told, from: run.from, to: run.to }];
      });
  const limits = box.lots.flatMap(({ table }) => table.harm.filter(({ kind }) => kind === 'freezing'));
  const once = [...new Map(limits.map((one) => [`${one.limit} ${one.severity}`, one])).values()];
  const own = once.flatMap((limit) =>
    limit.severity === 'advice'
      ? below(limit, () => 'just-below-zero')
      : below(limit, (ice) => (ice ? null : 'not-damped')),
  );
  return [...found, ...own].filter(({ from, to }) => to - from >= LEAST);
}

/** Water at 0.0 ± 0.2 °C is a normal winter, however far from its logger's own zero it reads. */
const PLATEAU: Celsius = -0.2;
const isPlateau = ({ kind, figures: { level } }: Finding) =>
  kind === 'frozen-in' && level !== undefined && level >= PLATEAU;

/** Signs that belong together, told by the first that the checks of quality found, else by the first. */
function together(signs: readonly Sign[]): (Sign & { readonly hours: number })[] {
  const all: { sign: ExposureSign; from: number; to: number; parts: Stretch[] }[] = [];
  for (const { sign, from, to } of [...signs].sort((a, b) => a.from - b.from)) {
    const last = all.at(-1);
    if (last === undefined || from > last.to + APART) {
      all.push({ sign, from, to, parts: [{ from, to }] });
      continue;
    }
    last.to = Math.max(last.to, to);
    last.parts.push({ from, to });
    if (last.sign === 'just-below-zero') last.sign = sign;
  }
  return all.map(({ sign, from, to, parts }) => ({ sign, from, to, hours: lasting(parts) }));
}

function lasting(parts: readonly Stretch[]): number {
  let hours = 0;
  let until = Number.NEGATIVE_INFINITY;
  for (const { from, to } of [...parts].sort((a, b) => a.from - b.from)) {
    hours += Math.max(0, to - Math.max(from, until)) / HOUR;
    until = Math.max(until, to);
  }
  return hours;
}

function ofLot(
  box: BoxAtRisk,
  lot: LotAtRisk,
  record: WaterRecord,
  signs: readonly Sign[],
  { now, dayOffset }: SpellInput,
): Candidate[] {
  const there = [
    {
      from: Math.max(lot.planted, lot.fertilised),
      to: Math.min(now, box.lifted ?? Number.POSITIVE_INFINITY),
    },
  ];
  const inTime = signs.flatMap((sign) =>
    common([sign], there).map((part): Sign => ({ ...part, sign: sign.sign })),
  );
  return together(inTime).flatMap((one) => {
    const clock =
      lot.draws === null ? null : StageClock.of(lot.table, dayTime(lot.fertilised, dayOffset), lot.draws);
    const stages: readonly StageChance[] =
      clock === null ? [] : clock.stages(dayTime(one.from, dayOffset), dayTime(one.to, dayOffset));
    const dose = doseOf(one, clock, dayOffset);
    if (dose === null) return [];
    return [
      {
        kind: 'exposure',
        station: record.station,
        box: box.box,
        lot: lot.lot,
        eggs: lot.eggs,
        severity: dose.severity,
        certainty: 'possible',
        origin: 'none',
        from: one.from,
        to: one.to,
        hours: one.hours,
        degreeHours: null,
        peak: null,
        chance: null,
        limit: { value: dose.hours, unit: 'hours', hours: dose.hours, sources: dose.sources },
        stages,
        mortality: dose.mortality,
        sign: one.sign,
      },
    ];
  });
}

/**
 * The gravest dose that the exposure reached for a stage the eggs may have been in; before it reached any, a watch of
 * what its stage bears. Null once all eggs are out.
 */
function doseOf(
  exposure: Stretch & { readonly hours: number },
  clock: StageClock | null,
  dayOffset: number,
): ExposureDose | null {
  const holding = EXPOSURE_DOSES.filter(({ fromProgress, toProgress }) => {
    if (clock === null) return fromProgress === 0;
    const span = clock.span(fromProgress, toProgress);
    const inSpan = { from: instant(span.from, dayOffset), to: instant(span.to, dayOffset) };
    return inSpan.from < inSpan.to && meet(exposure, inSpan);
  });
  const last = holding.at(-1);
  if (last === undefined) return null;
  const reached = holding.filter(({ hours }) => exposure.hours >= hours - 1 / 3600);
  return (
    reached.findLast(({ severity }) => severity === 'lethal') ??
    reached.at(-1) ?? { ...last, severity: 'watch' }
  );
}
