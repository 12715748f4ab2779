import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { HindcastReport } from '../../forecasting/hindcast/index.js';
import { json, scratchFolder, underice } from './terminal.js';

const scratch = scratchFolder();
const DAY = 86_400_000;
const HEAD = 'station,latitude,longitude,date,water_c,air_c';

/** Six invented years of two brooks, the second following the first; a sine, a plateau at 0, winters that differ. */
function lines(): string[] {
  const rows: string[] = [];
  const first = Date.parse('2016-07-01T00:00Z') / DAY;
  for (let day = first; day < first + 6 * 365 + 180; day++) {
    const year = new Date(day * DAY).getUTCFullYear();
    const base =
      6 - 8.5 * Math.cos((2 * Math.PI * ((day % 365.25) - 32)) / 365.25) + 0.8 * Math.sin(3 * year);
    const brook = Math.max(0, base + Math.sin(day / 6) + 0.3 * Math.sin(day * 1.7));
    const other = Math.max(0, 0.9 * base + 0.5 + Math.sin(day / 6) + 0.3 * Math.sin(day * 2.3));
    const date = new Date(day * DAY).toISOString().slice(0, 10);
    rows.push(`brook,47.5,-66.1,${date},${brook.toFixed(2)},${(base - 3).toFixed(2)}`);
    rows.push(`other,47.52,-66.1,${date},${other.toFixed(2)},`);
  }
  return rows;
}

function file(name: string, text: string | Uint8Array): string {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
}

const days = lines();
const daily = file('daily.csv', [HEAD, ...days].join('\n'));

describe('underice hindcast FILE', () => {
  it('answers with the figures of the contract, each winter among them', async () => {
    const report = await json<HindcastReport>([
      'hindcast',
      daily,
      '--case',
      'late-download',
      '--lead',
      '12-15',
      '--lead',
      '03-01',
      '--rows',
    ]);
    expect(report).toMatchObject({ table: 'atlantic-salmon', fertilised: '11-01' });
    expect(report.results.map((of) => [of.case, of.lead, of.stage])).toEqual([
      ['late-download', '12-15', 'hatch'],
      ['late-download', '03-01', 'hatch'],
    ]);
    for (const { n, mae, reference } of report.results) {
      expect(n).toBe(12);
      expect(mae).toBeLessThan(5);
      expect(reference.ensemble?.n).toBe(n);
    }
    expect(report.rows).toHaveLength(24);
    for (const row of report.rows) {
      expect([2016, 2017, 2018, 2019, 2020, 2021]).toContain(row.winter);
      const fertilised = Date.parse(`${row.winter}-11-01T00:00Z`) / DAY;
      const iso = (of: number | null) =>
        of === null ? null : new Date(Math.floor(fertilised + of) * DAY).toISOString().slice(0, 10);
      expect(row.observed).toBe(iso(row.observedDays));
      expect([row.p10, row.p50, row.p90]).toEqual([row.p10Days, row.p50Days, row.p90Days].map(iso));
      expect(row.p10Days ?? Number.NaN).toBeLessThanOrEqual(row.p50Days ?? Number.NaN);
    }
    const errors = report.rows
      .filter((row) => row.lead === '12-15')
      .map((row) => Math.abs((row.p50Days ?? Number.NaN) - (row.observedDays ?? Number.NaN)));
    expect(report.results[0].mae).toBeCloseTo(errors.reduce((sum, e) => sum + e, 0) / errors.length, 9);
  });

  it('fills gaps of the lengths asked for, and says the same of a packed file in another order', async () => {
    const question = ['--case', 'gaps', '--gap', '10'];
    const plain = await json<HindcastReport>(['hindcast', daily, ...question]);
    expect(plain.results).toEqual([]);
    expect(plain.gaps.map((of) => of.days)).toEqual([10]);
    expect(plain.gaps[0].rmse).toBeLessThan(plain.gaps[0].reference.line.rmse ?? 0);
    const packed = file('daily.csv.gz', gzipSync([HEAD, ...days.toReversed()].join('\r\n')));
    expect(await json<HindcastReport>(['hindcast', packed, ...question])).toEqual(plain);
  });

  it('needs no coordinates and no air', async () => {
    const bare = days.map((line) => line.replace(/,4[^,]*,-66.1,/, ',,,').replace(/,[^,]*$/, ','));
    const report = await json<HindcastReport>([
      'hindcast',
      file('bare.csv', [HEAD, ...bare].join('\n')),
      '--case',
      'under-ice',
      '--lead',
      '03-01',
    ]);
    expect(report.results[0].n).toBe(12);
    expect(report.results[0].reference.bestNeighbour?.n).toBe(12);
  });

  it('reads to a person in both languages', async () => {
    const ask = ['hindcast', daily, '--case', 'history', '--lead', '12-15'];
    const english = await underice(ask);
    expect(english.status).toBe(0);
    expect(english.out).toContain('12-15');
    expect(english.out).toContain('should be near 80%');
    // Every winter of the two brooks lies long at 0 °C: the table is not told twice.
    expect(english.out).toContain('Every one of these winters is icy');
    expect(english.out).not.toContain('Icy winters alone');
    for (const said of [
      'Stage "hatch", table atlantic-salmon, eggs fertilised on 11-01.',
      'CRPS',
      'Past winters',
      'Last week goes on',
      'With the winters before each alone',
      'Mean error by station',
    ])
      expect(english.out).toContain(said);
    const french = await underice([...ask, '--lang', 'fr']);
    expect(french.out).toContain('Hivers passés');
    const under = await underice(['hindcast', daily, '--case', 'under-ice', '--lead', '05-01']);
    for (const said of ['Best neighbour', 'Best, 1 km or more', 'the stage had come', 'was still to come'])
      expect(under.out).toContain(said);
  });
});

