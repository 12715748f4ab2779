import { describe, expect, it } from 'vitest';
import type { DownloadReport } from '../../adapters/index.js';
import {
  LayoutRefused,
  layoutFor,
  layoutFrom,
  readLayout,
  type SavedLayout,
  writeLayout,
} from '../../adapters/layouts-saved.js';
import { formats as en } from '../../src/words/en/formats.js';
import { formats as fr } from '../../src/words/fr/formats.js';

const upper: SavedLayout = {
  name: 'Upper boxes',
  match: { header: ['Date', 'Heure', 'Temp. eau (°C)'] },
  settled: {
    delimiter: ';',
    decimal: ',',
    dateOrder: 'dmy',
    time: ['Date', 'Heure'],
    temperature: 'Temp. eau (°C)',
    zone: 'UTC-04:00',
  },
};

const head = (text: string): Uint8Array => new Uint8Array(Buffer.from(text));

function refusal(change: (layout: Record<string, unknown>) => unknown): LayoutRefused {
  const layout: Record<string, unknown> = JSON.parse(writeLayout(upper));
  try {
    readLayout(JSON.stringify(change(layout)));
  } catch (error) {
    if (error instanceof LayoutRefused) return error;
    throw error;
  }
  throw new Error('the layout was taken');
}

const settledWith = (part: object) => (layout: Record<string, unknown>) => ({
  ...layout,
  settled: { ...upper.settled, ...part },
});

describe('a saved layout', () => {
  it('comes back from its JSON as it was', () => {
    expect(readLayout(writeLayout(upper))).toEqual(upper);
    expect(readLayout(`\uFEFF${writeLayout(upper)}`)).toEqual(upper);
  });

  it.each([
    [{ delimiter: ' ' }, 'settled.delimiter', '" "', 'delimiter'],
    [{ decimal: '·' }, 'settled.decimal', '"·"', 'decimal'],
    [{ dateOrder: 'ydm' }, 'settled.dateOrder', '"ydm"', 'dateOrder'],
    [{ zone: 'America/Nowhere' }, 'settled.zone', '"America/Nowhere"', 'zone'],
    [{ zone: 'UTC-25:00' }, 'settled.zone', '"UTC-25:00"', 'zone'],
    [{ time: [] }, 'settled.time', '[]', 'time'],
    [{ time: ['a', 'b', 'c'] }, 'settled.time', '["a","b","c"]', 'time'],
    [{ temperature: 0 }, 'settled.temperature', '0', 'temperature'],
    [{ headerLine: -1 }, 'settled.headerLine', '-1', 'headerLine'],
    [{ unit: 'R' }, 'settled.unit', '"R"', 'unit'],
    [{ encoding: 'ebcdic' }, 'settled.encoding', '"ebcdic"', 'encoding'],
  ])('with %j is refused with the path, the value and what would do', (part, path, given, rule) => {
    const { remark, exit } = refusal(settledWith(part));
    expect(remark).toEqual({ code: 'layout.wrong-part', with: { path, given, rule } });
    expect(exit).toBe(2);
  });

  it('says in words what would do', () => {
    const { remark } = refusal(settledWith({ dateOrder: 'ydm' }));
    if (remark.code !== 'layout.wrong-part') throw new Error(remark.code);
    expect(en[remark.code](remark.with)).toBe(
      '“settled.dateOrder” is "ydm". What would do: ymd, dmy or mdy.',
    );
    expect(fr[remark.code](remark.with)).toBe(
      '« settled.dateOrder » vaut "ydm". Ce qui conviendrait : ymd, dmy ou mdy.',
    );
  });

  it('with a part nobody knows, a missing part or a column named twice is refused', () => {
    expect(refusal((layout) => ({ ...layout, colour: 'red' })).remark).toMatchObject({
      code: 'layout.unknown-part',
      with: { path: 'colour' },
    });
    expect(refusal(settledWith({ separator: ';' })).remark).toMatchObject({
      code: 'layout.unknown-part',
      with: { path: 'settled.separator' },
    });
    expect(refusal(({ name: _, ...rest }) => rest).remark).toEqual({
      code: 'layout.missing-part',
      with: { path: 'name', rule: 'name' },
    });
    expect(refusal((layout) => ({ ...layout, match: { colour: 'red' } })).remark).toMatchObject({
      code: 'layout.wrong-part',
      with: { path: 'match', rule: 'match' },
    });
    expect(refusal(settledWith({ level: 'Date' })).remark).toEqual({
      code: 'layout.column-twice',
      with: { column: 'Date' },
    });
    expect(refusal(() => 12).remark).toMatchObject({ code: 'layout.wrong-part', with: { rule: 'layout' } });
    expect(() => readLayout('{ name: ')).toThrow(LayoutRefused);
  });
});

