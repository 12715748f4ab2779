import { describe, expect, it, test } from 'vitest';
import { batteryHeader, saysLowBattery } from '../../adapters/sniff/battery.js';
import { take, utcAsked } from './reading.js';

const at = (hour: number) => Date.UTC(2025, 10, 4, hour);
const stamp = (hour: number) => `2025-11-04 ${String(hour).padStart(2, '0')}:00`;
/** Hours of a file: temperature and whatever else stands in the row. */
const file = (header: string, rows: readonly string[], above = '') =>
  `${above}${header}\n${rows.map((row, i) => `${stamp(i)},${row}`).join('\n')}\n`;

describe('a column of the battery', () => {
  it.each([
    ['Battery (V)', 'V'],
    ['Batt, V', 'V'],
    ['BattV', 'V'],
    ['battery_voltage', 'V'],
    ['Batt mV', 'mV'],
    ['Pile (V)', 'V'],
    ['Tension de la batterie (mV)', 'mV'],
    ['Battery %', '%'],
    ['Batt. pct', '%'],
    ['Battery level', 'unstated'],
    ['Voltage', 'V'],
    ['Battery status', 'state'],
    ['État de la pile', 'state'],
    ['Battery temperature (°C)', null],
    ['Internal temp', null],
    ['Humidity (%)', null],
    ['Pressure voltage (mV)', null],
    ['Event', null],
  ])('%s: %s', (header, unit) => {
    expect(batteryHeader(header)).toBe(unit);
  });

  it.each([
    ['Low battery', true],
    ['BATTERY LOW', true],
    ['Battery is low', true],
    ['Pile faible', true],
    ['Batterie déchargée', true],
    ['Remplacer la pile', true],
    ['battery fine', false],
    ['Battery changed in spring', false],
    ['Battery not low', false],
    ['Low water', false],
    ['', false],
  ])('"%s" calls the battery low: %s', (text, low) => {
    expect(saysLowBattery(text)).toBe(low);
  });

  test('highest, lowest and last are kept with their moments, and the temperature is untouched', async () => {
    const { report, taken } = await take(
      file('Time,Temp (°C),Batt (V)', ['6.1,3.58', '6.0,3.61', '5.9,3.02', '5.8,3.11']),
      utcAsked,
    );
    expect(taken.map(({ value }) => value)).toEqual([6.1, 6, 5.9, 5.8]);
    expect(report.battery).toEqual([
      {
        station: null,
        column: 'Batt (V)',
        unit: 'V',
        highest: { value: 3.61, at: at(1) },
        lowest: { value: 3.02, at: at(2) },
        last: { value: 3.11, at: at(3) },
        low: null,
      },
    ]);
  });

  test('mV come out in V, a decimal comma is read, percent stay percent', async () => {
    const millis = await take(
      `Date;Température (°C);Pile (mV)\n${[3600, 3550, 2900].map((mv, i) => `${stamp(i)};5,${i};${mv}`).join('\n')}\n`,
      utcAsked,
    );
    expect(millis.report.battery[0]).toMatchObject({
      unit: 'V',
      highest: { value: 3.6 },
      last: { value: 2.9, at: at(2) },
    });
    const comma = await take(
      `Date;Température (°C);Pile (V)\n${['3,60', '3,55'].map((v, i) => `${stamp(i)};5,${i};${v}`).join('\n')}\n`,
      utcAsked,
    );
    expect(comma.report.battery[0]).toMatchObject({ unit: 'V', last: { value: 3.55 } });
    const share = await take(file('Time,Temp (°C),Battery %', ['5,80', '5,64', '5,12']), utcAsked);
    expect(share.report.battery[0]).toMatchObject({ unit: '%', lowest: { value: 12, at: at(2) } });
    // Without a unit its size tells.
    const size = async (values: readonly string[]) =>
      (
        await take(
          file(
            'Time,Temp (°C),Battery',
            values.map((one) => `5,${one}`),
          ),
          utcAsked,
        )
      ).report.battery[0];
    expect(await size(['3.6', '3.5'])).toMatchObject({ unit: 'V', last: { value: 3.5 } });
    expect(await size(['97', '95'])).toMatchObject({ unit: '%', last: { value: 95 } });
    expect(await size(['3600', '3500'])).toMatchObject({ unit: 'V', last: { value: 3.5 } });
  });

  test('a row without a reading still tells of the battery; missing codes and zeros do not', async () => {
    const { report, taken } = await take(
      file('Time,Temp (°C),Batt (V)', ['6.1,3.6', ',2.4', '5.9,-999', '5.8,']),
      utcAsked,
    );
    expect(taken).toHaveLength(3);
    expect(report.battery[0]).toMatchObject({
      lowest: { value: 2.4, at: at(1) },
      last: { value: 2.4, at: at(1) },
    });
    const zeros = await take(file('Time,Temp (°C),Batt (V)', ['6.1,0', '6.0,0.0', '5.9,0']), utcAsked);
    expect(zeros.report.battery).toEqual([]);
  });

  test('remarks that call it low, in a column of events, of its state, or in a line of their own', async () => {
    const low = async (header: string, rows: readonly string[], below = '') =>
      (await take(`${file(header, rows)}${below}`, utcAsked)).report.battery.map((one) => one.low);
    expect(await low('Time,Temp (°C),Event', ['6,', '6,', '5,Low battery', '5,Low battery'])).toEqual([
      { text: 'Low battery', at: at(2) },
    ]);
    expect(await low('Time,Temp (°C),Battery status', ['6,OK', '6,OK', '5,LOW'])).toEqual([
      { text: 'LOW', at: at(2) },
    ]);
    expect(await low('Time,Temp (°C),Remarques', ['6,', '5,Pile faible', '5,'])).toEqual([
      { text: 'Pile faible', at: at(1) },
    ]);
    expect(await low('Time,Temp (°C)', ['6', '6', '5'], '# low battery\n')).toEqual([
      { text: '# low battery', at: at(2) },
    ]);
    expect(await low('Time,Temp (°C),Event', ['6,', '6,Battery changed', '5,Low water'])).toEqual([]);
  });

  test('what the lines above the table say, where no column does', async () => {
    const above = async (line: string) =>
      (await take(file('Time,Temp (°C)', ['6', '6', '5'], `${line}\n`), utcAsked)).report.battery;
    expect(await above('Battery: 2.71 V')).toMatchObject([
      { column: null, unit: 'V', last: { value: 2.71, at: null } },
    ]);
    expect(await above('Niveau de la pile: 18 %')).toMatchObject([
      { unit: '%', last: { value: 18, at: null } },
    ]);
    expect(await above('Battery status: LOW')).toMatchObject([{ unit: null, low: { at: null } }]);
    expect(await above('Battery at launch: 3.6 V')).toEqual([]);
    expect(await above('Battery type: lithium 3.6 V')).toEqual([]);
  });

  test('each station of a file has its own', async () => {
    const { report } = await take(
      `station,time,temp_c,batt_v\n${['a', 'b', 'a', 'b'].map((one, i) => `${one},${stamp(i)},5.${i},${one === 'a' ? 3.6 : 3 - i / 10}`).join('\n')}\n`,
      utcAsked,
    );
    expect(report.battery.map(({ station, last }) => [station, last?.value])).toEqual([
      ['a', 3.6],
      ['b', 2.7],
    ]);
  });
});
