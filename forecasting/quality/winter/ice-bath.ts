import type { Finding } from '../finding.js';
import type { Judged } from '../record.js';

/**
 * What the logger showed in melting ice before and after it lay in the water. It is taken off its readings already,
 * in a straight line between the two; where they differ by more than the stated accuracy, what lies between is
 * suspect: nobody knows when it drifted.
 */
export function iceBathBias(record: Judged): Finding[] {
  const { at, accuracy } = record;
  if (at.length === 0) return [];
  return record.deployments
    .flatMap(({ from, to, iceBath }): Finding[] => {
      if (iceBath === null) return [];
      const { before, after } = iceBath;
      const drift = before === null || after === null ? null : after - before;
      return [
        {
          kind: 'ice-bath-bias',
          from: Math.max(from, at[0]),
          to: Math.min(to ?? Number.POSITIVE_INFINITY, at[at.length - 1]),
          flag: drift !== null && Math.abs(drift) > accuracy ? 3 : 1,
          figures: {
            ...(before === null ? {} : { before }),
            ...(after === null ? {} : { after }),
            ...(drift === null ? {} : { drift }),
            accuracy,
          },
          offer: null,
        },
      ];
    })
    .filter(({ from, to }) => from <= to);
}