describe('what a hindcast refuses, in a sentence and with exit 2', () => {
  const one = days[0];
  const refusals: [string, string, RegExp][] = [
    ['another file', 'a,b\n1,2', /lacks station, date(,)? and water_c/],
    ['nothing', '', /lacks station/],
    ['a date that is none', `${HEAD}\nbrook,,,2021-02-30,1,`, /Line 2 has "2021-02-30" for date/],
    ['a value that is none', `${HEAD}\nbrook,,,2021-02-20,"4,5",`, /Line 2 has "4,5" for water_c/],
    ['water of 300 °C', `${HEAD}\nbrook,,,2021-02-20,300,`, /Line 2/],
    [
      'two values for a day',
      [HEAD, one, one.replace(/,[^,]*,([^,]*)$/, ',9.99,$1')].join('\n'),
      /Line 3 gives brook/,
    ],
    ['two places under one name', [HEAD, one, one.replace('47.5', '48.5')].join('\n'), /Line 3 puts brook/],
    ['air alone', `${HEAD}\nbrook,,,2021-02-20,,3`, /No day in this file/],
  ];
  it.each(refusals)('%s', async (name, text, sentence) => {
    const { status, err } = await underice(['hindcast', file(`${name.replaceAll(' ', '-')}.csv`, text)]);
    expect(status).toBe(2);
    expect(err).toMatch(sentence);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  const options: [string[], RegExp][] = [
    [['--lead', '02-30'], /--lead was given "02-30"/],
    [['--fertilised', 'november'], /--fertilised was given "november"/],
    [['--gap', '0'], /--gap was given "0"/],
    [['--stage', 'smolt'], /has no stage "smolt"/],
    [['--table', 'carp'], /no development table "carp"/],
    [['--case', 'guess'], /--case was given "guess"/],
  ];
  it.each(options)('%j', async (given, sentence) => {
    const { status, err } = await underice(['hindcast', daily, ...given]);
    expect(status).toBe(2);
    expect(err).toMatch(sentence);
  });

  it('one winter alone is no refusal: it is said', async () => {
    const winter = days.filter((line) => /,2019-(0[89]|1)|,2020-0[1-8]/.test(line));
    const { status, out } = await underice(['hindcast', file('one.csv', [HEAD, ...winter].join('\n'))]);
    expect(status).toBe(0);
    expect(out).toContain('one whole winter only (2019)');
  });
});
