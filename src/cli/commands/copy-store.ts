import { Command, Option } from 'commander';
import type { StoreKind } from '../../store/index.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

export function copyStoreCommand({ word, face }: CommandContext): Command {
  return new Command('copy-store')
    .description(word('cli-copy-store', {}))
    .addOption(
      new Option('--to <store>', word('cli-copy-store-to', {}))
        .choices(['embedded', 'influx'])
        .makeOptionMandatory(),
    )
    .addHelpText('after', `\n${word('cli-example', { command: 'underice copy-store --to influx' })}`)
    .action(async ({ to }: { to: StoreKind }) => {
      const here = face();
      const copied = await withGroup(here, (group) => group.copyStore(to), { asItStands: true });
      answer(here, copied, () => word('cli-copied-store', copied));
    });
}
