import { statSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import {
  type Asked,
  DownloadRefused,
  readDownload,
  type SeriesKey,
  type Sink,
} from '../../adapters/index.js';
import { layoutFor, type SavedLayout } from '../../adapters/layout-for.js';
import { headOf } from '../../adapters/source/open.js';
import { FileSource, FileUnreadable } from './file-source.js';
import { knownTo } from './known-stations.js';
import { buffersOf, type FromReader, type ReadingJob, type ToReader } from './messages.js';
import { Runs } from './runs.js';

/*
 * Reads downloads beside the main thread, which keeps answering meanwhile. It opens no store file: a database
 * instance belongs to one thread, so the readings travel to the thread that owns the store.
 */

/** Runs on their way at most: what is read ahead of the store. */
const RUNS_AHEAD = 8;
/** What is looked at to know a saved layout by. */
const LAYOUT_BYTES = 64 * 1024;
const PROGRESS_BYTES = 1024 * 1024;

class Stopped extends Error {}

const port = parentPort;
if (port === null) throw new Error('this file is the start of a worker thread');

let underWay = 0;
let stopped = false;
let wake: (() => void) | null = null;
let runs: Runs | null = null;

const tell = (message: FromReader, transfer: ArrayBuffer[] = []): void => port.postMessage(message, transfer);

port.on('message', (message: ToReader) => {
  if (message.kind === 'read') void read(message.job);
  else if (message.kind === 'stop') stopped = true;
  else {
    underWay--;
    runs?.giveBack(message.run);
  }
  wake?.();
});

async function read(job: ReadingJob): Promise<void> {
  underWay = 0;
  stopped = false;
  try {
    tell(await answerTo(job));
  } catch (error) {
    tell(failure(error));
  } finally {
    runs = null;
  }
}

async function answerTo(job: ReadingJob): Promise<FromReader> {
  const source = new FileSource(job.path, job.name, statSync(job.path).size);
  const layout = await layoutOf(source, job);
  const asked = layout === null ? job.asked : { ...job.asked, layout: unanswered(layout, job.asked) };
  let reported = 0;
  const report = await readDownload(
    source,
    asked,
    knownTo(job.stations, job.asked.station),
    sinkToMain(),
    (bytesRead) => {
      if (bytesRead - reported < PROGRESS_BYTES && bytesRead >= reported) return;
      reported = bytesRead;
      tell({ kind: 'progress', bytesRead });
    },
  );
  runs?.flushAll();
  tell({ kind: 'progress', bytesRead: source.size });
  return { kind: 'done', report, layout: layout?.name ?? null };
}

/** The group's layout this file is of; none where the person settled one. */
async function layoutOf(
  source: FileSource,
  { layouts, asked, name }: ReadingJob,
): Promise<SavedLayout | null> {
  if (layouts.length === 0 || asked.layout !== undefined) return null;
  return layoutFor(layouts, name, (await headOf(source, LAYOUT_BYTES)).bytes);
}

/** What a layout settles, but for what the person says this time. */
function unanswered({ settled }: SavedLayout, asked: Asked): NonNullable<Asked['layout']> {
  return {
    ...settled,
    ...(asked.unit === undefined ? {} : { unit: undefined }),
    ...(asked.zone === undefined ? {} : { zone: undefined }),
    ...(asked.dateOrder === undefined ? {} : { dateOrder: undefined }),
    ...(asked.column === undefined ? {} : { temperature: undefined }),
  };
}

function sinkToMain(): Sink {
  let keys: readonly SeriesKey[] = [];
  let keysTold = 0;
  const ownRuns = new Runs((run) => {
    underWay++;
    const fresh = keys.length > keysTold ? [...keys] : null;
    keysTold = keys.length;
    tell({ kind: 'run', run, keys: fresh }, buffersOf(run));
  });
  runs = ownRuns;
  return {
    async take(batch) {
      if (batch.length === 0) return;
      keys = batch.keys;
      ownRuns.take(batch);
      // Reading never waits for anything else: here acknowledgements come in.
      await setImmediate();
      if (underWay >= RUNS_AHEAD) await untilTaken();
      if (stopped) throw new Stopped();
    },
    startAgain() {
      ownRuns.forget();
      keys = [];
      keysTold = 0;
      tell({ kind: 'start-again' });
    },
  };
}

async function untilTaken(): Promise<void> {
  while (underWay >= RUNS_AHEAD && !stopped) {
    await new Promise<void>((resolve) => {
      wake = resolve;
    });
  }
  wake = null;
}

function failure(error: unknown): FromReader {
  if (error instanceof Stopped) return { kind: 'stopped' };
  if (error instanceof DownloadRefused) {
    return { kind: 'refused', reason: error.remark, question: error.question };
  }
  if (error instanceof FileUnreadable || (error instanceof Error && 'syscall' in error)) {
    return { kind: 'unreadable', why: error.message };
  }
  return { kind: 'failed', why: error instanceof Error ? (error.stack ?? error.message) : String(error) };
}
