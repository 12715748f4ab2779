/*
 * Run by the tests of kills as a process of its own, bundled into one file so that it starts quickly:
 * `workload WHAT GIVEN FOLDER [BEFORE]`. Opens the folder that the kill before left (BEFORE, else FOLDER) and says what it
 * finds there; then works on FOLDER, says what it was told is done, and is killed at any moment.
 */
import { existsSync, readFileSync, writeSync } from 'node:fs';
import { LocalGroup } from '../../src/group/local.js';
import { thinkHere } from '../../src/group/thinker.js';
import type { Folder, SeasonEntry, ServerAddress } from '../../src/store/index.js';
import { openFolder } from '../../src/store/index.js';
import { loadValues } from './workload-readings.js';

const [, , what, given, dir, before = dir] = process.argv;
const { seasons, server }: { seasons: SeasonEntry[]; server: ServerAddress | null } = JSON.parse(
  readFileSync(given, 'utf8'),
);
const say = (line: string) => writeSync(1, `${line}\n`);
const open = (folder: string) => openFolder(folder, { store: { kind: null, server } });

let folder: Folder | null = null;
if (existsSync(before)) {
  folder = await open(before);
  say(`state ${JSON.stringify(await state(folder))}`);
}
if (what === 'migration') {
  await folder?.close();
  if (dir !== before) {
    say('begin');
    await open(dir);
    say('opened');
  }
}
for (let turn = 0; what === 'edits' && folder !== null; turn++) {
  const { load } = await folder.write('loader', async (write) => {
    const { load, writer } = await write.beginLoad();
    const station = await write.station('pool');
    if (station === null) throw new Error('the season has the station');
    const series = await write.seriesOf(station, 'temperature', 'instant');
    await writer.append({ series, ...loadValues(load), line: null });
    const outcome = await writer.finish();
    const sha256 = String(load);
    return write.recordLoad({
      load,
      file: `f${load}`,
      sha256,
      bytes: 1,
      series: outcome.series,
      understood: '{}',
    });
  });
  say(`loaded ${load}`);
  if (load % 3 === 0) {
    await folder.withdraw(load - 1, 'loader');
    say(`withdrawn ${load - 1}`);
  }
  const { version } = await folder.applySeason(seasons[turn % seasons.length], 'loader');
  say(`season ${version}`);
}
while (what === 'copies' && folder !== null) {
  await folder.copyTo(folder.store === 'embedded' ? 'influx' : 'embedded', server);
  say(`copied ${folder.store}`);
}
setInterval(() => undefined, 1000);

async function state(folder: Folder) {
  const { catalogue, readings, store } = folder;
  const [series] = await catalogue.series();
  const everything = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
  const { at, value } =
    series === undefined
      ? { at: [], value: [] }
      : await readings.read(catalogue, series.number, ...everything);
  return {
    store,
    loads: (await catalogue.loads()).map(({ load, series: [one], withdrawn }) => ({
      load,
      readings: one?.readings,
      min: one?.min,
      max: one?.max,
      stands: withdrawn === null,
    })),
    seasons: (await catalogue.seasons()).map(({ version }) => version),
    at: Array.from(at),
    value: Array.from(value),
    findings: (await folder.verify()).findings,
    windows: await windows(folder),
  };
}

/** Windows of the forecast: of every stage of every lot in every box. Quality is not judged first, as in a service. */
async function windows(folder: Folder): Promise<number> {
  const now = () => Date.UTC(2026, 1, 10);
  const group = new LocalGroup(folder, now, null, { ...thinkHere });
  const { boxes } = await group.forecast({ box: null, asOf: null });
  return boxes.flatMap(({ lots }) => lots.flatMap((lot) => lot.windows)).length;
}
