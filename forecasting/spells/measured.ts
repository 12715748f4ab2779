import type { HarmLimit } from '../table.js';
import type { DayTime, EpochMillis } from '../units.js';
import type { Candidate } from './candidate.js';
import type { Place } from './places.js';
import { type Run, runsBeyond, suddenChanges } from './runs.js';
import type { PassedLimit, Severity, SpellKind } from './spell.js';
import { StageClock } from './stage-clock.js';
import { common, type Stretch } from './stretches.js';

const DAY = 86_400_000;

/** The limits that readings are held to; freezing is judged beside ice (frozen.ts), a cold start is advice. */
const JUDGED = {
  warm: { kind: 'too-warm', side: 'above' },
  cold: { kind: 'too-cold', side: 'below' },
} as const;

/** Everything measured that passed a limit of a lot's table while its eggs may have been in the limit's span. */
export function measuredSpells(all: readonly Place[], dayOffset: number): Candidate[] {
  return all.flatMap((place) =>
    place.lot.table.harm.flatMap((limit) => {
      if (limit.severity === 'advice') return [];
      return spanOf(place, limit, dayOffset).flatMap((stretch) => judged(place, limit, stretch, dayOffset));
    }),
  );
}

/** When a limit may hold for some eggs of the place. */
export function spanOf(place: Place, limit: HarmLimit, dayOffset: number): Stretch[] {
  const { lot } = place;
  if (lot.draws === null) return limit.fromProgress <= 0 ? [...place.when] : [];
  const clock = StageClock.of(lot.table, dayTime(lot.fertilised, dayOffset), lot.draws);
  const { from, to } = clock.span(limit.fromProgress, limit.toProgress);
  return common(place.when, [{ from: instant(from, dayOffset), to: instant(to, dayOffset) }]).filter(
    (stretch) => stretch.to > stretch.from,
  );
}

function judged(place: Place, limit: HarmLimit, stretch: Stretch, dayOffset: number): Candidate[] {
  const { record, water } = place;
  const asked = { limit: limit.limit, accuracy: record.accuracy, ...stretch };
  if (limit.kind === 'sudden-change') {
    return suddenChanges(water, asked).map(({ from, to, by }) =>
      candidate(place, limit, 'sudden-change', dayOffset, {
        from,
        to,
        peak: by,
        hours: (to - from) / 3_600_000,
        degreeHours: null,
      }),
    );
  }
  if (limit.kind !== 'warm' && limit.kind !== 'cold') return [];
  const { kind, side } = JUDGED[limit.kind];
  return runsBeyond(water, { ...asked, side })
    .filter((run) => longEnough(run, limit))
    .map((run) => candidate(place, limit, kind, dayOffset, run));
}

/** To the second: what has lasted its hours has passed the dose. */
export const longEnough = ({ hours }: Pick<Run, 'hours'>, limit: Pick<HarmLimit, 'hours'>): boolean =>
  hours >= limit.hours - 1 / 3600;

type Told = Pick<Candidate, 'from' | 'to' | 'peak' | 'hours' | 'degreeHours'>;

export function candidate(
  place: Place,
  limit: HarmLimit,
  kind: SpellKind,
  dayOffset: number,
  told: Told,
): Candidate {
  const { box, lot, record, own } = place;
  return {
    kind,
    station: record.station,
    box: box.box,
    lot: lot.lot,
    eggs: lot.eggs,
    severity: severityOf(limit),
    certainty: own ? 'measured' : 'estimated',
    origin: 'measured',
    chance: null,
    limit: passed(limit),
    stages: stagesIn(place, told, dayOffset),
    mortality: limit.mortality === undefined ? [] : [limit.mortality],
    sign: null,
    ...told,
  };
}

export function stagesIn({ lot }: Pick<Place, 'lot'>, { from, to }: Stretch, dayOffset: number) {
  if (lot.draws === null) return [];
  const clock = StageClock.of(lot.table, dayTime(lot.fertilised, dayOffset), lot.draws);
  return clock.stages(dayTime(from, dayOffset), dayTime(to, dayOffset));
}

export const severityOf = ({ severity }: HarmLimit): Severity => (severity === 'advice' ? 'watch' : severity);

export function passed({ kind, limit, hours, sources }: HarmLimit): PassedLimit {
  return { value: limit, unit: kind === 'sudden-change' ? 'celsius-per-hour' : 'celsius', hours, sources };
}

export const dayTime = (at: EpochMillis, dayOffset: number): DayTime => (at + dayOffset) / DAY;
export const instant = (moment: DayTime, dayOffset: number): EpochMillis => moment * DAY - dayOffset;
