import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A real InfluxDB server of Debian's package `influxdb`, in a folder of its own, on free ports of this machine. */
export class Influxd {
  private constructor(
    readonly url: string,
    readonly folder: string,
    private readonly config: string,
    private child: ChildProcess,
  ) {}

  /** `extra` goes into the section `[http]`; `folder` is where it keeps its files, thrown away by `end`. */
  static async start({
    extra = '',
    folder = mkdtempSync(join(tmpdir(), 'underice-influxd-')),
  } = {}): Promise<Influxd> {
    installed();
    const [port, rpc] = [await freePort(), await freePort()];
    const config = join(folder, 'influxd.conf');
    writeFileSync(
      config,
      `reporting-disabled = true
bind-address = "127.0.0.1:${rpc}"
[meta]
  dir = "${folder}/meta"
[data]
  dir = "${folder}/data"
  wal-dir = "${folder}/wal"
[http]
  bind-address = "127.0.0.1:${port}"
  log-enabled = false
  ${extra}
[monitor]
  store-enabled = false
[logging]
  level = "error"
`,
    );
    const url = `http://127.0.0.1:${port}`;
    const server = new Influxd(url, folder, config, run(config));
    await server.answers();
    return server;
  }

  /** SIGKILL, or SIGTERM and waited for. */
  async stop(signal: 'SIGKILL' | 'SIGTERM' = 'SIGTERM'): Promise<void> {
    const ended = new Promise((resolve) => this.child.once('close', resolve));
    if (this.child.exitCode !== null || this.child.signalCode !== null) return;
    this.child.kill(signal);
    await ended;
  }

  async startAgain(): Promise<void> {
    this.child = run(this.config);
    await this.answers();
  }

  async end(): Promise<void> {
    await this.stop('SIGKILL');
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** What a statement gives, as the server says it. */
  async ask(statement: string, database = ''): Promise<string> {
    const answer = await fetch(`${this.url}/query?db=${database}`, {
      method: 'POST',
      body: new URLSearchParams({ q: statement }),
    });
    return answer.text();
  }

  private async answers(): Promise<void> {
    for (let tries = 0; tries < 200; tries++) {
      const up = await fetch(`${this.url}/ping`).then(
        ({ status }) => status === 204,
        () => false,
      );
      if (up) return;
      if (this.child.exitCode !== null) throw new Error(`influxd ended with ${this.child.exitCode}`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    throw new Error('influxd does not answer');
  }
}

function run(config: string): ChildProcess {
  return spawn('influxd', ['run', '-config', config], { stdio: 'ignore' });
}

/** Installs Debian's package where it is missing and this user may. */
function installed(): void {
  if (spawnSync('influxd', ['version']).status === 0) return;
  if (process.getuid?.() === 0) {
    spawnSync('apt-get', ['update'], { stdio: 'ignore' });
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'influxdb'], {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  }
  if (spawnSync('influxd', ['version']).status === 0) return;
  throw new Error(
    'the tests of the server store need a real server: install the package "influxdb" (Debian, Ubuntu)',
  );
}

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}
