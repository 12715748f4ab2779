import { CommanderError } from 'commander';
import { say, words } from '../words/index.js';
import { isRefusal, sayRefusal } from '../words/refusals.js';
import type { Stream } from './face.js';
import { chooseLanguage } from './language.js';
import { refusalOfParser } from './parser-words.js';
import { buildProgram } from './program.js';

/**
 * Runs one command line and gives its exit status: 0 done, 1 failed, 2 input refused or a question to answer.
 * Refusals go to `err` in one or two sentences, in the person's language; never a stack trace.
 */
export async function run(
  args: readonly string[],
  env: NodeJS.ProcessEnv,
  out: Stream,
  err: Stream,
): Promise<number> {
  const language = chooseLanguage(args, env);
  const ending = { status: 0 };
  const program = buildProgram({ language, env, out, err, end: (status) => (ending.status = status) });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return ending.status;
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode === 0 || error.code === 'commander.help')
        return error.code === 'commander.help' ? 2 : 0;
      err.write(`${say(language, refusalOfParser(error))}\n`);
      return 2;
    }
    if (isRefusal(error)) {
      err.write(`${sayRefusal(language, error)}\n`);
      return error.exit;
    }
    const message = error instanceof Error ? error.message.split('\n', 1)[0] : String(error);
    err.write(`${words(language, 'cli-failed', { message })}\n`);
    return 1;
  }
}
