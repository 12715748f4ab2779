import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codes, pairs, refusal, take } from './reading.js';

// Real public air temperatures of the package vega-datasets (its sources file: NOAA hourly normals and daily
// summaries of Seattle).
const dataOf = (name: string) =>
  readFileSync(new URL(`../../node_modules/vega-datasets/data/${name}`, import.meta.url));
const seattle = { zone: 'UTC-08:00' };

describe('Seattle', () => {
  it('hourly normals come out reading for reading', async () => {
    const file = dataOf('seattle-weather-hourly-normals.csv');
    const rows = file
      .toString()
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map((line) => line.split(','));
    const { report, taken } = await take(file, seattle);
    expect(pairs(taken)).toEqual(
      rows.map(([date, , temperature]) => [
        new Date(`${date}-08:00`).toISOString().replace('.000Z', 'Z'),
        Number(temperature),
      ]),
    );
    expect(taken.length).toBeGreaterThan(8000);
    expect(report.unusable.count).toBe(0);
    expect(report.understood).toMatchObject({ unit: 'C', valueColumn: 'temperature', daily: false });
  });

  it('daily extremes ask which, and come out day for day when told', async () => {
    const file = dataOf('seattle-weather.csv');
    const refused = await refusal(file, seattle);
    expect(refused.question).toEqual({ code: 'which-column', with: { columns: ['temp_max', 'temp_min'] } });
    const rows = file
      .toString()
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map((line) => line.split(','));
    const { report, taken } = await take(file, { ...seattle, column: 'temp_min' });
    expect(pairs(taken)).toEqual(rows.map(([date, , , min]) => [`${date}T08:00:00Z`, Number(min)]));
    expect(report.series[0]).toMatchObject({ span: 'day', medium: 'air' });
    expect(codes(report)).toEqual(expect.arrayContaining(['extremes-not-means', 'air-beside-weather']));
  });
});
