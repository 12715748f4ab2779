import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

const command = new URL('../../dist/src/cli/main.js', import.meta.url).pathname;

export interface Said {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command as a person's shell would, with an English terminal unless `env` says otherwise. */
export function underice(args: readonly string[], env: Record<string, string> = {}): Promise<Said> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [command, ...args], {
      env: { PATH: process.env.PATH ?? '', HOME: process.env.HOME ?? '', LANG: 'en_CA.UTF-8', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, out, err }));
  });
}

/** The JSON a command answers under --json; a refusal of the whole command fails the test with what it said. */
export async function json<Answer>(
  args: readonly string[],
  env: Record<string, string> = {},
): Promise<Answer> {
  const said = await underice([...args, '--json'], env);
  if (said.out === '') throw new Error(`no answer (status ${said.status}): ${said.err}`);
  return JSON.parse(said.out);
}

/** A folder of this test file's own, thrown away when its tests are done. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'underice-test-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
