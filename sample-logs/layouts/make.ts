/**
 * Writes the samples of this folder: one invented download for each layout that is understood, each from a record
 * with a seed of its own. `npm run build && node dist/sample-logs/layouts/make.js` writes them anew, byte for byte.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { sampleRecord } from '../../tests/adapters/layouts/layout.js';
import { layouts } from '../../tests/adapters/layouts/layouts.js';

const folder = resolve(process.argv[2] ?? 'sample-logs/layouts');
await mkdir(folder, { recursive: true });
for (const layout of layouts) {
  await writeFile(resolve(folder, layout.file), layout.write(sampleRecord(layout)));
}
console.log(`${layouts.length} samples in ${folder}`);
