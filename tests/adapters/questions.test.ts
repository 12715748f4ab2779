import { describe, expect, it } from 'vitest';
import { codes, pairs, refusal, take } from './reading.js';

const utc = { zone: 'UTC' };
const hourly = (dates: readonly string[], header = 'date,temp (C)') =>
  `${header}\n${dates.map((date, i) => `${date},${(3 + (i % 100) / 100).toFixed(2)}`).join('\n')}\n`;

describe('the order of dates', () => {
  it('is asked for where nothing settles it, naming both readings of the first line', async () => {
    const refused = await refusal(hourly(['03/04/2026 10:00', '03/04/2026 11:00']), utc);
    expect(refused.remark).toEqual({ code: 'ambiguous-dates', with: { text: '03/04/2026 10:00' } });
    expect(refused.question).toEqual({
      code: 'which-date-order',
      with: {
        text: '03/04/2026 10:00',
        readings: [
          { order: 'dmy', iso: '2026-04-03 10:00' },
          { order: 'mdy', iso: '2026-03-04 10:00' },
        ],
      },
    });
    expect(refused.exit).toBe(2);
  });

  it('names three readings where the year has two digits', async () => {
    const refused = await refusal(hourly(['03/04/05 10:00']), utc);
    expect(refused.question?.with).toMatchObject({
      readings: [{ iso: '2005-04-03 10:00' }, { iso: '2005-03-04 10:00' }, { iso: '2003-04-05 10:00' }],
    });
  });

  it('is the person’s where they answer', async () => {
    const { taken, report } = await take(hourly(['03/04/2026 10:00', '03/04/2026 11:00']), {
      ...utc,
      dateOrder: 'mdy',
    });
    expect(pairs(taken)[0][0]).toBe('2026-03-04T10:00:00Z');
    expect(report.understood.dateOrder).toBe('mdy');
  });

  it('is the file’s where a value above 12 settles it, whatever was answered', async () => {
    const { taken, report } = await take(hourly(['13/04/2026 10:00', '13/04/2026 11:00']), {
      ...utc,
      dateOrder: 'mdy',
    });
    expect(pairs(taken)[0][0]).toBe('2026-04-13T10:00:00Z');
    expect(codes(report)).toContain('date-order-asked-not-used');
  });

  it('is settled by steps across midnight', async () => {
    const day = await take(
      hourly(['03/04/2026 22:00', '03/04/2026 23:00', '04/04/2026 00:00', '04/04/2026 01:00']),
      utc,
    );
    expect(day.report.understood.dateOrder).toBe('dmy');
    const month = await take(
      hourly(['03/04/2026 22:00', '03/04/2026 23:00', '03/05/2026 00:00', '03/05/2026 01:00']),
      utc,
    );
    expect(month.report.understood.dateOrder).toBe('mdy');
    expect(pairs(month.taken)[2][0]).toBe('2026-03-05T00:00:00Z');
  });

  it('is the one a header states', async () => {
    const { report } = await take(
      hourly(['03/04/2026 10:00', '03/04/2026 11:00'], 'Date (jj/mm/aaaa hh:mm),temp (C)'),
      utc,
    );
    expect(report.understood.dateOrder).toBe('dmy');
  });

  it('is asked of the whole file where the head says nothing', async () => {
    // One reading every 5 s: the first day alone is longer than the part that is looked at first.
    const lines = Array.from({ length: 17_281 }, (_, i) => {
      const at = new Date(Date.UTC(2026, 3, 3) + i * 5000).toISOString();
      return `${at.slice(8, 10)}/${at.slice(5, 7)}/${at.slice(0, 4)} ${at.slice(11, 19)}`;
    });
    const { report, taken, restarts } = await take(hourly(lines), utc);
    expect(report.understood.dateOrder).toBe('dmy');
    expect(restarts).toBe(0);
    expect(taken).toHaveLength(lines.length);
    expect(new Date(taken[17_280].at).toISOString()).toBe('2026-04-04T00:00:00.000Z');
  });

  it('is overturned, and the file read again, where a later row cannot be read so', async () => {
    // Monthly readings look daily month-first; the thirteenth of April comes after the head.
    const early = Array.from({ length: 11_000 }, (_, i) => {
      const at = new Date(Date.UTC(2026, 0, 1) + i * 60_000).toISOString();
      return `${at.slice(8, 10)}/${at.slice(5, 7)}/${at.slice(0, 4)} ${at.slice(11, 16)}`;
    });
    const late = Array.from({ length: 60 }, (_, i) => `13/04/2026 10:${String(i).padStart(2, '0')}`);
    const { report, taken, restarts } = await take(hourly([...early, ...late]), { ...utc, dateOrder: 'mdy' });
    expect(restarts).toBeLessThanOrEqual(1);
    expect(report.understood.dateOrder).toBe('dmy');
    expect(report.unusable.count).toBe(0);
    expect(taken).toHaveLength(11_060);
    expect(new Date(taken[0].at).toISOString()).toBe('2026-01-01T00:00:00.000Z');
  });
});

