import { resolve } from 'node:path';
import { Command } from 'commander';
import { folderOf } from '../../group/index.js';
import { restoreFolder } from '../../store/index.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

export function restoreCommand({ word, face }: CommandContext): Command {
  return new Command('restore')
    .description(word('cli-restore', {}))
    .argument('<backup>', word('cli-restore-from', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice restore /media/stick/2026-02-15.underice --data new-folder' })}`,
    )
    .action(async (backup: string) => {
      const here = face();
      const folder = await restoreFolder(resolve(backup), folderOf(here.dataFolder));
      const { loads } = await withGroup(here, (group) => group.verify(), { asItStands: true });
      answer(here, { folder, loads }, () => word('cli-restored', { folder, loads }));
    });
}
