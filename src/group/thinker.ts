import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Forecast, ForecastInput } from '../../forecasting/forecast.js';
import { forecast, type Water, type WaterInput, waterAt } from '../../forecasting/index.js';
import { type Finding, judgeStation, type RecordToJudge } from '../../forecasting/quality/index.js';

type Question =
  | { readonly kind: 'forecast'; readonly input: ForecastInput }
  | { readonly kind: 'water'; readonly input: WaterInput }
  | { readonly kind: 'quality'; readonly input: RecordToJudge };

/** A question on its way to the thread, and what comes back. */
export interface Job {
  readonly number: number;
  readonly question: Question;
}
export type Answered = { readonly number: number } & (
  | { readonly kind: 'forecast'; readonly answer: Forecast }
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
  private readonly waiting = new Map<number, (answered: Answered) => void>();

  async forecast(input: ForecastInput): Promise<Forecast> {
    const answered = await this.ask({ kind: 'forecast', input });
    return answered.kind === 'forecast' ? answered.answer : forecast(input);
  }

  async water(input: WaterInput): Promise<Water> {
    const answered = await this.ask({ kind: 'water', input });
    return answered.kind === 'water' ? answered.answer : waterAt(input);
  }

  async quality(input: RecordToJudge): Promise<readonly Finding[]> {
    const answered = await this.ask({ kind: 'quality', input });
    return answered.kind === 'quality' ? answered.answer : judgeStation(input);
  }

  async close(): Promise<void> {
    await this.worker?.terminate();
    this.worker = null;
  }

  private ask(question: Question): Promise<Answered> {
    const number = ++this.number;
    const answered = new Promise<Answered>((resolve) => this.waiting.set(number, resolve));
    this.worker ??= this.start();
    this.worker.postMessage({ number, question } satisfies Job);
    return answered;
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
