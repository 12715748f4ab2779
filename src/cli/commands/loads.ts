import { Command } from 'commander';
import { loadsAnswer } from '../../group/load-answer.js';
import { whole, words } from '../../words/index.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { columns } from '../terminal-table.js';
import { withGroup } from '../with-group.js';

export function loadsCommand({ word, face }: CommandContext): Command {
  return new Command('loads')
    .description(word('cli-loads', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice loads' })}`)
    .action(async () => {
      const here = face();
      const rows = loadsAnswer(await withGroup(here, (group) => group.loads()));
      answer(here, rows, () => loadsText(rows.loads, here));
    });
}

function loadsText(rows: ReturnType<typeof loadsAnswer>['loads'], { language }: Face): string {
  if (rows.length === 0) return words(language, 'cli-loads-none', {});
  const head = (
    ['column-load', 'column-when', 'column-readings', 'column-stations', 'column-file'] as const
  ).map((code) => words(language, code, {}));
  return columns(
    [...head, ''],
    rows.map((row) => [
      row.load,
      row.at.slice(0, 16).replace('T', ' '),
      whole(language, row.readings),
      row.stations.length > 3
        ? `${row.stations.slice(0, 3).join(', ')} … (${row.stations.length})`
        : row.stations.join(', '),
      row.file,
      row.withdrawn === null
        ? ''
        : words(language, 'cli-loads-withdrawn', { at: row.withdrawn.slice(0, 10) }),
    ]),
    [2],
  );
}