describe('the temperature column', () => {
  const two = 'time,Temp 1 (°C),Temp 2 (°C)\n2026-01-15 10:00,3.2,7.1\n2026-01-15 11:00,3.1,7.2\n';

  it('is asked for where two cannot be told apart', async () => {
    const refused = await refusal(two, utc);
    expect(refused.remark.code).toBe('several-columns');
    expect(refused.question).toEqual({
      code: 'which-column',
      with: { columns: ['Temp 1 (°C)', 'Temp 2 (°C)'] },
    });
  });

  it.each(['Temp 2 (°C)', 'temp 2', '#3', '3'])('is the one named %s', async (column) => {
    const { taken, report } = await take(two, { ...utc, column });
    expect(taken.map(({ value }) => value)).toEqual([7.1, 7.2]);
    expect(report.understood.valueColumn).toBe('Temp 2 (°C)');
  });

  it('that is not in the file is refused with those that are', async () => {
    const refused = await refusal(two, { ...utc, column: 'salinity' });
    expect(refused.remark).toMatchObject({ code: 'unknown-column', with: { asked: 'salinity' } });
  });

  it('among unexplained numbers is asked for', async () => {
    const refused = await refusal('2026-01-15 10:00,3.2,7.1\n2026-01-15 11:00,3.1,7.2\n', utc);
    expect(refused.remark.code).toBe('unexplained-columns');
    expect(refused.question).toEqual({ code: 'which-column', with: { columns: ['#2', '#3'] } });
  });

  it('of °C goes before the same in °F', async () => {
    const { taken } = await take(
      'time,Temp (°F),Temp (°C)\n2026-01-15 10:00,37.8,3.2\n2026-01-15 11:00,37.6,3.1\n',
      utc,
    );
    expect(taken.map(({ value }) => value)).toEqual([3.2, 3.1]);
  });

  it('of means goes before those of extremes, and extremes are never passed off as means', async () => {
    const file = 'date,Max Temp (°C),Min Temp (°C),Mean Temp (°C)\n2026-01-15,4,2,3\n2026-01-16,5,3,4\n';
    const means = await take(file, utc);
    expect(means.taken.map(({ value }) => value)).toEqual([3, 4]);
    expect(means.report.series[0].span).toBe('day');
    const highest = await take(file, { ...utc, column: 'Max Temp (°C)' });
    expect(codes(highest.report)).toContain('extremes-not-means');
  });

  it('that nothing says is a temperature is not taken', async () => {
    const refused = await refusal('time,foo\n2026-01-15 10:00,3.2\n2026-01-15 11:00,3.1\n', utc);
    expect(refused.remark.code).toBe('no-temperature-column');
  });
});

