import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Command } from 'commander';
import {
  type EarlierField,
  EarlierRefused,
  earlierFields,
  isEarlierField,
  keepEarlier,
  readEarlier,
  withdrawEarlier,
} from '../../earlier/index.js';
import { readSheet } from '../../http/received/workbook.js';
import { answer, type CommandContext } from '../face.js';
import { CommandRefused } from '../refused.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

/** Plantings and tallies of past seasons, from a table. */
export function earlierCommand(context: CommandContext): Command {
  return new Command('earlier')
    .description(context.word('cli-earlier', {}))
    .addHelpText(
      'after',
      `\n${context.word('cli-example', { command: 'underice earlier load plantings.xlsx --dry-run' })}`,
    )
    .addCommand(loadCommand(context))
    .addCommand(listCommand(context))
    .addCommand(withdrawCommand(context));
}

function loadCommand({ word, face }: CommandContext): Command {
  return new Command('load')
    .description(word('cli-earlier-load', {}))
    .argument('<file>', word('cli-field-file', {}))
    .option('--column <field=header...>', word('cli-earlier-column', {}))
    .option('--sheet <name>', word('cli-earlier-sheet', {}))
    .option('--dry-run', word('cli-earlier-dry-run', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice earlier load plantings.xlsx --column eggs="No. of eggs" --dry-run' })}`,
    )
    .action(async (file: string, options: { column?: string[]; sheet?: string; dryRun?: true }) => {
      const here = face();
      const table = readEarlier(await tableText(file, options.sheet ?? null), asked(options.column ?? []));
      const { boxes, columns } = table;
      const id = options.dryRun
        ? null
        : await withGroup(here, (group) => keepEarlier(group, basename(file), table, whoAmI()));
      answer(here, { id, columns, boxes }, () =>
        [
          word('cli-earlier-understood', {
            file,
            boxes: boxes.length,
            seasons: [...new Set(boxes.flatMap(({ season }) => season ?? []))],
            columns: earlierFields.flatMap((field) =>
              columns[field] === null ? [] : [`${columns[field]} → ${field}`],
            ),
          }),
          id === null ? word('cli-earlier-not-kept', {}) : word('cli-earlier-kept', { id }),
        ].join('\n'),
      );
    });
}

/** Text of a CSV file, or of a sheet of a workbook. */
async function tableText(file: string, sheet: string | null): Promise<string> {
  const unreadable = () => new CommandRefused({ code: 'cli-file-unreadable', with: { file } });
  if (/\.xlsx$/i.test(file)) {
    const read = await readSheet(file, sheet).catch(() => {
      throw unreadable();
    });
    if (read.kind === 'no-sheet') throw unreadable();
    return read.text;
  }
  const bytes = await readFile(file).catch(() => {
    throw unreadable();
  });
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes, { stream: true });
  }
}

function asked(columns: readonly string[]): Partial<Record<EarlierField, string>> {
  const pairs = columns.map((column): [EarlierField, string] => {
    const [field = '', ...header] = column.split('=');
    if (!isEarlierField(field))
      throw new EarlierRefused({ code: 'earlier-no-field', with: { field, fields: earlierFields } });
    return [field, header.join('=')];
  });
  return Object.fromEntries(pairs);
}

function listCommand({ word, face }: CommandContext): Command {
  return new Command('list')
    .description(word('cli-earlier-list', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice earlier list' })}`)
    .action(async () => {
      const here = face();
      const { earlier } = await withGroup(here, (group) => group.season());
      answer(here, { earlier }, () =>
        earlier.length === 0
          ? word('cli-earlier-none', {})
          : earlier
              .map(({ id, file, boxes }) => word('cli-earlier-line', { id, file, boxes: boxes.length }))
              .join('\n'),
      );
    });
}

function withdrawCommand({ word, face }: CommandContext): Command {
  return new Command('withdraw')
    .description(word('cli-earlier-withdraw', {}))
    .argument('<id>', word('cli-earlier-id', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice earlier withdraw 3f0c9a7112bd' })}`)
    .action(async (id: string) => {
      const here = face();
      await withGroup(here, (group) => withdrawEarlier(group, id, whoAmI()));
      answer(here, { id }, () => word('cli-earlier-withdrawn', { id }));
    });
}
