import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Forecast, ForecastInput } from '../../forecasting/forecast.js';
import { forecast, type Water, type WaterInput, waterAt } from '../../forecasting/index.js';
import { type Finding, judgeStation, type RecordToJudge } from '../../forecasting/quality/index.js';
import { LineEnd, type PackedForecast, type PackedInput } from './forecast-line.js';

type Question =
  | { readonly kind: 'forecast'; readonly input: PackedInput }
  | { readonly kind: 'water'; readonly input: WaterInput }
  | { readonly kind: 'quality'; readonly input: RecordToJudge };

/** A question on its way to the thread, and what comes back. */
export interface Job {
  readonly number: number;
  readonly question: Question;
}
export type Answered = { readonly number: number } & (
  | { readonly kind: 'forecast'; readonly answer: PackedForecast }
  | { readonly kind: 'water'; readonly answer: Water }
  | { readonly kind: 'quality'; readonly answer: readonly Finding[] }
  | { readonly kind: 'failed' }
);

/** Where forecasts, and what the checks say of a year, are worked out: here and now, or in a thread while others are answered. Same answers. */
export interface Thinker {
  forecast(input: ForecastInput): Promise<Forecast>;
  water(input: WaterInput): Promise<Water>;
  quality(input: RecordToJudge): Promise<readonly Finding[]>;
  close(): Promise<void>;
}

export const thinkHere: Thinker = {
  forecast: async (input) => forecast(input),
  water: async (input) => waterAt(input),
  quality: async (input) => judgeStation(input),
  close: async () => undefined,
};

/** A thread of its own, started with the first question. */
export class ThreadThinker implements Thinker {
  private worker: Worker | null = null;
  private number = 0;
  /** What this thread's end of the line holds. */
  private line = new LineEnd();
  private readonly waiting = new Map<number, (answered: Answered) => void>();

  async forecast(input: ForecastInput): Promise<Forecast> {
    const worker = this.begun();
    const { line } = this;
    const question = { kind: 'forecast', input: line.packInput(input) } as const;
    // Unpacked as it comes, before whatever comes next.
    const answered = await this.ask(question, worker, (one) =>
      one.kind === 'forecast' ? line.unpackForecast(one.answer) : null,
    );
    return answered ?? forecast(input);
  }

  async water(input: WaterInput): Promise<Water> {
    const answered = await this.ask({ kind: 'water', input }, this.begun(), (one) =>
      one.kind === 'water' ? one.answer : null,
    );
    return answered ?? waterAt(input);
  }

  async quality(input: RecordToJudge): Promise<readonly Finding[]> {
    const answered = await this.ask({ kind: 'quality', input }, this.begun(), (one) =>
      one.kind === 'quality' ? one.answer : null,
    );
    return answered ?? judgeStation(input);
  }

  async close(): Promise<void> {
    await this.worker?.terminate();
    this.worker = null;
  }

  /** `take` gives null where the thread failed: whoever asked works it out and meets the error itself. */
  private ask<T>(
    question: Question,
    worker: Worker,
    take: (answered: Answered) => T | null,
  ): Promise<T | null> {
    const number = ++this.number;
    const answered = new Promise<T | null>((resolve) =>
      this.waiting.set(number, (one) => resolve(take(one))),
    );
    worker.postMessage({ number, question } satisfies Job);
    return answered;
  }

  private begun(): Worker {
    if (this.worker !== null) return this.worker;
    this.line = new LineEnd();
    this.worker = this.start();
    return this.worker;
  }

  private start(): Worker {
    const worker = new Worker(workerFile());
    worker.unref();
    worker.on('message', (answered: Answered) => {
      this.waiting.get(answered.number)?.(answered);
      this.waiting.delete(answered.number);
    });
    // A thread that ends (no memory, a closed service) leaves nobody waiting.
    worker.on('error', () => undefined);
    worker.on('exit', () => {
      this.worker = null;
      for (const [number, resolve] of this.waiting) resolve({ number, kind: 'failed' });
      this.waiting.clear();
    });
    return worker;
  }
}

/** Run from the sources, as tests are, the thread is started from its compiled twin (`npm run build`). */
function workerFile(): URL | string {
  if (!import.meta.url.endsWith('.ts')) return new URL('./forecast-worker.js', import.meta.url);
  return fileURLToPath(new URL('../../dist/src/group/forecast-worker.js', import.meta.url));
}
