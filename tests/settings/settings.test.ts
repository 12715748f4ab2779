import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { readSettings, settingNames, variableOf } from '../../src/settings/index.js';
import { temporaryFolder } from '../store/temporary.js';

let folder = '';
beforeEach(() => {
  folder = temporaryFolder();
});
const read = (sources: { env?: NodeJS.ProcessEnv; flags?: object; file?: string | null } = {}) =>
  readSettings({ folder, file: sources.file ?? null, env: sources.env ?? {}, flags: sources.flags ?? {} });
const write = (text: string) => writeFileSync(join(folder, 'settings.yaml'), text);

describe('a setting', () => {
  it('has its usual value: loopback, and no account needed there', () => {
    const { settings, origins } = read();
    expect(settings.host).toBe('127.0.0.1');
    expect(settingNames.every((name) => origins[name].kind === 'usual')).toBe(true);
  });

  it('comes from the file, before it the environment, before that a flag, and says which', () => {
    write('port: 8001\nlog: warn\nbehindProxy: yes\n');
    expect(read().settings).toMatchObject({ port: 8001, log: 'warn', behindProxy: true });
    expect(read().origins.port).toEqual({ kind: 'file', place: join(folder, 'settings.yaml') });
    const env = { UNDERICE_PORT: '8002', UNDERICE_BEHIND_PROXY: 'no' };
    expect(read({ env }).settings).toMatchObject({ port: 8002, behindProxy: false, log: 'warn' });
    expect(read({ env }).origins.port).toEqual({ kind: 'environment', place: 'UNDERICE_PORT' });
    expect(read({ env, flags: { port: '8003' } }).settings.port).toBe(8003);
    expect(read({ env, flags: { port: '8003' } }).origins.port).toEqual({ kind: 'flag', place: '--port' });
  });

  it('is named the same way everywhere', () => {
    expect(settingNames.map(variableOf)).toContain('UNDERICE_UPLOAD_MEGABYTES');
    expect(new Set(settingNames.map(variableOf)).size).toBe(settingNames.length);
  });

  it('an empty variable is none', () =>
    expect(read({ env: { UNDERICE_PORT: '' } }).settings.port).toBe(8177));

  it('the address is a scheme and a host', () => {
    expect(read({ env: { UNDERICE_ADDRESS: 'https://eggs.example.org/' } }).settings.address).toBe(
      'https://eggs.example.org',
    );
  });
});

describe('a setting that cannot be used is refused with its place', () => {
  it.each([
    ['UNDERICE_PORT', '70000'],
    ['UNDERICE_PORT', '80.5'],
    ['UNDERICE_PORT', 'http'],
    ['UNDERICE_HOST', 'a b'],
    ['UNDERICE_HOST', '$(rm -r)'],
    ['UNDERICE_ADDRESS', 'javascript:alert(1)'],
    ['UNDERICE_ADDRESS', 'https://eggs.example.org/path'],
    ['UNDERICE_LOG', 'loud'],
    ['UNDERICE_BEHIND_PROXY', 'perhaps'],
  ])('%s=%s', (place, given) => {
    expect(() => read({ env: { [place]: given } })).toThrow(
      expect.objectContaining({
        remark: { code: 'settings-bad-value', with: expect.objectContaining({ place, given }) },
      }),
    );
  });

  it.each([
    ['prt: 1', 'settings-unknown'],
    ['port: [1', 'settings-not-yaml'],
    ['- port', 'settings-not-yaml'],
    ['port: {a: 1}', 'settings-bad-value'],
    ['__proto__: {port: 1}', 'settings-unknown'],
  ])('%j: %s', (text, code) => {
    write(text);
    expect(() => read()).toThrow(expect.objectContaining({ remark: expect.objectContaining({ code }) }));
  });

  it('a file named but not there', () => {
    expect(() => read({ file: join(folder, 'nothing.yaml') })).toThrow(
      expect.objectContaining({ remark: expect.objectContaining({ code: 'settings-unreadable' }) }),
    );
  });

  it('a file in the folder that is empty is none', () => {
    write('# nothing yet\n');
    expect(read().settings.port).toBe(8177);
  });
});
