import { Command } from 'commander';
import { readLayout, type SavedLayout } from '../../../adapters/layouts-saved.js';
import { dropLayout, saveLayout } from '../../group/layouts.js';
import { answer, type CommandContext } from '../face.js';
import { readTextFile } from '../files.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

export function layoutsCommand(context: CommandContext): Command {
  return new Command('layouts')
    .description(context.word('cli-layouts', {}))
    .addHelpText('after', `\n${context.word('cli-example', { command: 'underice layouts --json' })}`)
    .addCommand(listCommand(context), { isDefault: true })
    .addCommand(keepCommand(context))
    .addCommand(removeCommand(context));
}

function listCommand({ word, face }: CommandContext): Command {
  return new Command('list')
    .description(word('cli-layouts-list', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice layouts --json' })}`)
    .action(async () => {
      const here = face();
      const { layouts } = await withGroup(here, (group) => group.season());
      answer(here, { layouts }, () =>
        layouts.length === 0
          ? word('cli-layouts-none', {})
          : layouts.map((layout) => `${layout.name}: ${knownBy(layout, word)}`).join('\n'),
      );
    });
}

function keepCommand({ word, face }: CommandContext): Command {
  return new Command('keep')
    .description(word('cli-layouts-keep', {}))
    .argument('<file>', word('cli-layouts-file', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice layouts keep upper.json' })}`)
    .action(async (file: string) => {
      const here = face();
      const layout = readLayout(await readTextFile(file));
      const { layouts } = await withGroup(here, (group) => saveLayout(group, layout, whoAmI()));
      answer(here, { layouts }, () => word('cli-layouts-kept', { layout: layout.name }));
    });
}

function removeCommand({ word, face }: CommandContext): Command {
  return new Command('remove')
    .description(word('cli-layouts-remove', {}))
    .argument('<name>', word('cli-layouts-name', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice layouts remove "Upper boxes"' })}`)
    .action(async (name: string) => {
      const here = face();
      const { layouts } = await withGroup(here, (group) => dropLayout(group, name, whoAmI()));
      answer(here, { layouts }, () => word('cli-layouts-removed', { layout: name }));
    });
}

function knownBy({ match }: SavedLayout, word: CommandContext['word']): string {
  if ('header' in match) return word('cli-layouts-header', { headers: match.header });
  if ('opening' in match) return word('cli-layouts-opening', { opening: match.opening });
  return word('cli-layouts-file-name', { part: match.fileName });
}
