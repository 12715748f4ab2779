import { Command } from 'commander';
import { spellsAnswer } from '../../spells/answers.js';
import { beginOfDay } from '../../spells/days.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext } from '../face.js';
import { spellsText } from '../spells-text.js';
import { withGroup } from '../with-group.js';

export function spellsCommand({ word, face }: CommandContext): Command {
  return new Command('spells')
    .description(word('cli-spells', {}))
    .option('--box <id>', word('cli-spells-box', {}))
    .option('--since <date>', word('cli-spells-since', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice spells --since 2026-01-31' })}`)
    .action(async (options: { box?: string; since?: string }) => {
      const here = face();
      const day = dayOption('--since', options.since);
      await withGroup(here, async (group) => {
        const { zone } = (await group.season()).group;
        const since = day === null ? null : beginOfDay(day, zone);
        const rows = await group.spells({ box: options.box ?? null, since });
        answer(here, spellsAnswer(rows), () => spellsText(rows, zone, here));
      });
    });
}
