import { Command } from 'commander';
import type { StationFinding } from '../../group/index.js';
import { findingAnswer } from '../../quality/index.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { paragraph } from '../terminal-table.js';
import { withGroup } from '../with-group.js';

export function checksCommand({ word, face }: CommandContext): Command {
  return new Command('checks')
    .description(word('cli-checks', {}))
    .argument('[station]', word('cli-checks-station', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice checks upper' })}`)
    .action(async (station?: string) => {
      const here = face();
      const { found, zone } = await withGroup(here, async (group) => {
        const stations =
          station === undefined ? (await group.stations()).map((row) => row.station) : [station];
        const all: StationFinding[] = [];
        for (const id of stations) all.push(...(await group.findings(id)));
        return { found: all, zone: (await group.season()).group.zone };
      });
      const findings = found.map((one) => findingAnswer(one, here.language));
      answer(here, { findings }, () =>
        found.length === 0
          ? word('quality-none', {})
          : found.map((one, i) => lines(one, findings[i].explained, zone, word, here)).join('\n\n'),
      );
    });
}

function lines(
  { station, kind, flag, from, to, offer, ruling }: StationFinding,
  explained: string,
  zone: string,
  word: CommandContext['word'],
  here: Face,
): string {
  return [
    `${station}: ${word(`check-${kind}`, {})} (${word('quality-flag', { flag })})`,
    `  ${word('quality-span', { from, to, zone })}`,
    ...[
      explained,
      ...(offer === null ? [] : [word('quality-offer', offer)]),
      ...(ruling === null ? [] : [word('quality-ruled', { ...ruling, at: Date.parse(ruling.at), zone })]),
    ].map((text) => paragraph(text, here.columns, '  ')),
  ].join('\n');
}
