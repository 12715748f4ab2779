import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { keepPhotograph } from '../../src/field/photographs.js';
import { sampleFolder, scratchFolder, service, threeAccounts } from '../http/service.js';
import { json, underice } from './terminal.js';

/*
 * Backup, check, export and restore while the service owns the folder: the commands go through it. The folder holds the
 * invented sample season, three accounts and a photograph.
 */
const scratch = scratchFolder();
const winter = ['forecast', '--as-of', '2026-02-15', '--json', '--data'];
let folder = '';
let photograph = '';
let forecast = '';

beforeAll(async () => {
  folder = await sampleFolder();
  await threeAccounts(folder);
  const bank = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#345' } })
    .png()
    .toBuffer();
  photograph = await keepPhotograph(folder, bank, false);
  await service(folder, {}, null);
  forecast = (await underice([...winter, folder])).out;
});

const beside = (dir: string, name: string) => readFileSync(join(dir, name));

describe('while the service runs', () => {
  const file = join(scratch, 'février 2026.underice');

  it('backup writes one file that only its owner may read, and leaves nothing in the folder', async () => {
    const made = await json<{ file: string; bytes: number }>(['backup', file, '--data', folder]);
    expect(made).toEqual({ file, bytes: statSync(file).size });
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder).filter((name) => name.startsWith('underice.backup'))).toEqual([]);
    const again = await underice(['backup', file, '--data', folder, '--lang', 'fr']);
    expect(again).toMatchObject({ status: 2, out: '' });
    expect(again.err).toContain(file);
  });

  it('verify finds the folder whole', async () => {
    const found = await json<Record<string, unknown>>(['verify', '--data', folder]);
    expect(found).toMatchObject({ whole: true, loads: 21, findings: [] });
    expect(await underice(['verify', '--data', folder])).toMatchObject({ status: 0, err: '' });
  });

  it('what restore makes of the backup forecasts the same to the last digit, with photographs and accounts', async () => {
    const restored = join(scratch, 'restored');
    const said = await json<{ folder: string; loads: number }>(['restore', file, '--data', restored]);
    expect(said).toEqual({ folder: restored, loads: 21 });
    expect((await underice([...winter, restored])).out).toBe(forecast);
    for (const name of ['underice.accounts.json', `photographs/${photograph}`])
      expect(beside(restored, name)).toEqual(beside(folder, name));
    expect(statSync(join(restored, 'underice.accounts.json')).mode & 0o777).toBe(0o600);
    expect(await json(['verify', '--data', restored])).toMatchObject({ whole: true });
    const accounts = await json<{ accounts: { name: string }[] }>(['account', 'list', '--data', restored]);
    expect(accounts.accounts.map(({ name }) => name)).toEqual(['Coral', 'Crewe', 'Reade']);
    const second = join(scratch, 'second.underice');
    expect((await underice(['backup', second, '--data', restored])).status).toBe(0);
    expect((await underice(['restore', second, '--data', join(scratch, 'again')])).status).toBe(0);
  });

  it('what restore makes of an export forecasts the same, with photographs, without accounts', async () => {
    const exported = join(scratch, 'open formats');
    expect((await underice(['export', '--all', exported, '--data', folder])).status).toBe(0);
    expect(readdirSync(exported).sort()).toEqual(['catalogue.json', 'loads', 'photographs', 'season.yaml']);
    const restored = join(scratch, 'from-export');
    expect((await underice(['restore', exported, '--data', restored])).status).toBe(0);
    expect((await underice([...winter, restored])).out).toBe(forecast);
    expect(beside(restored, `photographs/${photograph}`)).toEqual(
      beside(folder, `photographs/${photograph}`),
    );
    expect(readdirSync(restored)).not.toContain('underice.accounts.json');
  });

  it('accounts that are there already are not written over', async () => {
    const restored = join(scratch, 'with-accounts');
    mkdirSync(restored);
    writeFileSync(join(restored, 'underice.accounts.json'), '{}');
    expect((await underice(['restore', file, '--data', restored])).status).toBe(0);
    expect(String(beside(restored, 'underice.accounts.json'))).toBe('{}');
  });
});
