import { Command, Option } from 'commander';
import { enterPutBack, enterTally, talliesAnswer } from '../../lifting/index.js';
import { foundWays } from '../../season/index.js';
import { isoDay, words } from '../../words/index.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext } from '../face.js';
import { talliesText } from '../lifting-text.js';
import { whoAmI } from '../who.js';
import { withGroup } from '../with-group.js';

interface Options {
  readonly empty?: string;
  readonly dead?: string;
  readonly alive?: string;
  readonly aliveEggs?: string;
  readonly date?: string;
  readonly part?: string;
  readonly counter?: string;
  readonly found?: string;
  readonly kind?: readonly string[];
  readonly silt?: string;
  readonly damage?: string;
  readonly note?: string;
  readonly putBack?: true;
  readonly countStands?: true;
  readonly entry?: string;
}

export function tallyCommand({ word, face }: CommandContext): Command {
  return new Command('tally')
    .description(word('cli-tally', {}))
    .argument('[box]', word('cli-tally-box', {}))
    .option('--empty <number>', word('cli-tally-empty', {}))
    .option('--dead <number>', word('cli-tally-dead', {}))
    .option('--alive <number>', word('cli-tally-alive', {}))
    .option('--alive-eggs <number>', word('cli-tally-alive-eggs', {}))
    .option('--date <date>', word('cli-tally-date', {}))
    .option('--part <part>', word('cli-tally-part', {}))
    .option('--counter <name>', word('cli-tally-counter', {}))
    .addOption(new Option('--found <how>', word('cli-tally-found', {})).choices([...foundWays]))
    .option('--kind <kinds...>', word('cli-tally-kind', {}))
    .option('--silt <mm>', word('cli-tally-silt', {}))
    .option('--damage <text>', word('cli-tally-damage', {}))
    .option('--note <text>', word('cli-tally-note', {}))
    .option('--put-back', word('cli-tally-put-back', {}))
    .option('--count-stands', word('cli-tally-stands', {}))
    .option('--entry <name>', word('cli-tally-entry', {}))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice tally U1 --empty 412 --dead 80 --alive 0' })}`,
    )
    .action(async (box: string | undefined, options: Options) => {
      const here = face();
      dayOption('--date', options.date);
      await withGroup(here, async (group) => {
        if (box === undefined) {
          const all = talliesAnswer(await group.season(), here.language);
          answer(here, all, () => talliesText(all, here));
          return;
        }
        const when = options.date ?? isoDay(await group.today());
        const enter = options.putBack === true ? enterPutBack : enterTally;
        const { fresh } = await enter(group, entered(box, when, options), whoAmI());
        const code =
          options.putBack === true ? 'tally-put-back-kept' : fresh ? 'tally-kept' : 'tally-kept-before';
        const all = talliesAnswer(await group.season(), here.language);
        const mine = all.tallies.filter((one) => one.box === box);
        answer(here, { kept: fresh, ...all, tallies: mine }, () =>
          [
            words(here.language, code, { box }),
            ...(options.putBack === true ? [] : (mine.at(-1)?.remarks ?? [])),
          ].join(' '),
        );
      });
    });
}

/** The options as a season file would state them. */
function entered(box: string, when: string, options: Options): Record<string, unknown> {
  const { empty, dead, alive, aliveEggs, note, entry, counter } = options;
  const both = { box, when, empty, dead, alive, aliveEggs, note, entry };
  const stated =
    options.putBack === true
      ? { ...both, who: counter }
      : {
          ...both,
          counter,
          part: options.part,
          found: options.found,
          siltMm: options.silt,
          damage: options.damage,
          ...(options.countStands === true ? { countStands: true } : {}),
          ...(options.kind === undefined ? {} : { kinds: kindsOf(options.kind) }),
        };
  return Object.fromEntries(Object.entries(stated).filter(([, value]) => value !== undefined));
}

function kindsOf(kinds: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    kinds.map((one) => {
      const [kind, ...number] = one.split('=');
      return [kind, number.join('=')] as const;
    }),
  );
}
