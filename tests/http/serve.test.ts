import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { json as jsonOf, underice, undericeProcess } from '../cli/terminal.js';
import { ask, json, sampleFolder, scratchFolder, send } from './service.js';

/* The service as a process of its own, as systemd starts and ends it. */
const command = new URL('../../dist/src/cli/main.js', import.meta.url).pathname;
const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
});

interface Started {
  readonly child: ChildProcess;
  readonly address: string;
  readonly said: { out: string; err: string };
  readonly ended: Promise<number | null>;
}

function start(args: readonly string[], env: Record<string, string> = {}): Promise<Started> {
  const child = spawn(process.execPath, [command, ...args], {
    env: { PATH: process.env.PATH ?? '', HOME: process.env.HOME ?? '', LANG: 'en_CA.UTF-8', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running.push(child);
  const said = { out: '', err: '' };
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  return new Promise((resolve, reject) => {
    child.stderr.setEncoding('utf8').on('data', (text: string) => (said.err += text));
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said.out += text;
      const address = /Underice answers at (http:\/\/[^,]+),/.exec(said.out)?.[1];
      if (address !== undefined && said.out.includes('\n')) resolve({ child, address, said, ended });
    });
    void ended.then((status) => reject(new Error(`ended (${status}): ${said.out}${said.err}`)));
  });
}

describe('underice serve', () => {
  it('prints its address, logs one JSON line a happening, and ends on SIGTERM with nothing lost', async () => {
    const folder = await sampleFolder();
    const { child, address, said, ended } = await start(['serve', '--data', folder, '--port', '0']);
    expect(said.out).toContain('Nobody has an account yet');
    const large = `Time (UTC),Temperature (°C)\n${Array.from(
      { length: 200_000 },
      (_, i) => `${new Date(Date.UTC(2010, 0, 1) + i * 900_000).toISOString().slice(0, 19)},${(i % 80) / 10}`,
    ).join('\n')}\n`;
    const sent = await ask(
      address,
      '/api/v1/files/large.csv',
      send('PUT', 'application/octet-stream', large),
    );
    const { file } = JSON.parse(sent.text).files[0];
    const loading = ask(address, '/api/v1/loads', json('POST', { files: [{ file }], station: 'upper' }));
    await new Promise((resolve) => setTimeout(resolve, 150));
    child.kill('SIGTERM');
    const loaded = await loading;
    expect(loaded.body).toMatchObject({ files: [{ refused: null, load: expect.any(String) }] });
    expect(await ended).toBe(0);
    const { loads } = await jsonOf<{ loads: { file: string; readings: number }[] }>([
      'loads',
      '--data',
      folder,
    ]);
    expect(loads.at(-1)).toMatchObject({ file: 'large.csv', readings: 200_000 });
    expect(existsSync(join(folder, 'owner.json'))).toBe(false);
    const log = said.err
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(log.map(({ msg }) => msg)).toEqual(
      expect.arrayContaining(['serving', 'request', 'ending', 'ended']),
    );
    expect(log.find(({ path }) => path === '/api/v1/loads')).toMatchObject({ method: 'POST', status: 200 });
  });

  it('killed outright, leaves a folder that the next one opens', async () => {
    const folder = await sampleFolder();
    const first = await start(['serve', '--data', folder, '--port', '0']);
    first.child.kill('SIGKILL');
    await first.ended;
    expect(existsSync(join(folder, 'owner.json'))).toBe(true);
    const second = await start(['serve', '--data', folder, '--port', '0']);
    expect((await ask(second.address, '/api/v1/forecast')).status).toBe(200);
  });

  it('a second service of the same folder is told where the first answers', async () => {
    const folder = join(scratchFolder(), 'one');
    const { address } = await start(['serve', '--data', folder, '--port', '0']);
    const second = await undericeProcess(['serve', '--data', folder, '--port', '0']);
    expect(second.status).toBe(1);
    expect(second.err).toContain(address);
  });

  it('refuses a taken port, a foreign address, and others without an account, each in a sentence', async () => {
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve));
    const at = taken.address();
    const port = typeof at === 'object' && at !== null ? String(at.port) : '';
    const folder = join(scratchFolder(), 'refused');
    const said = await undericeProcess(['serve', '--data', folder, '--port', port]);
    expect(said).toMatchObject({ status: 2, out: '' });
    expect(said.err).toBe(
      `Port ${port} at 127.0.0.1 is in use by another program: choose another one with --port.\n`,
    );
    taken.close();
    const open = await undericeProcess(['serve', '--data', folder, '--host', '0.0.0.0', '--lang', 'fr']);
    expect(open.err).toContain('Créez-en un d’abord avec «\u00a0underice account add NOM\u00a0»');
  });

  it('with an account, answers others, and the accounts are changed through it', async () => {
    const folder = join(scratchFolder(), 'accounts');
    const account = (args: readonly string[]) =>
      new Promise<number | null>((resolve) => {
        const child = spawn(process.execPath, [command, 'account', ...args, '--data', folder], {
          stdio: ['pipe', 'ignore', 'ignore'],
        });
        child.stdin.end('a long enough password\n');
        child.on('close', resolve);
      });
    expect(await account(['add', 'Coral'])).toBe(0);
    const { address, said } = await start(['serve', '--data', folder, '--host', '0.0.0.0', '--port', '0']);
    expect(said.out).not.toContain('Nobody has an account');
    expect((await ask(address, '/api/v1/season')).status).toBe(401);
    expect(await account(['add', 'Crewe', '--role', 'crew'])).toBe(0);
    const list = await jsonOf<{ accounts: { name: string; role: string }[] }>([
      'account',
      'list',
      '--data',
      folder,
    ]);
    expect(list.accounts.map(({ name, role }) => `${name} ${role}`)).toEqual([
      'Coral coordinator',
      'Crewe crew',
    ]);
    expect(readFileSync(join(folder, 'underice.accounts.json'), 'utf8')).toContain('"Crewe"');
    expect(await account(['remove', 'Coral'])).toBe(2);
  });
});

describe('underice serve with several folders', () => {
  it('answers for each group under its own name; a command that works in one folder refuses two', async () => {
    const folders = ['north', 'south'].map((name) => join(scratchFolder(), name));
    for (const [i, folder] of folders.entries()) {
      const group = await openOwnGroup(folder);
      await group.close();
      await new Accounts(folder, 30).add('Coral', 'coordinator', 'Coral-password', 'tests');
      writeFileSync(join(folder, 'settings.yaml'), `address: http://group${i}.localhost\n`);
    }
    const named = folders.flatMap((folder) => ['--data', folder]);
    const { said, child, ended } = await start(['serve', ...named, '--port', '0']);
    for (const [i, folder] of folders.entries())
      expect(said.out).toContain(`http://group${i}.localhost, for the season in ${folder}`);
    child.kill('SIGTERM');
    expect(await ended).toBe(0);
    const two = await underice(['loads', ...named]);
    expect(two).toMatchObject({ status: 2, err: expect.stringContaining('Only "serve" takes several') });
  });
});

describe('underice demo', () => {
  it('serves the sample season as it stood on its winter day', async () => {
    const { address, said, child, ended } = await start(['demo', '--port', '0']);
    expect(said.out).toContain('15 February 2026');
    expect((await ask(address, '/api/v1/forecast')).body).toMatchObject({ asOf: '2026-02-15' });
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  });
});
