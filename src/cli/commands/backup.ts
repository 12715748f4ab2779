import { resolve } from 'node:path';
import { Command } from 'commander';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

export function backupCommand({ word, face }: CommandContext): Command {
  return new Command('backup')
    .description(word('cli-backup', {}))
    .argument('<file>', word('cli-backup-file', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice backup /media/stick/2026-02-15.underice' })}`,
    )
    .action(async (file: string) => {
      const here = face();
      const made = await withGroup(here, (group) => group.backup(resolve(file)));
      answer(here, made, () => word('cli-backup-made', made));
    });
}
