import { readFileSync } from 'node:fs';
import type { HindcastReport, HindcastReportRow } from '../forecasting/hindcast/index.js';

/**
 * Tuned and held out: `node dist/bench/held-out.js SETTING=ROWS.json[,ROWS.json…] …`, each ROWS the output of
 * `underice hindcast FILE --rows --json` made with that setting. Every setting is judged on one part (networks of
 * 25 km, or every other winter), the best there is reported on the other part, and the other way round; the same for
 * a factor on the width of intervals, and for a factor from a network's own other winters.
 */
interface Judged extends HindcastReportRow {
  readonly net: string;
  readonly observedDays: number;
  readonly p50Days: number;
}

type Settings = ReadonlyMap<string, readonly Judged[]>;
type Part = (row: Judged) => boolean;

const PLAIN = {
  history: 'ensemble',
  'late-download': 'bestNeighbour',
  'under-ice': 'bestNeighbour',
} as const;
const CASES = ['history', 'late-download', 'under-ice'] as const;
/** A date that never comes is later than any (days). */
const NEVER = 400;
const FACTORS = Array.from({ length: 25 }, (_, i) => 0.7 + 0.025 * i);
/** So many winters of a network's own weigh as much as the pooled figure. */
const OWN_WEIGHS = [10, 30];

const settings: Settings = new Map(
  process.argv.slice(2).map((given) => {
    const [name = '', files = ''] = given.split('=');
    const rows = files.split(',').flatMap((file) => {
      const { rows }: HindcastReport = JSON.parse(readFileSync(file, 'utf8'));
      const source = file.split('/').at(-1) ?? file;
      return rows.flatMap((row): Judged[] => {
        const { observedDays, p50Days } = row;
        if (observedDays === null) return [];
        return [{ ...row, net: `${source} ${row.network}`, observedDays, p50Days: p50Days ?? NEVER }];
      });
    });
    return [name, rows] as const;
  }),
);
const base = [...settings.values()][0] ?? [];

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Our error as a ratio to the plain method's on the same winters; at every lead. */
function ratios(rows: readonly Judged[], of: keyof typeof PLAIN, part: Part): number[] {
  return leads.map((lead) => {
    const both = rows.flatMap((row) => {
      const plain = row.reference[PLAIN[of]];
      return row.case !== of || row.lead !== lead || plain === undefined || !part(row)
        ? []
        : [[Math.abs(row.p50Days - row.observedDays), Math.abs(plain - row.observedDays)] as const];
    });
    return mean(both.map(([own]) => own)) / mean(both.map(([, plain]) => plain));
  });
}

const leads = [...new Set(base.map(({ lead }) => lead))];

interface Interval {
  readonly low: number;
  readonly high: number;
}

function scaled({ p10Days, p50Days, p90Days }: Judged, factor: number): Interval {
  return {
    low: p50Days - factor * (p50Days - (p10Days ?? NEVER)),
    high: p50Days + factor * ((p90Days ?? NEVER) - p50Days),
  };
}

/** The interval score of an 80 % interval (Gneiting & Raftery 2007, J. Am. Stat. Assoc. 102:359-378: memory), days. */
function score({ low, high }: Interval, came: number): number {
  return high - low + (2 / 0.2) * (Math.max(0, low - came) + Math.max(0, came - high));
}

function intervals(rows: readonly Judged[], factor: (row: Judged) => number) {
  const made = rows.map((row) => ({ at: scaled(row, factor(row)), came: row.observedDays }));
  const held = made.filter(({ at, came }) => at.low <= came && came <= at.high).length;
  return { coverage: held / rows.length, score: mean(made.map(({ at, came }) => score(at, came))) };
}

