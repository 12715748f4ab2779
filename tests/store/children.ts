import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';

/** Files of the compiled program, for tests that need a process of their own. */
export const compiled = (path: string): string => new URL(`../../dist/src/${path}`, import.meta.url).href;

/** User and group id of "nobody": for whom permissions count, as they do not for root. */
const NOBODY = 65_534;

/** A process that runs a few lines of JavaScript; what it prints comes line by line. */
export class Child {
  readonly exited: Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
  readonly lines: string[] = [];
  /** Told of every line. */
  heard: () => void = () => undefined;
  private readonly child: ChildProcess;
  private wake: (() => void) | null = null;
  private ended = false;

  constructor(code: string, { asNobody = false } = {}) {
    const user = asNobody && process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};
    this.child = spawn(process.execPath, ['--input-type=module', '-e', code], {
      stdio: ['pipe', 'pipe', 'inherit'],
      ...user,
    });
    if (this.child.stdout !== null) {
      createInterface({ input: this.child.stdout }).on('line', (line) => {
        this.lines.push(line);
        this.heard();
        this.wake?.();
      });
    }
    this.exited = new Promise((resolve) => {
      this.child.on('close', (code, signal) => {
        this.ended = true;
        resolve({ code, signal });
        this.wake?.();
      });
    });
  }

  /** The first line that begins so; rejects where the process ends without it. */
  async line(beginning: string): Promise<string> {
    const found = () => this.lines.find((line) => line.startsWith(beginning));
    await this.until(() => found() !== undefined, `"${beginning}"`);
    return found() ?? '';
  }

  /** Waits until so many lines have come. */
  count(lines: number): Promise<void> {
    return this.until(() => this.lines.length >= lines, `${lines} lines`);
  }

  private async until(met: () => boolean, what: string): Promise<void> {
    while (!met()) {
      if (this.ended) throw new Error(`the process ended without ${what}: ${this.lines.join(' | ')}`);
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }

  get pid(): number {
    return this.child.pid ?? 0;
  }

  tell(line: string): void {
    this.child.stdin?.write(`${line}\n`);
  }

  kill(): void {
    this.child.kill('SIGKILL');
  }
}

/**
 * Mounts a memory disk of so many megabytes on a folder. Needs root, as the tests of a full disk do.
 *
 * @returns what unmounts it.
 */
export function mountSmallDisk(folder: string, megabytes: number): () => void {
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m,mode=0777`, 'tmpfs', folder]);
  if (mounted.status !== 0) {
    throw new Error('the test of a full disk mounts a small one: run it as root on a machine that may mount');
  }
  return () => void spawnSync('umount', [folder]);
}
