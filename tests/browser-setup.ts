import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Where Chromium is. @throws Error in one sentence where it is not, saying what to install. */
export function chromiumPath(): string {
  const found = process.env.UNDERICE_CHROMIUM ?? PLACES.find((place) => existsSync(place));
  if (found === undefined)
    throw new Error(
      'The page tests need Chromium: install it with "apt-get install chromium", or name it in UNDERICE_CHROMIUM.',
    );
  return found;
}

/** Before the first test: Chromium is installed where it is missing and may be (root on Debian). */
export default function installChromium(): void {
  const missing = process.env.UNDERICE_CHROMIUM === undefined && !PLACES.some((place) => existsSync(place));
  if (!missing || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['update', '-q'], { stdio: 'ignore', env });
  spawnSync('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], {
    stdio: 'ignore',
    env,
  });
}
