import { Command } from 'commander';
import { speech } from '../../pages/speech.js';
import { seasonReport, survivalSentences } from '../../reports/index.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

/** What survived, and what the numbers can tell. */
export function survivalCommand({ word, face }: CommandContext): Command {
  return new Command('survival')
    .description(word('cli-survival', {}))
    .option('--season <season>', word('cli-report-season', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice survival --season 2024-2025' })}`)
    .action(async ({ season }: { season?: string }) => {
      const here = face();
      const { figures, season: id } = await withGroup(here, (group) => seasonReport(group, season ?? null));
      const sentences = survivalSentences(figures.survival, speech(here.language));
      answer(here, { season: id, inWords: sentences, ...figures.survival }, () => sentences.join('\n'));
    });
}
