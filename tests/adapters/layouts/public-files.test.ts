import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { expect, it } from 'vitest';
import { readThrough } from './through.js';

/** What the file says is taken from papaparse, not from the code under test. */
const weather = new URL('../../../node_modules/vega-datasets/data/weather.csv', import.meta.url);

it('daily weather of two cities below one another (vega-datasets; NOAA): two stations, day for day', async () => {
  const bytes = await readFile(weather);
  const { data: rows } = Papa.parse<Record<string, string>>(bytes.toString(), {
    header: true,
    skipEmptyLines: true,
  });
  const { got } = await readThrough(new Uint8Array(bytes), { zone: 'UTC', column: 'temp_min' });
  expect(got.map(({ key }) => key.station)).toEqual([...new Set(rows.map(({ location }) => location))]);
  for (const { key, at, value } of got) {
    const own = rows.filter(({ location }) => location === key.station);
    expect(at).toEqual(own.map(({ date }) => Date.parse(`${date}T00:00Z`)));
    expect(value).toEqual(own.map(({ temp_min }) => Number(temp_min)));
  }
});
