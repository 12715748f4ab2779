import { Command } from 'commander';
import { dayOption } from '../dates.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

interface RecordOptions {
  readonly from?: string;
  readonly to?: string;
  readonly daily?: true;
}

export function recordCommand({ word, face }: CommandContext): Command {
  return new Command('record')
    .description(word('cli-record', {}))
    .argument('<station>', word('cli-record-station', {}))
    .option('--from <date>', word('cli-record-from', {}))
    .option('--to <date>', word('cli-record-to', {}))
    .option('--daily', word('cli-record-daily', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice record STATION --from 2025-11-01 --daily' })}`,
    )
    .action(async (station: string, options: RecordOptions) => {
      const here = face();
      const from = dayOption('--from', options.from);
      const to = dayOption('--to', options.to);
      await withGroup(here, async (group) => {
        const lines = group.record({ station, from, to, daily: options.daily === true });
        if (here.json) return answer(here, { station, csv: await joined(lines) }, () => '');
        for await (const line of lines) {
          if (!here.out.write(`${line}\n`)) await new Promise((resume) => here.out.once('drain', resume));
        }
      });
    });
}

async function joined(lines: AsyncIterable<string>): Promise<string> {
  let whole = '';
  for await (const line of lines) whole += `${line}\n`;
  return whole;
}
