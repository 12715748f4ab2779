import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seasonEntry } from '../src/group/season-entries.js';
import { renderSeason } from '../src/season/index.js';
import { inventedFolder, inventedSeason, LAST, loadStation } from './invented-folder.js';
import { type BenchRow, lessIsBetter } from './row.js';

const SIZE = { stations: 6, boxes: 8, readings: 100_000 };
const MOST_STANDING = 12;
const megabytes = () => process.memoryUsage().rss / 1e6;

/**
 * Loads, withdrawals, season edits and four readers at once for some minutes; every error ends it. Memory after a quarter
 * of the time beside memory at the end, and the folder is checked.
 */
export async function soak(minutes: number): Promise<BenchRow[]> {
  const place = mkdtempSync(join(tmpdir(), 'underice-soak-'));
  const folder = await inventedFolder(join(place, 'season'), SIZE);
  const end = Date.now() + minutes * 60_000;
  const quarter = Date.now() + (minutes * 60_000) / 4;
  const counts = { loads: 0, withdrawals: 0, edits: 0, reads: 0 };
  const after: number[] = [];
  const late: number[] = [];
  const writer = async () => {
    const standing: number[] = [];
    while (Date.now() < end) {
      const last = LAST - (counts.loads % 50) * 3_600_000;
      standing.push(await folder.write('soak', (write) => loadStation(write, counts.loads % 6, 2000, last)));
      counts.loads++;
      while (standing.length > MOST_STANDING) {
        const [gone = 0] = standing.splice(counts.loads % MOST_STANDING, 1);
        await folder.withdraw(gone, 'soak');
        counts.withdrawals++;
      }
    }
  };
  const editor = async () => {
    while (Date.now() < end) {
      const season = inventedSeason(SIZE.stations, SIZE.boxes + (counts.edits % 2));
      await folder.applySeason(seasonEntry(season, renderSeason(season)), 'soak');
      counts.edits++;
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  };
  const reader = async (station: string) => {
    while (Date.now() < end) {
      const { at } = await folder.record(station, 'temperature', LAST - 30 * 86_400_000, LAST);
      if (at.length < 2000) throw new Error(`${at.length} readings of ${station} in a month`);
      await folder.catalogue.days();
      counts.reads++;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  };
  const watch = setInterval(() => (Date.now() < quarter ? after : late).push(megabytes()), 1000);
  try {
    await Promise.all([writer(), editor(), ...[0, 1, 2, 3].map((i) => reader(`station-${i}`))]);
    clearInterval(watch);
    const { findings } = await folder.verify();
    if (findings.length > 0) throw new Error(`the check found ${JSON.stringify(findings.slice(0, 5))}`);
    console.error(`${minutes} minutes: ${JSON.stringify(counts)}; the check found nothing`);
    const [first, last] = [Math.max(...after), Math.max(...late.slice(-60))];
    return [lessIsBetter('soak-memory', last, 'MB', { name: 'most in the first quarter', value: first })];
  } finally {
    clearInterval(watch);
    await folder.close();
    rmSync(place, { recursive: true, force: true });
  }
}
