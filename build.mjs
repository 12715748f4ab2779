// Compiles the TypeScript sources to dist. With --if-possible (the npm `prepare` step) it does nothing
// where the compiler was left out, as `npm ci --omit=dev` does, and the dist of the package is used.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync } from 'node:fs';
import { createRequire } from 'node:module';

const ifPossible = process.argv.includes('--if-possible');
let compiler;
try {
  compiler = createRequire(import.meta.url)
    .resolve('typescript/package.json')
    .replace(/package\.json$/, 'bin/tsc');
} catch {
  if (ifPossible) process.exit(0);
  console.error(
    'The TypeScript compiler is not installed: run `npm ci` without --omit=dev, then `npm run build`.',
  );
  process.exit(1);
}
const built = spawnSync(process.execPath, [compiler, '-p', 'tsconfig.build.json'], { stdio: 'inherit' });
const { build } = await import('esbuild');
await build({
  entryPoints: [
    'style.css',
    'record.ts',
    'record.css',
    'downloads.ts',
    'copy.ts',
    'icon.svg',
    'field.ts',
    'field.css',
    'field-worker.js',
  ].map((name) => `src/pages/client/${name}`),
  outdir: 'dist/src/pages/assets',
  bundle: true,
  minify: true,
  format: 'esm',
  target: ['es2022'],
  loader: { '.svg': 'copy' },
  logLevel: 'warning',
});
// One file begins far sooner than a hundred: the reading thread starts anew with every load.
await build({
  entryPoints: ['src/loading/reader-worker.ts'],
  outfile: 'dist/src/loading/reader-worker.cjs',
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: ['node20'],
  logLevel: 'warning',
});
const command = 'dist/src/cli/main.js';
if (existsSync(command)) chmodSync(command, 0o755);
process.exit(built.status ?? 1);
