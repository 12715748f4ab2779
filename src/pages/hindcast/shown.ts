import type { HindcastCase, HindcastReport } from '../../../forecasting/hindcast/index.js';

/** What of a report the page shows. */
export interface HindcastShown {
  readonly case: HindcastCase;
  readonly lead: string;
  readonly station: string;
  readonly stage: string;
  readonly fertilised: string;
}

const cases: readonly HindcastCase[] = ['under-ice', 'late-download', 'history'];
/** The real case first: nothing of the winter is known but what stations that report have said by March. */
const USUAL_LEAD = '03-01';

/** The asked case, lead and station where the report has them; else the usual ones. */
export function shownOf(report: HindcastReport, asked: (name: string) => string | undefined): HindcastShown {
  const { rows, results, fertilised } = report;
  const pick = (name: string, there: readonly string[], usual: string) => {
    const given = asked(name) ?? '';
    return there.includes(given) ? given : there.includes(usual) ? usual : (there[0] ?? '');
  };
  const winters = new Map<string, number>();
  for (const { station } of rows) winters.set(station, (winters.get(station) ?? 0) + 1);
  const [most] = [...winters].sort((a, b) => b[1] - a[1]).map(([station]) => station);
  return {
    case: cases.find((of) => of === asked('case')) ?? 'under-ice',
    lead: pick('lead', [...new Set(results.map(({ lead }) => lead))], USUAL_LEAD),
    station: pick('station', [...winters.keys()], most ?? ''),
    stage: results[0]?.stage ?? 'hatch',
    fertilised,
  };
}
