import { Command } from 'commander';
import { approvePlan, liftingAnswer, liftingState, outcomes, outcomesAnswer } from '../../lifting/index.js';
import { words } from '../../words/index.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext } from '../face.js';
import { liftingText } from '../lifting-text.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

export function liftingCommand({ word, face }: CommandContext): Command {
  return new Command('lifting')
    .description(word('cli-lifting', {}))
    .option('--as-of <date>', word('cli-lifting-as-of', {}))
    .option('--approve', word('cli-lifting-approve', {}))
    .option('--outcome', word('cli-lifting-outcome', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice lifting --as-of 2026-06-01' })}`)
    .action(async (options: { asOf?: string; approve?: true; outcome?: true }) => {
      const here = face();
      const asOf = dayOption('--as-of', options.asOf);
      await withGroup(here, async (group) => {
        if (options.outcome === true) {
          const found = outcomesAnswer(await outcomes(group, asOf), here.language);
          answer(here, found, () =>
            found.outcomes.length === 0
              ? words(here.language, 'outcome-none', {})
              : found.outcomes
                  .map(({ found: what, said }) =>
                    [what, ...said.map(({ inWords }) => `  - ${inWords}`)].join('\n'),
                  )
                  .join('\n'),
          );
          return;
        }
        if (options.approve === true) await approvePlan(group, whoAmI(), Date.now());
        const plan = liftingAnswer(await liftingState(group, asOf), here.language);
        answer(here, plan, () => liftingText(plan, here));
      });
    });
}
