// Writes the downloads of the sample season anew: `npm run build && node dist/sample-logs/make.js`.
import { mkdirSync, writeFileSync } from 'node:fs';
import { sampleFiles } from './files.js';
import { samplePath } from './plan.js';

mkdirSync(samplePath('downloads'), { recursive: true });
for (const { file, bytes } of sampleFiles()) {
  writeFileSync(samplePath(`downloads/${file}`), bytes);
  console.log(`${file}: ${bytes.length} bytes`);
}
