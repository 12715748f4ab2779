import { Worker } from 'node:worker_threads';
import type { AdapterRemark, DownloadReport, SeriesKey } from '../../adapters/index.js';
import { buffersOf, type FileRun, type FromReader, type ReadingJob, type ToReader } from './messages.js';

/** What came of reading one file. */
export type Read =
  | { readonly kind: 'done'; readonly report: DownloadReport; readonly layout: string | null }
  | { readonly kind: 'refused'; readonly reason: AdapterRemark; readonly question: AdapterRemark | null }
  | { readonly kind: 'unreadable'; readonly why: string };

export interface RunSink {
  take(run: FileRun, keys: readonly SeriesKey[]): Promise<void>;
  startAgain(): Promise<void>;
  progress(bytesRead: number): void;
}

interface Waiting {
  readonly sink: RunSink;
  readonly resolve: (read: Read) => void;
  readonly reject: (error: unknown) => void;
}

/** Reads downloads in a worker thread, one after the other. Close it when the last is read. */
export class DownloadReader {
  private readonly worker = new Worker(workerFile());
  private waiting: Waiting | null = null;
  private keys: readonly SeriesKey[] = [];
  /** The answer being dealt with: the next waits for it. */
  private last: Promise<void> = Promise.resolve();
  private refusal: { readonly error: unknown } | null = null;

  constructor() {
    this.worker.on('message', (message: FromReader) => {
      this.last = this.last.then(() => this.hear(message));
    });
    this.worker.on('error', (error) => this.fail(error));
    this.worker.on('exit', () => this.fail(new Error('the reading thread ended')));
  }

  /** Rejects with what the sink threw, once the thread has stopped reading. */
  read(job: ReadingJob, sink: RunSink): Promise<Read> {
    this.refusal = null;
    this.keys = [];
    return new Promise((resolve, reject) => {
      this.waiting = { sink, resolve, reject };
      this.tell({ kind: 'read', job });
    });
  }

  async close(): Promise<void> {
    this.waiting = null;
    await this.worker.terminate();
  }

  private async hear(message: FromReader): Promise<void> {
    const { waiting } = this;
    if (waiting === null) return;
    try {
      switch (message.kind) {
        case 'run':
          return await this.take(message.run, message.keys, waiting.sink);
        case 'start-again':
          this.keys = [];
          if (this.refusal === null) await waiting.sink.startAgain();
          return;
        case 'progress':
          return waiting.sink.progress(message.bytesRead);
        case 'failed':
          throw new Error(message.why);
        case 'stopped':
          throw new Error('the reading was stopped');
      }
    } catch (error) {
      this.refusal ??= { error };
      if (message.kind === 'failed' || message.kind === 'stopped') return this.fail(this.refusal.error);
      this.tell({ kind: 'stop' });
      return;
    }
    this.waiting = null;
    if (this.refusal !== null) waiting.reject(this.refusal.error);
    else waiting.resolve(message);
  }

  private async take(run: FileRun, keys: readonly SeriesKey[] | null, sink: RunSink): Promise<void> {
    this.keys = keys ?? this.keys;
    try {
      if (this.refusal === null) await sink.take(run, this.keys);
    } finally {
      this.tell({ kind: 'taken', run }, buffersOf(run));
    }
  }

  private fail(error: unknown): void {
    const { waiting } = this;
    this.waiting = null;
    waiting?.reject(error);
  }

  private tell(message: ToReader, transfer: ArrayBuffer[] = []): void {
    this.worker.postMessage(message, transfer);
  }
}

/**
 * The thread is one file with everything it reads with in it, made by `npm run build`: it begins in less than half
 * the time that looking up its modules would take. Tests, which run from the sources, use the same file.
 */
function workerFile(): URL {
  const here = import.meta.url.endsWith('.ts') ? '../../dist/src/loading/' : './';
  return new URL(`${here}reader-worker.cjs`, import.meta.url);
}
