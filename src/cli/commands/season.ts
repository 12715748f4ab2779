import { Command } from 'commander';
import { say } from '../../words/index.js';
import { answer, type CommandContext } from '../face.js';
import { readTextFile } from '../files.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';
import { closeCommand, closedCommand, lateCommand, nextCommand } from './season-year.js';

export function seasonCommand(context: CommandContext): Command {
  return new Command('season')
    .description(context.word('cli-season', {}))
    .addHelpText(
      'after',
      `\n${context.word('cli-example', { command: 'underice season apply season.yaml --dry-run' })}`,
    )
    .addCommand(applyCommand(context))
    .addCommand(exportCommand(context))
    .addCommand(closeCommand(context))
    .addCommand(closedCommand(context))
    .addCommand(lateCommand(context))
    .addCommand(nextCommand(context));
}

function applyCommand({ word, face }: CommandContext): Command {
  return new Command('apply')
    .description(word('cli-season-apply', {}))
    .argument('<file>', word('cli-season-file', {}))
    .option('--dry-run', word('cli-season-dry-run', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice season apply season.yaml --dry-run' })}`,
    )
    .action(async (file: string, { dryRun }: { dryRun?: true }) => {
      const here = face();
      const text = await readTextFile(file);
      const changes = await withGroup(here, (group) =>
        dryRun ? group.previewSeason(text, file) : group.applySeason(text, file, whoAmI()),
      );
      const sentences = changes.map((change) => say(here.language, change));
      answer(here, { applied: !dryRun, changes: sentences }, () =>
        [
          ...(changes.length === 0
            ? [word('cli-season-same', {})]
            : [
                word('cli-season-changes', { count: changes.length }),
                ...sentences.map((line) => `  - ${line}`),
              ]),
          ...(changes.length === 0
            ? []
            : [word(dryRun ? 'cli-season-not-applied' : 'cli-season-applied', {})]),
        ].join('\n'),
      );
    });
}

function exportCommand({ word, face }: CommandContext): Command {
  return new Command('export')
    .description(word('cli-season-export', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice season export > season.yaml' })}`)
    .action(async () => {
      const here = face();
      if (here.json) answer(here, await withGroup(here, (group) => group.season()), () => '');
      else here.out.write(await withGroup(here, (group) => group.seasonText()));
    });
}
