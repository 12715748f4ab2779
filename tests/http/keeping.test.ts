import { createWriteStream, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { restoreFolder } from '../../src/store/index.js';
import { ask, sampleFolder, scratchFolder, service, signIn, threeAccounts, visitor } from './service.js';

let at = '';
let folder = '';
let forecast = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder)).address;
  forecast = (await ask(at, '/api/v1/forecast')).text;
}, 60_000);

const bytesOf = async (path: string) => {
  const answer = await fetch(`${at}${path}`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('Content-Disposition')).toMatch(/^attachment; filename="underice-2026-02-15\./);
  return Buffer.from(await answer.arrayBuffer());
};

/** What a service of a folder restored of it forecasts. */
async function forecastOf(copy: string): Promise<string> {
  const restored = await restoreFolder(copy, join(scratchFolder(), 'restored'));
  return (await ask((await service(restored)).address, '/api/v1/forecast')).text;
}

async function unpacked(archive: string, into: string): Promise<string[]> {
  const open = promisify<string, { lazyEntries: true }, ZipFile>(yauzl.open);
  const zip = await open(archive, { lazyEntries: true });
  const names: string[] = [];
  await new Promise<void>((done, failed) => {
    zip.on('entry', (entry: Entry) => {
      names.push(entry.fileName);
      const path = join(into, entry.fileName);
      mkdirSync(dirname(path), { recursive: true });
      zip.openReadStream(entry, (error, stream) => {
        if (error) return failed(error);
        pipeline(stream, createWriteStream(path)).then(() => zip.readEntry(), failed);
      });
    });
    zip.on('end', done);
    zip.on('error', failed);
    zip.readEntry();
  });
  return names;
}

const left = () => readdirSync(folder).filter((name) => name.endsWith('.sent'));

describe('copies from a page', () => {
  it('a backup makes a folder that forecasts the same to the last digit', async () => {
    const file = join(scratchFolder(), 'copy.underice');
    writeFileSync(file, await bytesOf('/api/v1/backup'));
    expect(await forecastOf(file)).toBe(forecast);
    expect(left()).toEqual([]);
  });

  it('an archive of open formats does so too, and holds no account', async () => {
    const dir = scratchFolder();
    writeFileSync(join(dir, 'copy.zip'), await bytesOf('/api/v1/export.zip'));
    const names = await unpacked(join(dir, 'copy.zip'), join(dir, 'unpacked'));
    expect(names).toEqual(expect.arrayContaining(['season.yaml', 'catalogue.json', 'loads/1.csv']));
    expect(names.join()).not.toContain('account');
    expect(await forecastOf(join(dir, 'unpacked'))).toBe(forecast);
    expect(left()).toEqual([]);
  });

  it('one that is given up half-way leaves nothing behind', async () => {
    const answer = await fetch(`${at}/api/v1/backup`);
    await answer.body?.cancel();
    await expect.poll(left).toEqual([]);
  });
});

describe('whether everything is whole', () => {
  it('is said by the API and on the page', async () => {
    const { body } = await ask(at, '/api/v1/verify');
    expect(body).toMatchObject({ whole: true, findings: [] });
    expect(body.readings).toBeGreaterThan(10_000);
    const page = await ask(at, '/keeping?check=now', { headers: { 'Accept-Language': 'en' } });
    expect(page.text).toContain('everything is whole');
  });
});

describe('the settings', () => {
  it('are told without the secrets, in the language of who asks', async () => {
    const other = (await service(await sampleFolder(), { smtpPassword: 'not-to-be-shown' })).address;
    for (const path of ['/api/v1/settings', '/keeping']) {
      const { text, status } = await ask(other, path, { headers: { 'Accept-Language': 'fr' } });
      expect(status).toBe(200);
      expect(text).not.toContain('not-to-be-shown');
      expect(text).toContain('***');
      expect(text).toContain('uploadMegabytes');
    }
  });

  it('and copies are a coordinator’s alone', async () => {
    const guarded = await sampleFolder();
    await threeAccounts(guarded);
    const address = (await service(guarded)).address;
    const paths = ['/keeping', '/api/v1/backup', '/api/v1/export.zip', '/api/v1/verify', '/api/v1/settings'];
    for (const path of paths) {
      expect((await ask(address, path)).status).toBe(401);
    }
    for (const name of ['Crewe', 'Reade']) {
      const one = visitor(address, guarded, await signIn(address, guarded, name));
      for (const path of paths) expect((await one.get(path)).status).toBe(403);
    }
  }, 60_000);
});
