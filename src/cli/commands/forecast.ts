import { Command } from 'commander';
import { forecastAnswer } from '../../group/forecast-answer.js';
import { openGroup } from '../../group/index.js';
import { dayOption } from '../dates.js';
import { answer, type CommandContext } from '../face.js';
import { forecastText } from '../forecast-text.js';

export function forecastCommand(context: CommandContext): Command {
  const { word } = context;
  return new Command('forecast')
    .description(word('cli-forecast', {}))
    .option('--box <box>', word('cli-forecast-box', {}))
    .option('--as-of <date>', word('cli-forecast-as-of', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice forecast --as-of 2026-02-15' })}`)
    .action(async (options: { box?: string; asOf?: string }) => {
      const face = context.face();
      const asOf = dayOption('--as-of', options.asOf);
      const group = await openGroup(face.dataFolder);
      try {
        const forecast = await group.forecast({ box: options.box ?? null, asOf });
        const whole = forecastAnswer(forecast, face.language);
        answer(face, whole, () => forecastText(whole, face, options.box !== undefined));
      } finally {
        await group.close();
      }
    });
}