describe('the layout of a download', () => {
  const lower: SavedLayout = {
    name: 'Lower boxes',
    match: { header: ['Date', 'Heure'] },
    settled: { delimiter: ';' },
  };
  const silent: SavedLayout = { name: 'No header', match: { fileName: 'PONT' }, settled: { headerLine: 0 } };
  const titled: SavedLayout = { name: 'Titled', match: { opening: 'Relevé de la frayère' }, settled: {} };
  const all = [lower, upper, silent, titled];

  it('is the one that asks most of the file', () => {
    const text = 'Relevé\n"Date";"Heure";"temp. eau (°C)";Pile\n01/02/2026;12:00;0,2;3,6\n';
    expect(layoutFor(all, 'box.csv', head(text))).toBe(upper);
    expect(layoutFor(all, 'box.csv', head('Date;Heure;Niveau\n'))).toBe(lower);
  });

  it('is found by the file’s name or its first line where no header tells', () => {
    expect(layoutFor(all, 'pont_2026.txt', head('01/02/2026 12:00;0,2\n'))).toBe(silent);
    expect(layoutFor(all, 'x.csv', head('RELEVÉ DE LA FRAYÈRE 2026\n'))).toBe(titled);
  });

  it('is none where nothing fits, or two fit equally', () => {
    expect(layoutFor(all, 'x.csv', head('time,temp\n'))).toBeNull();
    expect(layoutFor([lower, { ...lower, name: 'twin' }], 'x.csv', head('Date;Heure\n'))).toBeNull();
  });
});

describe('a layout made of a download', () => {
  const report: DownloadReport = {
    series: [],
    summaries: [],
    understood: {
      encoding: 'windows-1252',
      delimiter: ';',
      decimal: ',',
      unit: 'C',
      zone: 'UTC-04:00',
      dateOrder: 'dmy',
      timeColumns: ['Date', 'Heure'],
      valueColumn: 'Temp. eau (°C)',
      daily: false,
    },
    assumed: [],
    unusable: { count: 0, examples: [] },
    ordered: true,
    serial: null,
    battery: [],
  };

  it('keeps what was found and what a person answered, and can be read again', () => {
    const made = layoutFrom('Upper boxes', report, { zone: 'UTC-04:00', column: 'temp. eau' }, 'box 3.csv');
    expect(made).toEqual(upper);
    expect(made === null ? null : readLayout(writeLayout(made))).toEqual(upper);
  });

  it('leaves a unit, a zone and a column the file states itself to next year’s file', () => {
    const made = layoutFrom('Upper boxes', report, {}, 'box 3.csv');
    expect(made?.settled).not.toHaveProperty('zone');
    expect(made?.settled).not.toHaveProperty('unit');
    expect(made?.settled).not.toHaveProperty('temperature');
  });

  it('names columns by number and knows the file by its name where there is no header', () => {
    const bare = { ...report, understood: { ...report.understood, timeColumns: ['#1'], valueColumn: '#2' } };
    expect(layoutFrom('Bridge', bare, { unit: 'F' }, 'PONT_20260512.txt')).toEqual({
      name: 'Bridge',
      match: { fileName: 'PONT_' },
      settled: { delimiter: ';', decimal: ',', dateOrder: 'dmy', time: [1], temperature: 2, unit: 'F' },
    });
  });

  it('is none for an exchange format, which explains itself', () => {
    const exchange = { ...report, understood: { ...report.understood, delimiter: null } };
    expect(layoutFrom('Service', exchange, {}, 'a.xml')).toBeNull();
  });
});
