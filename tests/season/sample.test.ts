import { readdirSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { type Known, readDownload, type Sink } from '../../adapters/index.js';
import { atlanticSalmon } from '../../forecasting/index.js';
import { sampleFiles, type Written } from '../../sample-logs/files.js';
import { samplePath, samplePlan } from '../../sample-logs/plan.js';
import { epochMillis, readSeason } from '../../src/season/index.js';

const made = sampleFiles();
const season = readSeason(readFileSync(samplePath('season.yaml'), 'utf8'), 'season.yaml');
const DAY = 86_400_000;

/** The zone of the deployment that holds the moment, else the station's own. */
const known: Known = {
  zoneOf(name, at) {
    const station = season.stations.find(({ id }) => id === name);
    const deployment = season.deployments.find(
      ({ station, from, to }) =>
        station === name &&
        (at === undefined || (epochMillis(from) <= at && (to === null || at <= epochMillis(to)))),
    );
    const logger = season.loggers.find(({ id }) => id === deployment?.logger);
    const clock = deployment?.clock ?? logger?.clock ?? null;
    if (clock !== null) return { zone: clock, from: 'deployment' };
    return station === undefined ? null : { zone: station.zone, from: 'station' };
  },
  isAir: (name) => season.stations.some(({ id, kind }) => id === name && kind === 'air'),
};

/** What the adapters read out of a sample download, by station and quantity. */
async function readBack(
  file: string,
  station: string | undefined,
): Promise<{ unusable: number; series: Map<string, Written> }> {
  const bytes = readFileSync(samplePath(`downloads/${file}`));
  let rows: { series: number; at: number; value: number }[] = [];
  const sink: Sink = {
    take(batch) {
      for (let i = 0; i < batch.length; i++)
        rows.push({ series: batch.series[i], at: batch.at[i], value: batch.value[i] });
    },
    startAgain() {
      rows = [];
    },
  };
  async function* open() {
    yield bytes;
  }
  const report = await readDownload({ name: file, size: bytes.length, open }, { station }, known, sink);
  const series = new Map(
    report.series.map((key, index) => {
      const own = rows.filter(({ series }) => series === index);
      const name = key.station ?? station ?? '-';
      return [
        `${name} ${key.quantity}`,
        {
          station: name,
          quantity: key.quantity,
          daily: key.span === 'day',
          at: own.map(({ at }) => at),
          value: own.map(({ value }) => value),
        },
      ];
    }),
  );
  return { unusable: report.unusable.count, series };
}

/** Lines that are no reading and say so: the two notes at the end of one file. */
const NOTES: Record<string, number> = { 'braid 2026-06-16.txt': 2 };

describe('every sample download gives exactly the readings that were written', () => {
  test.each(samplePlan.map(({ file, station }) => [file, station] as const))('%s', async (file, station) => {
    const holds = made.find((one) => one.file === file)?.holds ?? [];
    const { unusable, series } = await readBack(file, station);
    expect(unusable).toBe(NOTES[file] ?? 0);
    expect([...series.keys()].sort()).toEqual(holds.map((one) => `${one.station} ${one.quantity}`).sort());
    for (const one of holds) {
      const found = series.get(`${one.station} ${one.quantity}`);
      expect(found?.daily).toBe(one.daily);
      // A daily mean may stand anywhere within its local day.
      const moment = (at: number) => (one.daily ? Math.floor((at - 4 * 3_600_000) / DAY) : at);
      expect(found?.at.map(moment)).toEqual(one.at.map(moment));
      expect(found?.value).toEqual(one.value);
    }
  });
});

test('the files are those the script makes, byte for byte', () => {
  const plain = (bytes: Uint8Array, file: string) =>
    // How tightly gzip packs differs from one zlib to the next; what it holds does not.
    Buffer.from(file.endsWith('.gz') ? gunzipSync(bytes) : bytes);
  for (const { file, bytes } of made)
    expect(plain(readFileSync(samplePath(`downloads/${file}`)), file).equals(plain(bytes, file)), file).toBe(
      true,
    );
  expect(readdirSync(samplePath('downloads')).sort()).toEqual(made.map(({ file }) => file).sort());
  expect(samplePlan.map(({ file }) => file).sort()).toEqual(made.map(({ file }) => file).sort());
});

test('it weighs less than four megabytes, and the winter downloads hold nothing of later', () => {
  const weight = made.reduce((sum, { bytes }) => sum + bytes.length, 0);
  expect(weight).toBeLessThan(4_000_000);
  const february = Date.parse('2026-02-15T00:00-04:00');
  for (const { file, from } of samplePlan) {
    const last = Math.max(...holdsOf(file).flatMap(({ at }) => at.at(-1) ?? []));
    expect(last < february, file).toBe(from === '2026-02-15');
  }
});

const holdsOf = (file: string) => made.find((one) => one.file === file)?.holds ?? [];

/** Readings of a station from one moment up to another, of all its downloads. */
function readings(station: string, from: string, to: string): { at: number; value: number }[] {
  const [start, end] = [Date.parse(from), Date.parse(to)];
  return made
    .flatMap(({ holds }) => holds)
    .filter((one) => one.station === station && one.quantity === 'temperature' && !one.daily)
    .flatMap(({ at, value }) => at.map((moment, i) => ({ at: moment, value: value[i] })))
    .filter(({ at }) => at >= start && at < end)
    .sort((a, b) => a.at - b.at);
}

const values = (station: string, from: string, to: string) =>
  readings(station, from, to).map(({ value }) => value);

describe('the invented winter is one these rivers have', () => {
  test('under the ice the water stays at 0.0 ± 0.2 °C from mid-December to mid-April', () => {
    for (const station of ['upper', 'weir', 'bridge', 'braid']) {
      const plateau = values(station, '2025-12-15T00:00-04:00', '2026-04-14T00:00-04:00');
      expect(plateau.length).toBeGreaterThan(2800);
      for (const value of plateau) expect(Math.abs(value)).toBeLessThanOrEqual(0.2);
    }
  });

  test('open water has a daily swing, and colder water at the head of the river', () => {
    const june = (station: string) => values(station, '2026-06-05T00:00-04:00', '2026-06-15T00:00-04:00');
    for (const station of ['upper', 'weir', 'braid']) {
      const [day] = [values(station, '2026-06-07T00:00-04:00', '2026-06-08T00:00-04:00')];
      expect(Math.max(...day) - Math.min(...day)).toBeGreaterThan(1);
    }
    const mean = (all: number[]) => all.reduce((sum, value) => sum + value, 0) / all.length;
    expect(mean(june('upper'))).toBeLessThan(mean(june('weir')));
    expect(mean(june('weir'))).toBeLessThan(mean(june('braid')));
  });

  test('the tank was lethally warm for a night: above 16 °C by more than its logger for six hours (the shipped table)', () => {
    const lethal = atlanticSalmon.harm.find(({ kind, severity }) => kind === 'warm' && severity === 'lethal');
    const limit = (lethal?.limit ?? 0) + 0.3;
    expect(limit).toBe(16.3);
    const hot = readings('tank', '2025-11-03T00:00-04:00', '2025-11-11T00:00-04:00').filter(
      ({ value }) => value > limit,
    );
    const hours = (hot.at(-1)!.at - hot[0].at) / 3_600_000;
    expect(hours).toBeGreaterThan(6);
    expect(hot).toHaveLength(hours * 4 + 1);
    const [lot] = season.lots.filter(({ before }) => before.kind === 'station' && before.station === 'tank');
    expect(epochMillis(lot.fertilised)).toBeLessThan(hot[0].at);
  });

  test('the braid passed 22 °C for more than six hours on one day and no other station did', () => {
    const above = (station: string) =>
      readings(station, '2026-04-20T00:00-04:00', '2026-06-20T00:00-04:00').filter(
        ({ value }) => value > 22.2,
      );
    // Runs of readings half an hour apart.
    let [run, longest] = [0, 0];
    above('braid').forEach(({ at }, i, all) => {
      run = i > 0 && at - all[i - 1].at === 1_800_000 ? run + 0.5 : 0;
      longest = Math.max(longest, run);
    });
    expect(longest).toBeGreaterThan(6);
    expect(longest).toBeLessThan(12);
    for (const station of ['upper', 'weir', 'bridge']) expect(above(station)).toEqual([]);
  });

  test('the logger in slush shows no water colder than water gets, but ice: below -0.2, above -0.7 °C', () => {
    const slush = values('braid', '2025-12-05T20:00-04:00', '2025-12-09T14:00-04:00');
    expect(Math.max(...slush)).toBeLessThan(-0.1);
    expect(Math.min(...slush)).toBeGreaterThan(-0.7);
    expect(Math.min(...slush)).toBeLessThan(-0.2);
  });

  test("hand readings agree with the loggers' within half a degree", () => {
    const compared = season.visits.flatMap(({ hand, when, station }) =>
      hand.map(({ celsius }) => {
        const at = epochMillis(when.at ?? '');
        const near = readings(
          station ?? '',
          new Date(at - 7_200_000).toISOString(),
          new Date(at + 1).toISOString(),
        );
        expect(Math.abs((near.at(-1)?.value ?? 99) - celsius)).toBeLessThanOrEqual(0.5);
        return station;
      }),
    );
    expect(compared).toHaveLength(6);
  });
});
