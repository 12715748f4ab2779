import type { CommanderError } from 'commander';
import type { Remark } from '../../adapters/remark.js';
import type { CliWords } from './words.js';

/** The parser's own (English) complaint as one of our sentences. The name it complains of stands between quotes. */
export function refusalOfParser(error: CommanderError): Remark<CliWords> {
  const named = /'([^']*)'/.exec(error.message)?.[1] ?? '';
  switch (error.code) {
    case 'commander.unknownCommand':
      return { code: 'cli-unknown-command', with: { command: named } };
    case 'commander.unknownOption':
      return { code: 'cli-unknown-option', with: { option: named } };
    case 'commander.missingArgument':
    case 'commander.missingMandatoryOptionValue':
      return { code: 'cli-missing-argument', with: { argument: named } };
    case 'commander.optionMissingArgument':
      return { code: 'cli-missing-value', with: { option: named.split(/[ ,]/)[0] ?? named } };
    case 'commander.excessArguments':
      return { code: 'cli-too-many', with: {} };
    case 'commander.invalidArgument':
      return badValue(error.message);
    default:
      return { code: 'cli-failed', with: { message: error.message } };
  }
}

function badValue(message: string): Remark<CliWords> {
  const [, option = '', value = '', allowed = ''] =
    /^error: option '([^' ]*)[^']*' argument '([^']*)' is invalid\. Allowed choices are (.*)\.$/.exec(
      message,
    ) ?? [];
  return { code: 'cli-bad-value', with: { option, value, allowed } };
}
