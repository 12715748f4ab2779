import { type Deployment, epochMillis } from '../season/index.js';
import { correctionAt } from '../store/corrections.js';
import type { Check } from '../store/index.js';

type Correction = Deployment['corrections'][number];

/**
 * What is added to a deployment's instants or readings, as checks with straight lines between them: `checked` (ice
 * bath, clock beside a phone) together with the corrections a person accepted.
 */
export function withCorrections(
  checked: readonly Check[],
  corrections: readonly Correction[],
  quantity: Correction['quantity'],
): Check[] {
  const accepted = corrections.filter((one) => one.quantity === quantity).map((one) => inStoredUnits(one));
  if (accepted.length === 0) return [...checked];
  const points = [
    ...checked,
    ...accepted.filter(({ course }) => course === 'check').map(({ from, add }) => ({ at: from, add })),
  ].sort((a, b) => a.at - b.at);
  const moved = accepted.filter(({ course }) => course !== 'check');
  const breaks = [
    ...points.map(({ at }) => at),
    ...moved.flatMap(({ course, from, to }) => (course === 'step' ? [from - 1, from] : [from, to])),
  ];
  return [...new Set(breaks)]
    .sort((a, b) => a - b)
    .map((at) => ({
      at,
      add: correctionAt(points, at) + moved.reduce((sum, one) => sum + added(one, at), 0),
    }));
}

interface Accepted {
  readonly course: Correction['course'];
  readonly from: number;
  readonly to: number;
  readonly add: number;
}

/** Clocks are kept in seconds, as people read them; the store adds milliseconds. */
function inStoredUnits({ course, from, to, add, quantity }: Correction): Accepted {
  return {
    course,
    from: epochMillis(from),
    to: epochMillis(to),
    add: quantity === 'clock' ? add * 1000 : add,
  };
}

function added({ course, from, to, add }: Accepted, at: number): number {
  if (at < from) return 0;
  return course === 'step' || at >= to ? add : (add * (at - from)) / (to - from);
}