/** The factor that held 80 % of a network's other winters, pulled to 1 as if so many winters said 1. */
function ownFactor(rows: readonly Judged[], weighs: number): (row: Judged) => number {
  const known = new Map<string, number>();
  return (row) => {
    const key = `${row.net} ${row.winter}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const others = rows.filter((one) => one.net === row.net && one.winter !== row.winter);
    const scores = others.map(neededFactor).sort((a, b) => a - b);
    const winters = new Set(others.map(({ winter }) => winter)).size;
    const at = scores[Math.min(scores.length - 1, Math.ceil(0.8 * (scores.length + 1)) - 1)];
    const own = at === undefined ? 1 : Math.min(3, Math.max(1 / 3, at));
    const factor = Math.exp((winters / (winters + weighs)) * Math.log(own));
    known.set(key, factor);
    return factor;
  };
}

function neededFactor(row: Judged): number {
  const { low, high } = scaled(row, 1);
  const off = row.observedDays - row.p50Days;
  return off >= 0 ? off / Math.max(0.05, high - row.p50Days) : -off / Math.max(0.05, row.p50Days - low);
}

/** Networks put by size into two parts as equal as can be, and every other winter. */
function splits(): { readonly name: string; readonly first: Part }[] {
  const sizes = new Map<string, number>();
  for (const { net } of base) sizes.set(net, (sizes.get(net) ?? 0) + 1);
  const first = new Set<string>();
  let [mine, theirs] = [0, 0];
  for (const [net, size] of [...sizes].sort((a, b) => b[1] - a[1])) {
    if (mine <= theirs) first.add(net);
    if (mine <= theirs) mine += size;
    else theirs += size;
  }
  return [
    { name: `networks (${first.size} and ${sizes.size - first.size})`, first: ({ net }) => first.has(net) },
    { name: 'winters (even and odd)', first: ({ winter }) => winter % 2 === 0 },
  ];
}

const shown = (values: readonly number[]) => values.map((value) => value.toFixed(2)).join(' ');

console.log(`leads ${leads.join(' ')}; settings ${[...settings.keys()].join(', ')}`);
for (const of of CASES) {
  for (const [name, rows] of settings) {
    const all = ratios(rows, of, () => true);
    if (all.every(Number.isFinite)) console.log(`${of}, ${name}, all: ${shown(all)}`);
  }
}
for (const { name, first } of splits()) {
  console.log(`\nsplit by ${name}`);
  for (const of of CASES) {
    for (const [label, tuning] of [
      ['first', first],
      ['second', (row: Judged) => !first(row)],
    ] as const) {
      const held: Part = (row) => !tuning(row);
      const tried = [...settings].filter(([, rows]) => rows.some((row) => row.case === of));
      const [best] = tried
        .map(([setting, rows]) => ({ setting, rows, error: mean(ratios(rows, of, tuning)) }))
        .sort((a, b) => a.error - b.error);
      if (best === undefined) continue;
      const [tuned, other] = [ratios(best.rows, of, tuning), ratios(best.rows, of, held)];
      console.log(
        `${of}, tuned on the ${label}: ${best.setting}; there ${shown(tuned)}; held out ${shown(other)}`,
      );
    }
    const lines = leads.map((lead) => {
      const rows = base.filter((row) => row.case === of && row.lead === lead);
      const part = (tuning: Part) => {
        const [one] = FACTORS.map((factor) => ({
          factor,
          error: intervals(rows.filter(tuning), () => factor).score,
        })).sort((a, b) => a.error - b.error);
        return intervals(
          rows.filter((row) => !tuning(row)),
          () => one?.factor ?? 1,
        );
      };
      const [a, b] = [part(first), part((row) => !first(row))];
      return `${lead} ${a.coverage.toFixed(2)}/${b.coverage.toFixed(2)}`;
    });
    console.log(`${of}, coverage of the part held out, a factor fitted on the other: ${lines.join('  ')}`);
  }
}
console.log(
  '\nintervals: coverage and interval score (days), as shipped and with a factor from a network’s own winters',
);
for (const of of CASES) {
  for (const lead of leads) {
    const rows = base.filter((row) => row.case === of && row.lead === lead);
    const said = ({ coverage, score }: { coverage: number; score: number }) =>
      `${coverage.toFixed(2)} ${score.toFixed(1)}`;
    const own = OWN_WEIGHS.map((weighs) => said(intervals(rows, ownFactor(rows, weighs))));
    console.log(`${of} ${lead}: ${said(intervals(rows, () => 1))}; own ${own.join('; ')}`);
  }
}
