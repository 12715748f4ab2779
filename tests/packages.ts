import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { browserPlaces } from './browser-setup.js';

/** Programs the tests run, by the Debian package that brings each. */
const programs = [
  {
    name: 'chromium',
    there: () => process.env.UNDERICE_CHROMIUM !== undefined || browserPlaces.some(existsSync),
  },
  { name: 'influxdb', there: () => runs('influxd', 'version') },
  { name: 'r-base-core', there: () => runs('Rscript', '--version') },
  { name: 'r-cran-survey', there: () => succeeds('Rscript', '-e', 'library(survey)') },
  { name: 'python3', there: () => runs('python3', '--version') },
  { name: 'openssl', there: () => runs('openssl', 'version') },
];

function runs(program: string, ...options: string[]): boolean {
  return spawnSync(program, options, { stdio: 'ignore' }).error === undefined;
}

function succeeds(program: string, ...options: string[]): boolean {
  return spawnSync(program, options, { stdio: 'ignore' }).status === 0;
}

/** Before the first test: what is missing is installed where that may be done (root on Debian). */
export default function installPackages(): void {
  const missing = programs.filter(({ there }) => !there()).map(({ name }) => name);
  if (missing.length === 0 || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['update', '-q'], { stdio: 'ignore', env });
  spawnSync('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...missing], {
    stdio: 'ignore',
    env,
  });
}
