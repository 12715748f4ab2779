import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { Command, Option } from 'commander';
import { folderOf, openOwnGroup } from '../../group/index.js';
import { ServiceConnection } from '../../group/service-connection.js';
import { type Role, roles } from '../../http/roles.js';
import type { AccountRow } from '../../http/sign-in/accounts.js';
import type { AccountsCall } from '../../http/sign-in/change-accounts.js';
import { readOwner } from '../../store/owner.js';
import { isoInstant, words } from '../../words/index.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { columns } from '../terminal-table.js';
import { whoAmI } from '../who.js';

export function accountCommand(context: CommandContext): Command {
  return new Command('account')
    .description(context.word('cli-account', {}))
    .addHelpText(
      'after',
      `\n${context.word('cli-example', { command: 'underice account add Robin --role crew' })}`,
    )
    .addCommand(addCommand(context))
    .addCommand(listCommand(context))
    .addCommand(removeCommand(context));
}

function addCommand({ word, face }: CommandContext): Command {
  return new Command('add')
    .description(word('cli-account-add', {}))
    .argument('<name>', word('cli-account-name', {}))
    .addOption(
      new Option('--role <role>', word('cli-account-role', {})).choices([...roles]).default('coordinator'),
    )
    .addHelpText('after', `\n${word('cli-example', { command: 'underice account add Robin --role crew' })}`)
    .action(async (name: string, { role }: { role: Role }) => {
      const here = face();
      const password = await askPassword(here);
      const accounts = await change(here, { do: 'add', name, role, password, who: whoAmI() });
      answer(here, shown(accounts), () => word('cli-account-added', { name, role }));
    });
}

function listCommand({ word, face }: CommandContext): Command {
  return new Command('list')
    .description(word('cli-account-list', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice account list' })}`)
    .action(async () => {
      const here = face();
      const accounts = await change(here, { do: 'list' });
      answer(here, shown(accounts), () =>
        accounts.length === 0
          ? word('cli-account-none', {})
          : columns(
              [word('column-name', {}), word('column-role', {}), word('column-made', {})],
              accounts.map(({ name, role, made }) => [
                name,
                word(`http-role-${role}`, {}),
                isoInstant(made).slice(0, 10),
              ]),
            ),
      );
    });
}

function removeCommand({ word, face }: CommandContext): Command {
  return new Command('remove')
    .description(word('cli-account-remove', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice account remove Robin' })}`)
    .argument('<name>', word('cli-account-name', {}))
    .action(async (name: string) => {
      const here = face();
      const accounts = await change(here, { do: 'remove', name, who: whoAmI() });
      answer(here, shown(accounts), () => word('cli-account-removed', { name }));
    });
}

/** Through the service where one runs; else in the folder itself, held for as long as it takes. */
async function change(here: Face, call: AccountsCall): Promise<readonly AccountRow[]> {
  const folder = folderOf(here.dataFolder);
  const owner = readOwner(folder);
  const service = owner === null ? null : await ServiceConnection.to(owner);
  if (service !== null) return service.ask('/owner/accounts', call);
  const [{ Accounts }, { changeAccounts }] = await Promise.all([
    import('../../http/sign-in/accounts.js'),
    import('../../http/sign-in/change-accounts.js'),
  ]);
  const group = await openOwnGroup(folder);
  try {
    return await changeAccounts(new Accounts(group.folder, 1), call);
  } finally {
    await group.close();
  }
}

function shown(accounts: readonly AccountRow[]) {
  return { accounts: accounts.map((row) => ({ ...row, made: isoInstant(row.made) })) };
}

/** Asked for without showing it, or the first line of standard input. */
async function askPassword(here: Face): Promise<string> {
  const terminal = process.stdin.isTTY === true;
  if (terminal) here.err.write(words(here.language, 'cli-account-password', {}));
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  const lines = createInterface({ input: process.stdin, output: silent, terminal });
  try {
    for await (const line of lines) return line;
    return '';
  } finally {
    lines.close();
    if (terminal) here.err.write('\n');
  }
}
