import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { forecastAnswer } from '../../group/forecast-answer.js';
import { loadAnswer } from '../../group/load-answer.js';
import { loadSampleSeason, sampleWinterDay } from '../../group/sample-season.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { forecastText } from '../forecast-text.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

export function demoCommand({ word, face }: CommandContext): Command {
  return new Command('demo')
    .description(word('cli-demo', {}))
    .option('--exit', word('cli-demo-exit', {}))
    .option('--as-of <date>', word('cli-demo-as-of', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice demo --exit --as-of 2026-06-20' })}`)
    .action(async (options: { asOf?: string }) => {
      const here = face();
      const asOf = dayOption('--as-of', options.asOf) ?? sampleWinterDay;
      await inFolder(here, async (kept) => {
        const { loads, forecast } = await withGroup(kept, async (group) => ({
          loads: loadAnswer(await loadSampleSeason(group, whoAmI()), here.language).files,
          forecast: forecastAnswer(await group.forecast({ box: null, asOf }), here.language),
        }));
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
