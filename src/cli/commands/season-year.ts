import { Command } from 'commander';
import { beginNext, closeSeason, lateChanges, nextSeason } from '../../reports/index.js';
import { isoInstant, say, words } from '../../words/index.js';
import { answer, type CommandContext } from '../face.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

/** Closes the season in force. */
export function closeCommand({ word, face }: CommandContext): Command {
  return new Command('close')
    .description(word('cli-season-close', {}))
    .option('--by <name>', word('cli-season-close-by', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice season close --by "the coordinator"' })}`,
    )
    .action(async ({ by }: { by?: string }) => {
      const here = face();
      const closed = await withGroup(here, (group) => closeSeason(group, whoAmI(), by?.trim() || null));
      answer(here, { ...closed, at: isoInstant(closed.at) }, () =>
        word('close-done', { season: closed.season }),
      );
    });
}

/** Closed seasons, oldest first. */
export function closedCommand({ word, face }: CommandContext): Command {
  return new Command('closed')
    .description(word('cli-season-closed', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice season closed' })}`)
    .action(async () => {
      const here = face();
      const closed = await withGroup(here, (group) => group.closedSeasons());
      answer(here, { closed: closed.map((one) => ({ ...one, at: isoInstant(one.at) })) }, () =>
        closed.length === 0
          ? word('close-listed-none', {})
          : closed
              .map(({ season, by, at }) =>
                word('close-listed', { season, by, day: isoInstant(at).slice(0, 10) }),
              )
              .join('\n'),
      );
    });
}

/** What came after a season was closed. */
export function lateCommand({ word, face }: CommandContext): Command {
  return new Command('late')
    .description(word('cli-season-late', {}))
    .argument('<season>', word('cli-season-id', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice season late 2024-2025' })}`)
    .action(async (season: string) => {
      const here = face();
      const { changes } = await withGroup(here, (group) => lateChanges(group, season));
      const sentences = changes.map((change) => say(here.language, change));
      answer(here, { season, changes: sentences }, () =>
        sentences.length === 0
          ? word('late-none', {})
          : [
              word('late-some', { changes: sentences.length }),
              ...sentences.map((line) => `  - ${line}`),
            ].join('\n'),
      );
    });
}

/** The next season from the closed one. */
export function nextCommand({ word, face }: CommandContext): Command {
  return new Command('next')
    .description(word('cli-season-next', {}))
    .option('--dry-run', word('cli-season-dry-run', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice season next --dry-run' })}`)
    .action(async ({ dryRun }: { dryRun?: true }) => {
      const here = face();
      const next = await withGroup(here, (group) =>
        dryRun ? nextSeason(group) : beginNext(group, whoAmI()),
      );
      const due = next.due.map((one) => say(here.language, one));
      answer(here, { ...next, due, applied: dryRun !== true }, () =>
        [
          words(here.language, dryRun ? 'next-preview' : 'next-made', { season: next.after }),
          words(here.language, 'next-carried', next.carried),
          words(here.language, 'next-left', next.left),
          ...(due.length === 0
            ? [words(here.language, 'next-nothing-due', {})]
            : due.map((line) => `  - ${line}`)),
          ...(dryRun ? ['', next.text] : []),
        ].join('\n'),
      );
    });
}
