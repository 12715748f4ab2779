import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { samplePath } from '../../sample-logs/plan.js';
import { openOwnGroup } from '../../src/group/index.js';
import { underice } from '../cli/terminal.js';
import { sampleDownload, sampleFolder, scratchFolder, service } from './service.js';

/*
 * A command that opens the data folder itself, and the same command through the service that owns it: one program, so
 * one answer. Two folders are given the same history; what differs by nature (when a load was made, folder names) is
 * levelled before comparing.
 */
const alone = { folder: '' };
const served = { folder: '' };

const layoutFile = join(scratchFolder(), 'layout.json');
writeFileSync(
  layoutFile,
  JSON.stringify({ name: 'Lower', match: { fileName: 'lower' }, settled: { temperature: 2 } }),
);

beforeAll(async () => {
  alone.folder = await sampleFolder();
  served.folder = await sampleFolder();
  await service(served.folder, {}, null);
}, 120_000);

async function bothWays(args: readonly string[]): Promise<{ itself: unknown; through: unknown }> {
  const run = async (folder: string) => {
    const { status, out, err } = await underice([...args, '--data', folder]);
    const level = (text: string) =>
      text
        .replaceAll(folder, 'FOLDER')
        .replace(/"(at|withdrawn)": "\d{4}-[^"]+Z"/g, '"$1": "…"')
        .replace(/\d{4}-\d\d-\d\d \d\d:\d\d/g, '…');
    return { status, out: level(out), err: level(err) };
  };
  const itself = await run(alone.folder);
  const through = await run(served.folder);
  return { itself, through };
}

describe('a command through the service answers as the command itself does', () => {
  it.each([
    ['the season as a file', ['season', 'export']],
    ['the season as JSON', ['season', 'export', '--json']],
    ['loads', ['loads', '--json']],
    ['forecast in winter', ['forecast', '--as-of', '2026-02-15', '--json']],
    ['forecast in French for people', ['forecast', '--as-of', '2026-02-15', '--lang', 'fr']],
    ['one box', ['forecast', '--box', 'U1', '--as-of', '2026-02-15', '--json']],
    ['no such box', ['forecast', '--box', 'nowhere']],
    ['record', ['record', 'weir', '--from', '2026-01-01', '--to', '2026-01-05']],
    ['days', ['record', 'upper', '--daily', '--from', '2025-10-01', '--json']],
    ['no such station', ['record', 'nowhere', '--lang', 'fr']],
    ['tables', ['tables', '--json']],
    ['layouts kept', ['layouts', 'keep', layoutFile, '--json']],
    ['layouts', ['layouts']],
    ['no such layout', ['layouts', 'remove', 'nowhere']],
    ['no such table', ['tables', 'nowhere']],
    ['a file loaded before', ['load', sampleDownload('hatchery-tank.csv'), '--station', 'tank', '--json']],
    ['a file that is not there', ['load', '/nowhere/nothing.csv', '--json']],
    ['a folder', ['load', '/tmp', '--json']],
    ['a file that is no download', ['load', samplePath('season.yaml'), '--json']],
    ['the same season again', ['season', 'apply', samplePath('season.yaml'), '--json']],
    ['a load that is not there', ['withdraw', '999']],
    ['a load that is no load', ['withdraw', 'x']],
    ['a withdrawal', ['withdraw', '3', '--json']],
    ['loads after it', ['loads', '--json']],
    ['the file again', ['load', sampleDownload('air-2020.csv'), '--station', 'airfield', '--json']],
    ['the forecast after it', ['forecast', '--as-of', '2026-02-15', '--json']],
  ])('%s', async (_, args) => {
    const { itself, through } = await bothWays(args);
    expect(through).toEqual(itself);
  });

  it('a season that is refused, with the line and the place', async () => {
    const file = join(scratchFolder(), 'broken.yaml');
    writeFileSync(file, 'group:\n  name: Test\n  zone: Nowhere/Atall\n');
    const { itself, through } = await bothWays(['season', 'apply', file]);
    expect(through).toEqual(itself);
    expect(JSON.stringify(through)).toContain('Nowhere/Atall');
  });
});

describe('who may own a folder', () => {
  it('the service does: another process cannot open it', async () => {
    await expect(openOwnGroup(served.folder)).rejects.toMatchObject({ remark: { code: 'folder-held' } });
  });

  it('an address left by a service that is gone is not believed: the command opens the folder itself', async () => {
    const folder = join(scratchFolder(), 'left');
    mkdirSync(folder);
    writeFileSync(
      join(folder, 'owner.json'),
      JSON.stringify({ pid: 1, started: '2026-01-01T00:00:00Z', address: 'http://127.0.0.1:9', token: 'x' }),
    );
    expect(await underice(['loads', '--json', '--data', folder])).toMatchObject({ status: 0 });
  });
});
