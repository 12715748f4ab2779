import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The dates the demo stands at: deep winter, and the end of the season. */
export const SAMPLE_DATES = ['2026-02-15', '2026-06-20'] as const;
export type SampleDate = (typeof SAMPLE_DATES)[number];

/** A download of the sample season: when it was in hand, and what its file does not say. */
export interface SampleDownload {
  readonly file: string;
  /** The first of the demo's dates on which it had been read. */
  readonly from: SampleDate;
  /** `--station`, where the file does not name one of the season's. */
  readonly station?: string;
}

const february = (file: string, station?: string): SampleDownload => ({
  file,
  from: '2026-02-15',
  ...(station === undefined ? {} : { station }),
});
const june = (file: string, station?: string): SampleDownload => ({
  ...february(file, station),
  from: '2026-06-20',
});

/** Every download, in the order the group loaded them. */
export const samplePlan: readonly SampleDownload[] = [
  february('weir-2020-2025.csv.gz'),
  february('bridge-daily-2020-2025.csv'),
  ...['2020', '2021', '2022', '2023', '2024', '2025'].map((year) => february(`air-${year}.csv`, 'airfield')),
  february('hatchery-tank.csv', 'tank'),
  february('upper-pool_2025-12-03.csv', 'upper'),
  february('gue_2025-12-04.csv', 'ford'),
  february('braid 2026-01-20.txt', 'braid'),
  february('weir-winter.rdb', 'weir'),
  february('bridge-winter.xml.gz', 'bridge'),
  february('air-2026-fevrier.csv', 'airfield'),
  june('reporting-february-april.csv'),
  june('stations-mai-juin.csv'),
  june('bridge-level.csv', 'bridge'),
  june('air-2026.csv', 'airfield'),
  june('upper-pool_2026-06-16.csv', 'upper'),
  june('braid 2026-06-16.txt', 'braid'),
];

/** Path of a file of the sample season, from the sources or from dist: `season.yaml`, `downloads/air-2020.csv`. */
export function samplePath(file: string): string {
  const beside = new URL('./', import.meta.url);
  const folder = existsSync(new URL('season.yaml', beside))
    ? beside
    : new URL('../../sample-logs/', import.meta.url);
  return fileURLToPath(new URL(encodeURI(file), folder));
}
