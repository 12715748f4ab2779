import { Command } from 'commander';
import { say } from '../../words/index.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

export function verifyCommand({ word, face, end }: CommandContext): Command {
  return new Command('verify')
    .description(word('cli-verify', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice verify' })}`)
    .action(async () => {
      const here = face();
      const { loads, readings, seasons, findings } = await withGroup(here, (group) => group.verify());
      const sentences = findings.map((finding) => say(here.language, finding));
      answer(here, { whole: findings.length === 0, loads, readings, seasons, findings: sentences }, () =>
        findings.length === 0
          ? word('cli-verified', { loads, readings })
          : [
              word('cli-verify-found', { count: findings.length }),
              ...sentences.map((sentence) => `  - ${sentence}`),
            ].join('\n'),
      );
      if (findings.length > 0) end(1);
    });
}
