import { expect, it } from 'vitest';
import { codes, pairs, take } from './reading.js';

it('reads a plain comma file', async () => {
  const { report, taken } = await take(
    'Date Time,Temperature (°C)\n2026-01-15 10:00,3.25\n2026-01-15 11:00,-0.1\n',
    { zone: 'UTC-03:30' },
  );
  expect(pairs(taken)).toEqual([
    ['2026-01-15T13:30:00Z', 3.25],
    ['2026-01-15T14:30:00Z', -0.1],
  ]);
  expect(report.understood).toEqual({
    encoding: 'utf-8',
    delimiter: ',',
    decimal: '.',
    unit: 'C',
    zone: 'UTC-03:30',
    dateOrder: null,
    timeColumns: ['Date Time'],
    valueColumn: 'Temperature (°C)',
    daily: false,
  });
  expect(report.ordered).toBe(true);
  expect(codes(report)).toEqual(['zone-asked']);
});

it('reads a French file with decimal commas, day first', async () => {
  const { report, taken } = await take(
    "Station;Pont Bleu\r\nNuméro de série;A-1234\r\n\r\nDate;Heure;Température de l'eau (°C)\r\n15/01/2026;10:00:00;3,25\r\n15/01/2026;11:00:00;-0,1\r\n",
    { zone: 'America/Toronto' },
  );
  expect(pairs(taken)).toEqual([
    ['2026-01-15T15:00:00Z', 3.25],
    ['2026-01-15T16:00:00Z', -0.1],
  ]);
  expect(report.series[0]).toEqual({
    station: 'Pont Bleu',
    quantity: 'temperature',
    span: 'instant',
    medium: 'water',
    place: null,
  });
  expect(report.serial).toBe('A-1234');
  expect(report.understood.dateOrder).toBe('dmy');
});
