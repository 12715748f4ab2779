import { Command } from 'commander';
import { loadsAnswer } from '../../group/load-answer.js';
import { answer, type CommandContext } from '../face.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

export function withdrawCommand({ word, face }: CommandContext): Command {
  return new Command('withdraw')
    .description(word('cli-withdraw', {}))
    .argument('<load>', word('cli-withdraw-load', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice withdraw 3' })}`)
    .action(async (load: string) => {
      const here = face();
      const row = await withGroup(here, (group) => group.withdraw(load, whoAmI()));
      answer(here, loadsAnswer([row]), () => word('cli-withdrawn', { load: row.load, file: row.file }));
    });
}
