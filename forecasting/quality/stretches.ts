import type { CheckKind, Finding, QualityFlag } from './finding.js';

/** Flagged readings closer to each other than this are one finding, ms (ours). */
const JOINED = 6 * 3_600_000;

/** Turns a test's flags into findings: runs of the same kind, the gravest flag in each, with its figures. */
export function stretches(
  kind: CheckKind,
  at: Float64Array,
  flag: Uint8Array,
  figures: (first: number, last: number, flag: QualityFlag) => Readonly<Record<string, number>>,
  joined = JOINED,
): Finding[] {
  const found: Finding[] = [];
  let first = -1;
  let last = -1;
  let gravest: QualityFlag = 3;
  const close = () => {
    if (first < 0) return;
    found.push({
      kind,
      from: at[first],
      to: at[last],
      flag: gravest,
      figures: figures(first, last, gravest),
      offer: null,
    });
    first = -1;
  };
  for (let i = 0; i < flag.length; i++) {
    const one = flag[i];
    if (one !== 3 && one !== 4) continue;
    if (first >= 0 && (at[i] - at[last] > joined || one !== gravest)) close();
    if (first < 0) {
      first = i;
      gravest = one;
    }
    last = i;
  }
  close();
  return found;
}
