import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { ClosingWords } from './words.js';

type Refused = Pick<
  ClosingWords,
  | 'close-twice'
  | 'close-boxes-out'
  | 'close-no-tally'
  | 'close-no-eggs'
  | 'close-unknown'
  | 'close-moved'
  | 'next-not-closed'
  | 'report-unwritable'
>;

/** A season that cannot be closed, or that is not there to report on. */
export class ReportRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<Refused>) {
    super(remark.code);
    this.name = 'ReportRefused';
  }
}

/** @throws ReportRefused where the season was closed before */
export function refuseClosed(
  closed: readonly { readonly season: string; readonly by: string; readonly at: number }[],
  season: string,
): void {
  const before = closed.find((one) => one.season === season);
  if (before === undefined) return;
  const day = new Date(before.at).toISOString().slice(0, 10);
  throw new ReportRefused({ code: 'close-twice', with: { season, by: before.by, day } });
}
