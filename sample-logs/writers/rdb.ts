import { type Kept, utf8, written } from '../download.js';
import { shown } from './clocks.js';

/**
 * Tab-delimited agency exchange: comment block, header, a row of column widths, rows in standard time. The shape as
 * the format's documentation describes it, the comments our own.
 */
export function rdb(site: string, kept: readonly Kept[]): Uint8Array {
  const comments = [
    '# Invented record, made for the sample season: no such station exists.',
    '#',
    '# Data for the following 1 site(s) are contained in this file',
    `#    BRML ${site} BRUMELORE RIVER AT THE WEIR`,
    '#',
    '#        TS       parameter     Description',
    '#        9000001       00010     Temperature, water, degrees Celsius',
    '#',
    '#  P  Provisional value',
    '#',
  ];
  const header = ['agency_cd', 'site_no', 'datetime', 'tz_cd', '9000001_00010', '9000001_00010_cd'];
  const widths = ['5s', '15s', '20d', '6s', '14n', '10s'];
  const rows = kept.map(({ at, value }) => {
    const clock = shown(at, 'UTC-4', 'yyyy-MM-dd HH:mm');
    return ['BRML', site, clock, 'AST', written(value, 1), 'P'];
  });
  return utf8(
    [...comments, ...[header, widths, ...rows].map((cells) => cells.join('\t'))]
      .map((l) => `${l}\n`)
      .join(''),
  );
}