describe('the unit', () => {
  const bare = (values: readonly number[]) =>
    `time,temp\n${values.map((v, i) => `2026-01-15 1${i}:00,${v}`).join('\n')}\n`;

  it('is assumed °C where the numbers allow nothing else, and said', async () => {
    const { report } = await take(bare([0.1, 3.2, 8.4]), utc);
    expect(report.assumed).toContainEqual({
      code: 'unit-assumed',
      with: { unit: '°C', smallest: 0.1, largest: 8.4 },
    });
  });

  it.each([[[32.1, 33, 34.2]], [[55, 60]], [[274.1, 275]]])('is asked for at %j', async (values) => {
    const refused = await refusal(bare(values), utc);
    expect(refused.remark.code).toBe('no-unit');
    expect(refused.question?.code).toBe('which-unit');
  });

  it('is the person’s where the file states none, the file’s where it does', async () => {
    expect((await take(bare([32, 50]), { ...utc, unit: 'F' })).taken.map(({ value }) => value)).toEqual([
      0, 10,
    ]);
    const stated = await take('time,temp (°C)\n2026-01-15 10:00,3.2\n2026-01-15 11:00,3.1\n', {
      ...utc,
      unit: 'F',
    });
    expect(stated.taken[0].value).toBe(3.2);
    expect(codes(stated.report)).toContain('unit-asked-not-used');
  });

  it('may change from row to row where each states it', async () => {
    const { taken } = await take(
      'time,Unit,Value\n2026-01-15 10:00,C,3.5\n2026-01-15 11:00,°F,41\n2026-01-15 12:00,K,276.15\n2026-01-15 13:00,C,4\n',
      utc,
    );
    expect(taken.map(({ value }) => value)).toEqual([3.5, 5, 3, 4]);
  });
});

describe('the zone', () => {
  const file = 'time,temp (C)\n2026-01-15 10:00,3.2\n2026-01-15 11:00,3.1\n';

  it('is asked for where nobody knows it', async () => {
    const refused = await refusal(file);
    expect(refused.remark.code).toBe('no-zone');
    expect(refused.question?.code).toBe('which-zone');
  });

  it('that nobody knows is refused before anything is read', async () => {
    const refused = await refusal(file, { zone: 'America/Atlantis' });
    expect(refused.remark).toEqual({ code: 'unknown-zone', with: { zone: 'America/Atlantis' } });
  });

  it('of the file goes before the person’s', async () => {
    const stated = file.replace('time,', 'time (UTC-05:00),');
    const { taken, report } = await take(stated, { zone: 'America/Halifax' });
    expect(pairs(taken)[0][0]).toBe('2026-01-15T15:00:00Z');
    expect(codes(report)).toContain('zone-asked-not-used');
  });

  it.each([
    ['deployment', 'zone-from-deployment'],
    ['station', 'zone-from-station'],
  ] as const)('of the %s is used where the file states none, and said', async (from, code) => {
    const known = { zoneOf: () => ({ zone: 'UTC-03:30', from }) };
    const { taken, report } = await take(file, { station: 'ford' }, known);
    expect(pairs(taken)[0][0]).toBe('2026-01-15T13:30:00Z');
    expect(report.assumed).toContainEqual({ code, with: { zone: 'UTC-03:30', station: 'ford' } });
  });

  it('of a longitude serves the days of daily means', async () => {
    const { taken, report } = await take(
      'station,latitude,longitude,date,water_c,air_c\nA,45.1,-66.6,2026-01-15,0.5,-8.2\nA,45.1,-66.6,2026-01-16,0.4,-9\n',
    );
    expect(taken.map(({ key, at, value }) => [key.medium, new Date(at).toISOString(), value])).toEqual([
      ['water', '2026-01-15T04:00:00.000Z', 0.5],
      ['air', '2026-01-15T04:00:00.000Z', -8.2],
      ['water', '2026-01-16T04:00:00.000Z', 0.4],
      ['air', '2026-01-16T04:00:00.000Z', -9],
    ]);
    expect(report.series[0].place).toEqual({ latitude: 45.1, longitude: -66.6 });
    expect(codes(report)).toContain('zone-from-longitude');
  });

  it('of summer time never moves a day of daily means', async () => {
    const days = 'date,Mean water temp (°C)\n2026-07-01,12.5\n2026-07-02,12.6\n2026-12-01,1\n';
    const { taken } = await take(days, {}, { zoneOf: () => ({ zone: 'America/St_Johns', from: 'station' }) });
    expect(pairs(taken).map(([at]) => at)).toEqual([
      '2026-07-01T03:30:00Z',
      '2026-07-02T03:30:00Z',
      '2026-12-01T03:30:00Z',
    ]);
  });
});

