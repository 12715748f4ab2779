import { spawnSync } from 'node:child_process';

/**
 * What R answers to a program whose last lines print numbers with `say(…)`, one list a line.
 *
 * @throws where R is not installed: these tests compare with it and cannot do without.
 */
export function askR(program: string): readonly number[][] {
  const say = 'say <- function(x) cat(formatC(x, digits = 15, format = "g"), "\\n")\n';
  const asked = spawnSync('Rscript', ['--vanilla', '-'], { input: `${say}${program}\n`, encoding: 'utf8' });
  if (asked.error !== undefined)
    throw new Error('R is not installed here: on Debian or Ubuntu `apt-get install r-base-core` brings it.');
  if (asked.status !== 0) throw new Error(`R refused: ${asked.stderr}`);
  const lines = asked.stdout.trim().split('\n');
  return lines.map((line) => line.trim().split(/\s+/).map(Number));
}

/** Numbers as R writes a vector. */
export const vector = (values: Iterable<number>): string => `c(${[...values].join(', ')})`;
