import type { Asked, DownloadReport } from '../../adapters/index.js';
import type { LoadedSeries, SeriesNumber, Write } from '../store/index.js';
import type { DownloadReader, Read } from './download-reader.js';
import { type FileAsFound, refuseChanged } from './file-as-found.js';
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
  const { load, writer } = await write.beginLoad();
  const stations = await FileStations.of(write, options);
  const read = await reader.read(
    {
      path: file.path,
      name: file.name,
      asked: askedOf(write, options),
      stations: await knownStations(write),
      known: await hashesOfLength(write, file.bytes),
    },
    {
      async take({ series: index, length, at, value, line, rises }, keys) {
        const series = await stations.seriesOf(index, keys[index], length);
        if (series !== null) await writer.append({ series, length, at, value, line: rises ? null : line });
      },
      async startAgain() {
        stations.forget();
        await writer.startAgain();
      },
      progress: (bytesRead) => options.progress?.({ file: file.name, bytesRead, bytes: file.bytes }),
    },
  );
  if (read.kind === 'known') return alreadyLoaded(write, file, read.sha256);
  const { report, sha256 } = accepted(read, file);
  refuseChanged(file);
  const { series, duplicates } = await writer.finish();
  const made = await stations.settle(report, options.zone);
  if (series.length === 0) throw new LoadingRefused(nothingTaken(stations.remarks));
  if (made.length > 0 && options.seasonWith !== undefined) {
    const season = await write.season();
    await write.recordSeason(options.seasonWith(season?.text ?? null, made));
    await stations.takenIntoSeason();
  }
  const assumed = [...report.assumed, ...stations.remarks];
  const unusable = unusableOf(report, duplicates);
  const understood = rememberedText({
    understood: report.understood,
    assumed,
    unusable,
    serial: report.serial,
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
    load: options.dryRun === true ? null : load,
    alreadyLoaded: false,
    ...differences(recorded.series),
    refused: null,
  };
}

function askedOf(write: Write, options: LoadingOptions): Asked {
  const { station, zone, unit, column, dateOrder, layout } = options;
  return { station, zone, unit, column, dateOrder, layout, notAfter: options.notAfter ?? write.at + DAY };
}

/** Only a standing load of as many bytes can be the same file: then it is hashed before it is read. */
async function hashesOfLength(write: Write, length: number): Promise<string[]> {
  const loads = await write.loads();
  return loads
    .filter(({ withdrawn, bytes }) => withdrawn === null && bytes === length)
    .map(({ sha256 }) => sha256);
}

function accepted(
  read: Exclude<Read, { kind: 'known' }>,
  file: FileAsFound,
): Extract<Read, { kind: 'done' }> {
  switch (read.kind) {
    case 'done':
      return read;
    case 'refused':
      throw new LoadingRefused(read.reason, read.question);
    case 'unreadable':
      throw new LoadingRefused(
        { code: 'file-unreadable', with: { file: file.name, why: read.why } },
        null,
        1,
      );
  }
}

/** A file whose every reading was left: the remark on the air says why. */
function nothingTaken(remarks: readonly LoadingRemark[]): LoadingRemark {
  return remarks.find(({ code }) => code === 'air-left') ?? { code: 'no-station', with: { known: [] } };
}

async function alreadyLoaded(write: Write, file: FileAsFound, sha256: string): Promise<FileOutcome> {
  const standing = await write.loadOf(sha256);
  if (standing === null) throw new Error('the load vanished while its file was read');
  return {
    file: file.name,
    stations: standing.series,
    understood: understoodIn(standing.understood),
    assumed: [],
    unusable: { count: 0, examples: [] },
    serial: null,
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
