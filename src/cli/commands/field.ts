import { readFile } from 'node:fs/promises';
import { Command } from 'commander';
import {
  entryCautions,
  FieldRefused,
  keepPhotograph,
  readBatch,
  receiveEntries,
  settleEntry,
  whyWaiting,
} from '../../field/index.js';
import { say } from '../../words/index.js';
import { sayRefusal } from '../../words/refusals.js';
import { answer, type CommandContext } from '../face.js';
import { readTextFile } from '../files.js';
import { CommandRefused } from '../refused.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

/** Entries from the field, sent and settled from a terminal as the phone and the pages do. */
export function fieldCommand(context: CommandContext): Command {
  return new Command('field')
    .description(context.word('cli-field', {}))
    .addHelpText('after', `\n${context.word('cli-example', { command: 'underice field list' })}`)
    .addCommand(sendCommand(context))
    .addCommand(listCommand(context))
    .addCommand(settleCommand(context))
    .addCommand(photoCommand(context));
}

function sendCommand({ word, face, end }: CommandContext): Command {
  return new Command('send')
    .description(word('cli-field-send', {}))
    .argument('<file>', word('cli-field-file', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice field send entries.json' })}`)
    .action(async (file: string) => {
      const here = face();
      const batch = readBatch(parsed(await readTextFile(file)));
      const { receipts, cautions } = await withGroup(here, async (group) => {
        const receipts = await receiveEntries(group, batch, whoAmI(), Date.now());
        const [season, tables] = [await group.season(), await group.tables()];
        return { receipts, cautions: batch.entries.map((sent) => entryCautions(season, tables, sent)) };
      });
      const entries = receipts.map(({ id, state, became, refusal }, i) => ({
        id,
        state,
        became,
        why: refusal === null ? null : sayRefusal(here.language, refusal),
        cautions: (cautions[i] ?? []).map((caution) => say(here.language, caution)),
      }));
      const of = (state: string) => entries.filter((one) => one.state === state).length;
      answer(here, { entries }, () =>
        [
          word('cli-field-received', {
            taken: of('taken'),
            waiting: of('waiting'),
            before: of('before'),
          }),
          ...entries.flatMap(({ id, state, became, why, cautions }) => [
            word('cli-field-line', { id, state, what: why ?? became ?? '' }),
            ...cautions.map((caution) => `  ${caution}`),
          ]),
        ].join('\n'),
      );
      if (of('waiting') > 0) end(2);
    });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new FieldRefused({ code: 'field-not-a-batch', with: { places: ['JSON'] } });
  }
}

function listCommand({ word, face }: CommandContext): Command {
  return new Command('list')
    .description(word('cli-field-list', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice field list' })}`)
    .action(async () => {
      const here = face();
      const season = await withGroup(here, (group) => group.season());
      const entries = season.entries.map((entry) => {
        const refusal = entry.state === 'waiting' ? whyWaiting(season, entry, Date.now()) : null;
        return { ...entry, why: refusal === null ? null : sayRefusal(here.language, refusal) };
      });
      const waiting = entries.filter(({ state }) => state === 'waiting');
      answer(here, { entries }, () =>
        waiting.length === 0
          ? word('cli-field-none-waiting', {})
          : waiting
              .map(({ id, kind, why }) => word('cli-field-line', { id, state: kind, what: why ?? '' }))
              .join('\n'),
      );
    });
}

function settleCommand({ word, face }: CommandContext): Command {
  return new Command('settle')
    .description(word('cli-field-settle', {}))
    .argument('<id>', word('cli-field-id', {}))
    .option('--leave', word('cli-field-leave', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice field settle 3f0c9a71 --leave' })}`)
    .action(async (id: string, { leave }: { leave?: true }) => {
      const here = face();
      const how = leave === true ? ('leave' as const) : { take: null };
      await withGroup(here, (group) => settleEntry(group, id, how, whoAmI(), Date.now()));
      answer(here, { id, settled: leave === true ? 'left' : 'taken' }, () =>
        word('cli-field-settled', { id }),
      );
    });
}

function photoCommand({ word, face }: CommandContext): Command {
  return new Command('photo')
    .description(word('cli-field-photo', {}))
    .argument('<file>', word('cli-field-file', {}))
    .option('--keep-position', word('cli-field-position', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice field photo boulder.jpg' })}`)
    .action(async (file: string, { keepPosition }: { keepPosition?: true }) => {
      const here = face();
      const bytes = await readFile(file).catch(() => {
        throw new CommandRefused({ code: 'cli-file-unreadable', with: { file } });
      });
      const photograph = await withGroup(here, (group) =>
        keepPhotograph(group.folder, bytes, keepPosition === true),
      );
      answer(here, { photograph }, () => photograph);
    });
}
