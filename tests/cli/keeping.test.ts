import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { Influxd } from '../../bench/influxd.js';
import { sampleFolder, service } from '../http/service.js';
import { json, scratchFolder, underice } from './terminal.js';

const scratch = scratchFolder();
const AS_OF = ['forecast', '--as-of', '2026-02-15', '--json'];
const folder = { path: '', served: '' };
beforeAll(async () => {
  folder.path = await sampleFolder();
  folder.served = await sampleFolder();
  await service(folder.served, {}, null);
}, 120_000);

test('a backup made while the service runs restores into the same forecast, to the last digit', async () => {
  const file = join(scratch, 'while serving.underice');
  const running = folder.served;
  expect((await underice(['backup', file, '--data', running])).status).toBe(0);
  expect(await json(['verify', '--data', running])).toMatchObject({ whole: true, findings: [] });
  const into = join(scratch, 'restored');
  expect((await underice(['restore', file, '--data', into])).status).toBe(0);
  expect((await underice([...AS_OF, '--data', into])).out).toBe(
    (await underice([...AS_OF, '--data', running])).out,
  );
  const again = await underice(['backup', file, '--data', running, '--lang', 'fr']);
  expect([again.status, again.err]).toEqual([
    2,
    `Il y a déjà un fichier ${file} : donnez à la sauvegarde un nom à elle.\n`,
  ]);
});

test('readings move to a server and back by one command, with the same forecast in either place', async () => {
  const influxd = await Influxd.start();
  try {
    const settings = join(folder.path, 'settings.yaml');
    writeFileSync(
      settings,
      `# ours\nstore: embedded\ninfluxUrl: ${influxd.url}\ninfluxDatabase: brumelore\n`,
    );
    const before = await underice([...AS_OF, '--data', folder.path]);
    const copied = await underice(['copy-store', '--to', 'influx', '--data', folder.path]);
    expect(copied.status, copied.err).toBe(0);
    expect(readFileSync(settings, 'utf8')).toMatch(/^# ours\nstore: influx\n/);
    expect((await underice([...AS_OF, '--data', folder.path])).out).toBe(before.out);
    expect(await json(['verify', '--data', folder.path])).toMatchObject({ whole: true });
    expect((await underice(['copy-store', '--to', 'embedded', '--data', folder.path])).status).toBe(0);
    expect((await underice([...AS_OF, '--data', folder.path])).out).toBe(before.out);
  } finally {
    await influxd.end();
  }
});

test('a password is never printed', async () => {
  const said = await underice(['settings', '--data', scratch], { UNDERICE_INFLUX_PASSWORD: 'salmon-1987' });
  expect(said.out).toContain('***');
  expect(said.out + said.err).not.toContain('salmon-1987');
});
