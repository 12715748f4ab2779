import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/*
 * Tests that start processes and threads start the compiled program: it is compiled before the first test, where a
 * source has changed since. Whether its types agree is another check's business (`npm run check`).
 */
const root = new URL('../', import.meta.url).pathname;
const stamp = join(root, 'dist/.compiled');
const sources = ['adapters', 'forecasting', 'src', 'bench', 'sample-logs'];

export default function compileFirst(): void {
  if (existsSync(stamp) && statSync(stamp).mtimeMs > newestSource()) return;
  const built = spawnSync(process.execPath, [join(root, 'build.mjs')], { encoding: 'utf8' });
  if (!existsSync(join(root, 'dist/src'))) throw new Error(`the sources did not compile: ${built.stdout}`);
  writeFileSync(stamp, '');
}

function newestSource(): number {
  let newest = 0;
  for (const folder of sources) {
    for (const entry of readdirSync(join(root, folder), { recursive: true, withFileTypes: true })) {
      if (!/\.(tsx?|css|js)$/.test(entry.name)) continue;
      newest = Math.max(newest, statSync(join(entry.parentPath, entry.name)).mtimeMs);
    }
  }
  return newest;
}
