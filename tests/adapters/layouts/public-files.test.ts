import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { type Read, readThrough } from './through.js';

/**
 * Public air temperatures as the npm package vega-datasets carries them (its sources file names NOAA). What the
 * files say is taken from papaparse and plain arithmetic, not from the code under test.
 */
const folder = new URL('../../../node_modules/vega-datasets/data/', import.meta.url);

interface Public {
  readonly bytes: Uint8Array;
  readonly rows: readonly Readonly<Record<string, string>>[];
}

async function publicFile(name: string): Promise<Public> {
  const bytes = await readFile(new URL(name, folder));
  const { data } = Papa.parse<Record<string, string>>(bytes.toString(), {
    header: true,
    skipEmptyLines: true,
  });
  return { bytes: new Uint8Array(bytes), rows: data };
}

const HOUR = 3_600_000;

function onlySeries({ got }: Read): { readonly at: readonly number[]; readonly value: readonly number[] } {
  expect(got).toHaveLength(1);
  return got[0]!;
}

describe('public files', () => {
  it('hourly normals: every hour of the year, in the zone’s standard time the person names', async () => {
    const { bytes, rows } = await publicFile('seattle-weather-hourly-normals.csv');
    const read = await readThrough(bytes, { zone: 'UTC-08:00' });
    const { at, value } = onlySeries(read);
    expect(at).toEqual(rows.map(({ date }) => Date.parse(`${date}Z`) + 8 * HOUR));
    expect(value).toEqual(rows.map(({ temperature }) => Number(temperature)));
    expect(read.report.understood).toMatchObject({ valueColumn: 'temperature', unit: 'C', daily: false });
    expect(read.report.unusable.count).toBe(0);
  });

  it('daily maxima and minima: asked which, then the one named', async () => {
    const { bytes, rows } = await publicFile('seattle-weather.csv');
    await expect(readThrough(bytes, { zone: 'UTC' })).rejects.toMatchObject({
      question: { code: 'which-column' },
    });
    const read = await readThrough(bytes, { zone: 'America/Los_Angeles', column: 'temp_max' });
    const { at, value } = onlySeries(read);
    expect(at).toEqual(rows.map(({ date }) => Date.parse(`${date}T00:00Z`) + 8 * HOUR));
    expect(value).toEqual(rows.map(({ temp_max }) => Number(temp_max)));
    expect(read.report.understood.daily).toBe(true);
  });

  it('two cities below one another are two stations', async () => {
    const { bytes, rows } = await publicFile('weather.csv');
    const { got } = await readThrough(bytes, { zone: 'UTC', column: 'temp_min' });
    expect(got.map(({ key }) => key.station)).toEqual([...new Set(rows.map(({ location }) => location))]);
    for (const { key, value } of got) {
      const own = rows.filter(({ location }) => location === key.station);
      expect(value).toEqual(own.map(({ temp_min }) => Number(temp_min)));
    }
  });
});
