import { describe, expect, it } from 'vitest';
import type { AdapterRemark } from '../../../adapters/index.js';
import { knowsZone } from './layout.js';
import { type InventedRecord, invent } from './record.js';
import { refusalOf, text } from './refused.js';
import { plainStyle, type Style, stamp } from './style.js';
import { writeLong } from './tables.js';
import { type Read, readThrough } from './through.js';
import { write } from './write.js';

const record: InventedRecord = invent({
  seed: 12,
  stations: ['weir-pool', 'ford'],
  first: Date.UTC(2025, 10, 20),
  stepMinutes: 60,
  readings: 60,
});
const file = (style: Partial<Style>): Uint8Array => write(record[0]!, { ...plainStyle, ...style });
const local: Partial<Style> = { saysOffset: 'no', time: stamp('y-m-d') };
const stationsOf = ({ got }: Read): (string | null)[] => got.map(({ key }) => key.station);
const remark = ({ report }: Read, code: AdapterRemark['code']): AdapterRemark | undefined =>
  report.assumed.find((one) => one.code === code);

describe('a station that a person names', () => {
  it('is the file’s where the file names none', async () => {
    expect(stationsOf(await readThrough(file({}), { station: 'upper' }))).toEqual(['upper']);
  });

  it('goes before the one the file names, and that is said', async () => {
    const read = await readThrough(file({ saysStation: 'preamble' }), { station: 'upper' });
    expect(stationsOf(read)).toEqual(['upper']);
    expect(remark(read, 'station-asked-not-file')).toEqual({
      code: 'station-asked-not-file',
      with: { asked: 'upper', stated: 'weir-pool' },
    });
  });

  it('cannot be all stations of a long table', async () => {
    const refusal = await refusalOf(writeLong(record, plainStyle), { station: 'upper' });
    expect([refusal.remark.code, refusal.question?.code]).toEqual(['several-stations', 'leave-station-out']);
  });
});

it('a level beside stations’ columns is nobody’s, and left', async () => {
  const rows = record[0]!.at.map(
    (at, i) => `${new Date(at).toISOString()},${record[0]!.value[i]},${record[1]!.value[i]},1.204`,
  );
  const wide = text(`time,weir-pool (°C),ford (°C),Level (m)\n${rows.join('\n')}\n`);
  const { got } = await readThrough(wide);
  expect(got.map(({ key, value }) => [key.station, key.quantity, value])).toEqual([
    ['weir-pool', 'temperature', record[0]!.value],
    ['ford', 'temperature', record[1]!.value],
  ]);
});

describe('what a person answered', () => {
  it('a zone is used where the file states none, and said', async () => {
    const read = await readThrough(file(local), { zone: 'UTC-04:00' });
    expect(read.got[0]?.at[0]).toBe(Date.UTC(2025, 10, 20, 4));
    expect(remark(read, 'zone-asked')).toEqual({ code: 'zone-asked', with: { zone: 'UTC-04:00' } });
  });

  it('a zone gives way to the offset the file states, and that is said', async () => {
    const read = await readThrough(file({ ...local, saysOffset: 'header' }), { zone: 'UTC-04:00' });
    expect(read.got[0]?.at[0]).toBe(Date.UTC(2025, 10, 20));
    expect(remark(read, 'zone-asked-not-used')).toBeDefined();
  });

  it('a unit gives way to the one the file states, and that is said', async () => {
    const read = await readThrough(file({}), { unit: 'F' });
    expect(read.got[0]?.value).toEqual(record[0]!.value);
    expect(remark(read, 'unit-asked-not-used')).toBeDefined();
  });

  it('a zone goes before the station’s own', async () => {
    const read = await readThrough(file(local), { zone: 'UTC+02:00' }, knowsZone('America/Halifax'));
    expect(read.got[0]?.at[0]).toBe(Date.UTC(2025, 10, 19, 22));
  });
});

describe('what was assumed is said', () => {
  it('the station’s zone', async () => {
    const read = await readThrough(file(local), {}, knowsZone('America/Halifax'));
    expect(remark(read, 'zone-from-station')).toBeDefined();
  });

  it('°C for a number without a unit', async () => {
    expect(remark(await readThrough(file({ saysUnit: 'no' })), 'unit-assumed')).toBeDefined();
  });

  it('columns without a header', async () => {
    const read = await readThrough(file({ header: false, saysUnit: 'no' }));
    expect(remark(read, 'no-header')).toEqual({
      code: 'no-header',
      with: { timeColumns: ['#1'], valueColumn: '#2' },
    });
  });

  it('values that are missing', async () => {
    const read = await readThrough(file({ missing: '-999' }));
    expect(remark(read, 'missing-values')).toEqual({ code: 'missing-values', with: { count: 20 } });
    expect(read.report.unusable.count).toBe(0);
  });

  it('the logger’s serial number is kept', async () => {
    const read = await readThrough(file({ chatter: ['Serial number: 70-0042'] }));
    expect(read.report.serial).toBe('70-0042');
    const french = await readThrough(file({ chatter: ['N° de série : 70-0042'], language: 'fr' }));
    expect(french.report.serial).toBe('70-0042');
  });
});
