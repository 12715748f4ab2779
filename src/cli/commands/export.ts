import { resolve } from 'node:path';
import { Command } from 'commander';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

export function exportAllCommand({ word, face }: CommandContext): Command {
  return new Command('export')
    .description(word('cli-export', {}))
    .argument('<folder>', word('cli-export-folder', {}))
    .requiredOption('--all', word('cli-export-all', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice export --all our-river-2026' })}`)
    .action(async (folder: string) => {
      const here = face();
      const made = await withGroup(here, (group) => group.exportAll(resolve(folder)));
      answer(here, made, () => word('cli-exported', made));
    });
}
