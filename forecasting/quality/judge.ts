import type { Finding } from './finding.js';
import { DAY, HOUR } from './hours.js';
import { departsFromNeighbours } from './neighbour.js';
import { qartod } from './qartod/judge.js';
import { type Judged, type RecordToJudge, seesDays, worked } from './record.js';
import { battery } from './winter/battery.js';
import { clock } from './winter/clock.js';
import { frozenIn } from './winter/frozen.js';
import { iceBathBias } from './winter/ice-bath.js';
import { inAir } from './winter/in-air.js';
import { fullBeforeLifting } from './winter/memory.js';
import { outsideDeployment } from './winter/outside.js';
import { plateauBias } from './winter/plateau.js';
import { sheltered } from './winter/sheltered.js';

/** What explains a stretch as a whole: lesser findings inside it say nothing more. */
const WHOLE = ['outside-deployment', 'in-air', 'in-snow'];
/** What is said of a logger, not of the readings in a stretch: never covered. */
const OF_THE_LOGGER = ['memory', 'ice-bath-bias', 'plateau-bias', 'clock', 'battery'];

/**
 * Everything the quality checks say of one record, by time. Pure: the same record and neighbours give the same
 * findings; no reading is changed or left away.
 */
export function judgeStation(record: RecordToJudge): Finding[] {
  if (record.at.length === 0) return fullBeforeLifting(record.deployments);
  const judged = worked(record);
  const water = judged.kind !== 'air';
  const found = [
    ...qartod(judged),
    ...(judged.quantity === 'temperature' ? ofTemperature(judged, water) : []),
  ];
  return withoutCovered(found).sort((a, b) => a.from - b.from || a.to - b.to);
}

function ofTemperature(judged: Judged, water: boolean): Finding[] {
  const closely = seesDays(judged);
  const air = water && judged.kind !== 'tank' && closely ? inAir(judged) : [];
  return [
    ...air,
    ...(water && judged.kind !== 'tank' && closely
      ? [...frozenIn(judged), ...sheltered(judged), ...departsFromNeighbours(besides(judged, air))]
      : []),
    ...battery(judged),
    ...clock(judged),
    ...outsideDeployment(judged),
    ...iceBathBias(judged),
    ...(closely ? plateauBias(judged) : []),
    ...fullBeforeLifting(judged.deployments),
  ];
}

/** The record without the days of these stretches, and the hours a day around: what they explain is not asked twice. */
function besides(judged: Judged, found: readonly Finding[]): Judged {
  if (found.length === 0) return judged;
  const { hours, days } = judged;
  const [hourly, daily] = [Float64Array.from(hours.mean), Float64Array.from(days.mean)];
  for (const { from, to } of found) {
    hourly.fill(Number.NaN, ...between(from - DAY, to + DAY, HOUR, hours.first));
    daily.fill(Number.NaN, ...between(from - DAY, to + DAY, DAY, days.firstDay));
  }
  return { ...judged, hours: { ...hours, mean: hourly }, days: { ...days, mean: daily } };
}

/** Places of a column from `first`, in steps of `step`, that a stretch touches. */
function between(from: number, to: number, step: number, first: number): [number, number] {
  const place = (at: number) => Math.max(0, Math.floor(at / step) - first);
  return [place(from), place(to) + 1];
}

/** Leaves away what lies inside a stretch that a graver finding explains as a whole. */
function withoutCovered(found: readonly Finding[]): Finding[] {
  const whole = found.filter(({ kind }) => WHOLE.includes(kind));
  return found.filter((one) => {
    if (OF_THE_LOGGER.includes(one.kind)) return true;
    const mine = WHOLE.indexOf(one.kind);
    return !whole.some(
      (over) =>
        over !== one &&
        over.flag >= one.flag &&
        (mine < 0 || WHOLE.indexOf(over.kind) < mine) &&
        share(one, over) >= 0.5,
    );
  });
}

/** A step into or out of a stretch lies this close to it, ms. */
const EDGE = 2 * 3_600_000;

/** Share of a finding that lies in another, its edges included. */
function share(one: Finding, over: Finding): number {
  const inside = Math.min(one.to, over.to + EDGE) - Math.max(one.from, over.from - EDGE);
  if (inside < 0) return 0;
  return one.to - one.from <= EDGE ? 1 : inside / (one.to - one.from);
}
