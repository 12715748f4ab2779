import { cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openOwnGroup } from '../../src/group/index.js';
import { loadSampleSeason } from '../../src/group/sample-season.js';

const root = new URL('../../', import.meta.url).pathname;
const kept = join(root, 'node_modules/.cache/underice-tests');

/**
 * Fills a folder with the invented sample season. It is loaded once for all test files and copied from there: anew
 * whenever a source has changed since (tests/compiled.ts renews the time of `dist/.compiled`).
 */
export async function copySampleSeason(folder: string): Promise<void> {
  const name = `sample-${Math.round(statSync(join(root, 'dist/.compiled')).mtimeMs)}`;
  const whole = join(kept, name);
  if (!existsSync(whole)) {
    if (existsSync(kept))
      for (const older of readdirSync(kept))
        if (!older.startsWith(name)) rmSync(join(kept, older), { recursive: true, force: true });
    const part = join(kept, `${name}-${process.pid}`);
    mkdirSync(kept, { recursive: true });
    const group = await openOwnGroup(part);
    await loadSampleSeason(group, 'tests');
    await group.close();
    try {
      renameSync(part, whole);
    } catch {
      // Another test file was as quick: its folder is the same.
      rmSync(part, { recursive: true, force: true });
    }
  }
  cpSync(whole, folder, { recursive: true });
}
