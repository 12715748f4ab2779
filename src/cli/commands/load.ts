import { Command, Option } from 'commander';
import { saveLayoutOf } from '../../group/layouts.js';
import { loadAnswer } from '../../group/load-answer.js';
import { answer, type CommandContext } from '../face.js';
import { loadText } from '../load-text.js';
import { loadingBar } from '../progress.js';
import { CommandRefused } from '../refused.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

interface LoadOptions {
  readonly station?: string;
  readonly zone?: string;
  readonly unit?: 'C' | 'F' | 'K';
  readonly column?: string;
  readonly dateOrder?: 'ymd' | 'dmy' | 'mdy';
  readonly createStations?: true;
  readonly dryRun?: true;
  readonly keepLayout?: string;
}

export function loadCommand({ word, face, end }: CommandContext): Command {
  return new Command('load')
    .description(word('cli-load', {}))
    .argument('<file...>', word('cli-load-file', {}))
    .option('--station <station>', word('cli-load-station', {}))
    .option('--zone <zone>', word('cli-load-zone', {}))
    .addOption(new Option('--unit <unit>', word('cli-load-unit', {})).choices(['C', 'F', 'K']))
    .option('--column <header>', word('cli-load-column', {}))
    .addOption(
      new Option('--date-order <order>', word('cli-load-date-order', {})).choices(['ymd', 'dmy', 'mdy']),
    )
    .option('--create-stations', word('cli-load-create', {}))
    .option('--dry-run', word('cli-load-dry-run', {}))
    .option('--keep-layout <name>', word('cli-load-keep-layout', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice load download.csv --station upper --zone UTC-03:30' })}`,
    )
    .action(async (files: string[], options: LoadOptions) => {
      const here = face();
      const { createStations, dryRun, keepLayout, ...asked } = options;
      if (keepLayout !== undefined && files.length > 1)
        throw new CommandRefused({ code: 'cli-load-one-layout', with: {} });
      const bar = loadingBar(here, files.length);
      const outcomes = await withGroup(here, async (group) => {
        const loaded = await group.load({
          files: files.map((path) => ({ path })),
          asked,
          createStations: createStations === true,
          dryRun: dryRun === true,
          who: whoAmI(),
          progress: bar.step,
        });
        const [only] = loaded;
        if (keepLayout !== undefined && dryRun !== true && only?.refused === null)
          await saveLayoutOf(group, keepLayout, only, asked, whoAmI());
        return loaded;
      }).finally(bar.stop);
      const whole = loadAnswer(outcomes, here.language);
      const kept =
        keepLayout === undefined || dryRun === true || outcomes[0]?.refused !== null
          ? ''
          : `\n${word('cli-layouts-kept', { layout: keepLayout })}`;
      answer(here, whole, () => `${loadText(whole, here)}${kept}`);
      // A refused input (2) says more than a failure (1): both are told, the refusal decides.
      end(outcomes.reduce<0 | 1 | 2>((worst, { refused }) => worse(worst, refused?.exit ?? 0), 0));
    });
}

function worse(one: 0 | 1 | 2, other: 0 | 1 | 2): 0 | 1 | 2 {
  return one > other ? one : other;
}
