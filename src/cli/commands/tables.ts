import { Command } from 'commander';
import { UnknownName } from '../../group/unknown-name.js';
import { answer, type CommandContext } from '../face.js';
import { tableList, tableWhole } from '../tables-text.js';
import { withGroup } from '../with-group.js';

export function tablesCommand({ word, face }: CommandContext): Command {
  return new Command('tables')
    .description(word('cli-tables', {}))
    .argument('[table]', word('cli-tables-table', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice tables atlantic-salmon' })}`)
    .action(async (id?: string) => {
      const here = face();
      const tables = await withGroup(here, (group) => group.tables());
      if (id === undefined) return answer(here, { tables }, () => tableList(tables, here.language));
      const table = tables.find((one) => one.id === id);
      if (table === undefined)
        throw new UnknownName({
          code: 'unknown-table',
          with: { table: id, tables: tables.map((one) => one.id) },
        });
      answer(here, { tables: [table] }, () => tableWhole(table, here));
    });
}
