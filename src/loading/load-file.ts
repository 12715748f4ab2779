import type { Asked, DownloadReport } from '../../adapters/index.js';
import type { Load, LoadedSeries, SeriesNumber, Station, Write } from '../store/index.js';
import { batteriesIn, batteriesOf } from './battery.js';
import type { DownloadReader, Read } from './download-reader.js';
import { type FileAsFound, refuseChanged } from './file-as-found.js';
import { FileUnreadable, sha256Of } from './file-source.js';
import { FileStations } from './file-stations.js';
import type { LoadingOptions } from './index.js';
import { knownStations } from './known-stations.js';
import type { FileOutcome, LoadingRemark, Unusable } from './outcome.js';
import { LoadingRefused } from './refused.js';
import { rememberedText, understoodIn } from './remembered.js';

const DAY = 86_400_000;
const EXAMPLES = 10;

/** Loads one file in a running write. @throws LoadingRefused: the write is then to be undone. */
export async function loadFile(
  write: Write,
  reader: DownloadReader,
  file: FileAsFound,
  options: LoadingOptions,
): Promise<FileOutcome> {
  const hashing = new AbortController();
  const hashed = sha256Of(file.path, hashing.signal);
  // Awaited by the load; a file that cannot be read is then told by whoever reads it first.
  hashed.catch(() => undefined);
  try {
    return await loadHashed(write, reader, file, hashed, options);
  } finally {
    hashing.abort();
  }
}

async function loadHashed(
  write: Write,
  reader: DownloadReader,
  file: FileAsFound,
  hashed: Promise<string>,
  options: LoadingOptions,
): Promise<FileOutcome> {
  // Only a standing load of as many bytes can be the same file: then its hash is waited for before it is read.
  if (await write.standsWith(file.bytes)) {
    const standing = await write.loadOf(await hashOf(hashed, file));
    if (standing !== null) return alreadyLoaded(standing, file);
  }
  const { load, writer } = await write.beginLoad();
  const stations = await FileStations.of(write, options);
  const read = await reader.read(
    {
      path: file.path,
      name: file.name,
      asked: askedOf(write, options),
      stations: await knownStations(write, options.called ?? []),
      layouts: options.layouts ?? [],
    },
    {
      async take({ series: index, length, at, value, line }, keys) {
        const series = await stations.seriesOf(index, keys[index], length);
        if (series !== null) await writer.append({ series, length, at, value, line });
      },
      async startAgain() {
        stations.forget();
        await writer.startAgain();
      },
      progress: (bytesRead) => options.progress?.({ file: file.name, bytesRead, bytes: file.bytes }),
    },
  );
  if (stationFirst(read, options)) throw new LoadingRefused(stationAsked(await write.stations()));
  const { report, layout } = accepted(read, file);
  const sha256 = await hashOf(hashed, file);
  refuseChanged(file);
  const { series, duplicates } = await writer.finish();
  const made = await stations.settle(report, options.zone);
  if (series.length === 0) throw new LoadingRefused(nothingTaken(stations.remarks));
  if (made.length > 0 && options.seasonWith !== undefined) {
    const season = await write.season();
    await write.recordSeason(options.seasonWith(season?.text ?? null, made));
    await stations.takenIntoSeason();
  }
  const used: LoadingRemark[] = layout === null ? [] : [{ code: 'layout-used', with: { layout } }];
  const assumed = [...used, ...report.assumed, ...stations.remarks];
  const unusable = unusableOf(report, duplicates);
  const battery = batteriesOf(report, (name) => stations.stationOf(name));
  const understood = rememberedText({
    understood: report.understood,
    assumed,
    unusable,
    serial: report.serial,
    battery,
  });
  const recorded = await write.recordLoad({
    load,
    file: file.name,
    sha256,
    bytes: file.bytes,
    series,
    understood,
  });
  await options.inspect?.(write, recorded, file);
  return {
    file: file.name,
    stations: recorded.series,
    understood: report.understood,
    assumed,
    unusable,
    serial: report.serial,
    battery,
    load: options.dryRun === true ? null : load,
    alreadyLoaded: false,
    ...differences(recorded.series),
    refused: null,
  };
}

function askedOf(write: Write, options: LoadingOptions): Asked {
  const { station, zone, homeZone, unit, column, dateOrder, layout } = options;
  return {
    station,
    zone,
    homeZone,
    unit,
    column,
    dateOrder,
    layout,
    notAfter: options.notAfter ?? write.at + DAY,
  };
}

async function hashOf(hashed: Promise<string>, file: FileAsFound): Promise<string> {
  try {
    return await hashed;
  } catch (error) {
    if (error instanceof FileUnreadable) throw unreadable(file, error.message);
    throw error;
  }
}

function accepted(read: Read, file: FileAsFound): Extract<Read, { kind: 'done' }> {
  switch (read.kind) {
    case 'done':
      return read;
    case 'refused':
      throw new LoadingRefused(read.reason, read.question);
    case 'unreadable':
      throw unreadable(file, read.why);
  }
}

/** A file that names neither station nor clock: the station is asked for first, for its clock is often known. */
function stationFirst(read: Read, { station }: LoadingOptions): boolean {
  if (read.kind !== 'refused' || station !== undefined) return false;
  return read.reason.code === 'no-zone' && read.reason.with.station === null;
}

function stationAsked(known: readonly Station[]): LoadingRemark {
  return { code: 'no-station', with: { known: known.map(({ id }) => id) } };
}

function unreadable(file: FileAsFound, why: string): LoadingRefused {
  return new LoadingRefused({ code: 'file-unreadable', with: { file: file.name, why } }, null, 1);
}

/** A file whose every reading was left: the remark on the air says why. */
function nothingTaken(remarks: readonly LoadingRemark[]): LoadingRemark {
  return remarks.find(({ code }) => code === 'air-left') ?? { code: 'no-station', with: { known: [] } };
}

function alreadyLoaded(standing: Load, file: FileAsFound): FileOutcome {
  return {
    file: file.name,
    stations: standing.series,
    understood: understoodIn(standing.understood),
    assumed: [],
    unusable: { count: 0, examples: [] },
    serial: null,
    battery: batteriesIn(standing.understood),
    load: standing.load,
    alreadyLoaded: true,
    differing: 0,
    largestDifference: 0,
    refused: null,
  };
}

function unusableOf(
  report: DownloadReport,
  duplicates: { readonly count: number; readonly examples: readonly DuplicateLine[] },
): Unusable {
  const twice = duplicates.examples.map(({ line, at, kept, left }) => ({
    line,
    reason: { code: 'instant-twice' as const, with: { at: new Date(at).toISOString(), kept, left } },
  }));
  return {
    count: report.unusable.count + duplicates.count,
    examples: [...report.unusable.examples, ...twice].sort((a, b) => a.line - b.line).slice(0, EXAMPLES),
  };
}

interface DuplicateLine {
  readonly line: number;
  readonly at: number;
  readonly kept: number;
  readonly left: number;
  readonly series: SeriesNumber;
}

function differences(series: readonly LoadedSeries[]): Pick<FileOutcome, 'differing' | 'largestDifference'> {
  return {
    differing: series.reduce((sum, { differing }) => sum + differing, 0),
    largestDifference: series.reduce((most, one) => Math.max(most, one.largestDifference), 0),
  };
}
