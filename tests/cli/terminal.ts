import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { afterAll } from 'vitest';

const program = (file: string) => new URL(`../../dist/src/cli/${file}`, import.meta.url);
const { run }: typeof import('../../src/cli/run.js') = await import(program('run.js').href);

export interface Said {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const TERMINAL = { LANG: 'en_CA.UTF-8' };
const home = () => ({ PATH: process.env.PATH ?? '', HOME: process.env.HOME ?? '' });

/**
 * One command line of the built program, in an English terminal unless `env` says otherwise; within this process, for a
 * start of its own costs half a second. `undericeProcess` is for what only a process shows.
 */
export async function underice(args: readonly string[], env: Record<string, string> = {}): Promise<Said> {
  const out = new Heard();
  const err = new Heard();
  const status = await run(args, { ...home(), ...TERMINAL, ...env }, out, err);
  return { status, out: out.text, err: err.text };
}

class Heard extends Writable {
  private readonly parts: Buffer[] = [];

  override _write(part: Buffer, _encoding: BufferEncoding, done: () => void): void {
    this.parts.push(part);
    done();
  }

  get text(): string {
    return Buffer.concat(this.parts).toString('utf8');
  }
}

/** The same as a person's shell would run it: a process of its own, its exit status, its streams as pipes. */
export function undericeProcess(args: readonly string[], env: Record<string, string> = {}): Promise<Said> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program('main.js').pathname, ...args], {
      env: { ...home(), ...TERMINAL, ...env },
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