describe('stations', () => {
  const long =
    'station,time (UTC),water temp (°C)\nA,2026-01-15 10:00,3.2\nB,2026-01-15 10:00,4.2\nA,2026-01-15 11:00,3.1\nB,2026-01-15 11:00,4.1\n';

  it('of a long table come out each with its own series, in order', async () => {
    const { report, taken } = await take(long);
    expect(report.series.map(({ station }) => station)).toEqual(['A', 'B']);
    expect(taken.filter(({ key }) => key.station === 'B').map(({ value }) => value)).toEqual([4.2, 4.1]);
    expect(report.ordered).toBe(true);
  });

  it('cannot all be one', async () => {
    const refused = await refusal(long, { station: 'ford' });
    expect(refused.remark).toMatchObject({ code: 'several-stations', with: { asked: 'ford' } });
    expect(refused.question?.code).toBe('leave-station-out');
  });

  it('may head the columns of a wide table', async () => {
    const { report, taken } = await take(
      'Date et heure (UTC);Pont Bleu;Gué\n2026-01-15 10:00;3,2;4,2\n2026-01-15 11:00;;4,1\n',
    );
    expect(report.series.map(({ station }) => station)).toEqual(['Pont Bleu', 'Gué']);
    expect(taken).toHaveLength(3);
    expect(codes(report)).toContain('columns-taken-for-stations');
  });

  it('keep nothing in their names that a terminal would act upon', async () => {
    const { report } = await take(
      'station,time (UTC),temp (°C)\nA\u202eB,2026-01-15 10:00,3.2\nA\u202eB,2026-01-15 11:00,3.1\n',
    );
    expect(report.series[0].station).toBe('A B');
  });
});

describe('the whole file', () => {
  it('of one date without clocks is no daily means', async () => {
    const refused = await refusal(
      'date,temp (C)\n2026-01-15,3.2\n2026-01-15,3.1\n2026-01-15,3.0\n2026-01-16,3.1\n',
      utc,
    );
    expect(refused.remark.code).toBe('dates-without-clock');
  });

  it('with one reading and no line end is kept', async () => {
    const { taken } = await take('time (UTC),temp (C)\n2026-01-15 10:00,3.2');
    expect(pairs(taken)).toEqual([['2026-01-15T10:00:00Z', 3.2]]);
  });

  it('with lines that end in CR alone is read', async () => {
    const { taken } = await take('time (UTC),temp (C)\r2026-01-15 10:00,3.2\r2026-01-15 11:00,3.1\r');
    expect(taken.map(({ line }) => line)).toEqual([2, 3]);
  });

  it('may have a preamble longer than the part that is looked at first', async () => {
    const preamble = Array.from({ length: 12_000 }, (_, i) => `# note ${i}: nothing to see here`).join('\n');
    const { taken } = await take(
      `${preamble}\ntime (UTC),temp (C)\n2026-01-15 10:00,3.2\n2026-01-15 11:00,3.1\n`,
    );
    expect(taken.map(({ line }) => line)).toEqual([12_002, 12_003]);
  });

  it.each([
    ['Year,Month,Day,Hour,Temp (C)', '2026,1,15,10,3.2', '2026,1,15,11,3.1'],
    ['Année,Mois,Jour,Heure,Minute,Temp (C)', '2026,01,15,10,00,3.2', '2026,01,15,11,00,3.1'],
    ['Temp (C),Année,Mois,Jour,Heure', '3.2,2026,1,15,10:00', '3.1,2026,1,15,11:00'],
  ])('may have its dates in parts: %s', async (...lines) => {
    const { taken } = await take(`${lines.join('\n')}\n`, utc);
    expect(pairs(taken)).toEqual([
      ['2026-01-15T10:00:00Z', 3.2],
      ['2026-01-15T11:00:00Z', 3.1],
    ]);
  });

  it('may have days in parts', async () => {
    const { taken, report } = await take('Year,Month,Day,Mean temp (C)\n2026,2,28,3.2\n2026,3,1,3.1\n', utc);
    expect(pairs(taken).map(([at]) => at)).toEqual(['2026-02-28T00:00:00Z', '2026-03-01T00:00:00Z']);
    expect(report.series[0].span).toBe('day');
  });

  it('may leave out midnight’s clock, as spreadsheets do', async () => {
    const { taken } = await take(
      'Date (UTC),Temp (C)\n15/01/2026 23:00,3.2\n16/01/2026,3.1\n16/01/2026 01:00,3.0\n',
    );
    expect(pairs(taken)[1]).toEqual(['2026-01-16T00:00:00Z', 3.1]);
  });
});
