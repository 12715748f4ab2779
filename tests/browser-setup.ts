import { existsSync } from 'node:fs';

/** Where Debian and others put it. */
export const browserPlaces = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Where Chromium is. @throws Error in one sentence where it is not, saying what to install. */
export function chromiumPath(): string {
  const found = process.env.UNDERICE_CHROMIUM ?? browserPlaces.find((place) => existsSync(place));
  if (found === undefined)
    throw new Error(
      'The page tests need Chromium: install it with "apt-get install chromium", or name it in UNDERICE_CHROMIUM.',
    );
  return found;
}
