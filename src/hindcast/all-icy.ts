import type { HindcastReport } from '../../forecasting/hindcast/index.js';

/** Whether every winter of a report is icy, so that the figures of icy winters alone would say it all again. */
export function allIcy({ results, gaps, icy }: HindcastReport): boolean {
  const winters = [...results, ...gaps].reduce((sum, { n }) => sum + n, 0);
  const notReached = (of: HindcastReport['results']) => of.reduce((sum, one) => sum + one.notReached, 0);
  return (
    winters > 0 &&
    winters === [...icy.results, ...icy.gaps].reduce((sum, { n }) => sum + n, 0) &&
    notReached(results) === notReached(icy.results)
  );
}
