import { parentPort } from 'node:worker_threads';
import { ForecastMemory, forecast, waterAt } from '../../forecasting/index.js';
import { judgeStation } from '../../forecasting/quality/index.js';
import { LineEnd } from './forecast-line.js';
import type { Answered, Job } from './thinker.js';

/** Lives as long as the thread: the service of one group. */
const memory = new ForecastMemory();
const line = new LineEnd();

/** The thread in which a running service works forecasts out, so that nobody waits for somebody else's. */
parentPort?.on('message', ({ number, question }: Job) => {
  parentPort?.postMessage(answered(number, question));
});

function answered(number: number, question: Job['question']): Answered {
  try {
    if (question.kind === 'forecast') {
      const answer = line.packForecast(forecast(line.unpackInput(question.input), memory));
      return { number, kind: 'forecast', answer };
    }
    if (question.kind === 'quality') return { number, kind: 'quality', answer: judgeStation(question.input) };
    return { number, kind: 'water', answer: waterAt(question.input) };
  } catch {
    // Whoever asked works it out again and meets the error itself: an error loses its kind between threads.
    return { number, kind: 'failed' };
  }
}
