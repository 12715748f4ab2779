import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import type { DayNumber } from '../../../forecasting/units.js';
import { forecastAnswer } from '../../group/forecast-answer.js';
import { folderOf } from '../../group/index.js';
import { loadAnswer } from '../../group/load-answer.js';
import { closeEarlierSample, earlierSampleClosed } from '../../group/sample-earlier.js';
import { loadSampleSeason, sampleWinterDay } from '../../group/sample-season.js';
import { longDay, words } from '../../words/index.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { forecastText } from '../forecast-text.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';
import { type ServeOptions, serveUntilTold, settingsFor, withServeOptions } from './serve.js';

export function demoCommand({ word, face }: CommandContext): Command {
  return withServeOptions(new Command('demo'), word)
    .description(word('cli-demo', {}))
    .option('--exit', word('cli-demo-exit', {}))
    .option('--as-of <date>', word('cli-demo-as-of', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice demo --exit --as-of 2026-06-20' })}`)
    .action(async (options: ServeOptions & { readonly asOf?: string; readonly exit?: true }) => {
      const here = face();
      const asOf = dayOption('--as-of', options.asOf) ?? sampleWinterDay;
      await inFolder(here, async (kept) => {
        const outcomes = await withGroup(kept, (group) => loadSampleSeason(group, whoAmI()));
        const loads = loadAnswer(outcomes, here.language).files;
        // Closed as of its own autumn: a report of it is not made a year later.
        await withGroup(kept, (group) => closeEarlierSample(group, whoAmI()), {
          now: () => earlierSampleClosed,
        });
        const forecast = await withGroup(kept, async (group) =>
          forecastAnswer(await group.forecast({ box: null, asOf }), here.language),
        );
        if (options.exit !== true) return serveSample(here, kept, options, asOf);
        const readings = loads
          .flatMap(({ stations }) => stations)
          .reduce((sum, one) => sum + one.readings, 0);
        const folder = kept.dataFolder ?? '';
        answer(here, forecast, () =>
          [
            word('cli-demo-intro', { loads: loads.length, readings, folder }),
            forecastText(forecast, here, false),
            ...(here.dataOption === null ? [word('cli-demo-throwaway', {})] : []),
          ].join('\n\n'),
        );
      });
    });
}

/** The sample season's pages, as of the day the demo is shown at, until told to end. */
async function serveSample(here: Face, kept: Face, options: ServeOptions, asOf: DayNumber): Promise<void> {
  const folder = folderOf(kept.dataFolder);
  const inForce = settingsFor(folder, options);
  const date = longDay(here.language, asOf);
  if (!here.json) here.out.write(`${words(here.language, 'cli-demo-serve', { date })}\n`);
  await serveUntilTold(here, folder, inForce, asOf);
}

/** The folder named with --data, else one that is thrown away afterwards: never the one the group works in. */
async function inFolder(here: Face, work: (kept: Face) => Promise<void>): Promise<void> {
  if (here.dataOption !== null) return work(here);
  const folder = await mkdtemp(join(tmpdir(), 'underice-demo-'));
  try {
    await work({ ...here, dataFolder: folder });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
