/* What the scripts that draw pages share: Chromium, and the sample season with an earlier one closed in it. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { openOwnGroup } from '../src/group/index.js';
import { closeEarlierSample, earlierSampleClosed } from '../src/group/sample-earlier.js';
import { loadSampleSeason } from '../src/group/sample-season.js';

/** Who closes the earlier season: invented. */
export const WHO = 'Mara Quell';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** @throws where Chromium is not installed */
export function openChromium(): Promise<Browser> {
  const executablePath = process.env.UNDERICE_CHROMIUM ?? places.find((place) => existsSync(place));
  if (executablePath === undefined)
    throw new Error('Pictures need Chromium: install it with "apt-get install chromium".');
  const args = ['--headless', '--no-sandbox', '--disable-gpu', '--no-first-run'];
  return chromium.launch({ executablePath, args: [...args, '--disable-background-networking'] });
}

/** Makes a data folder of both seasons. */
export async function sampleSeasons(folder: string): Promise<void> {
  const group = await openOwnGroup(folder);
  await loadSampleSeason(group, WHO);
  await group.close();
  const autumn = await openOwnGroup(folder, { now: () => earlierSampleClosed });
  await closeEarlierSample(autumn, WHO);
  await autumn.close();
}
