import { SingleBar } from 'cli-progress';
import type { LoadingProgress } from '../loading/index.js';
import type { Face } from './face.js';

/** A bar on the error stream while files load; nothing where the output is piped or JSON. */
export function loadingBar(
  face: Face,
  files: number,
): { step: ((at: LoadingProgress) => void) | null; stop: () => void } {
  if (!face.interactive || face.json) return { step: null, stop: () => undefined };
  const bar = new SingleBar({
    stream: face.err,
    format: '{bar} {percentage}% {file}',
    clearOnComplete: true,
    hideCursor: true,
  });
  const done = new Set<string>();
  bar.start(files, 0, { file: '' });
  return {
    step: ({ file, bytesRead, bytes }) => {
      done.add(file);
      bar.update(done.size - 1 + (bytes > 0 ? bytesRead / bytes : 0), { file });
    },
    stop: () => bar.stop(),
  };
}

/** A bar on the error stream while a hindcast goes from station to station; nothing where piped or JSON. */
export function hindcastBar(face: Face): {
  step: ((done: number, all: number) => void) | null;
  stop: () => void;
} {
  if (!face.interactive || face.json) return { step: null, stop: () => undefined };
  const bar = new SingleBar({
    stream: face.err,
    format: '{bar} {percentage}% {value}/{total}',
    clearOnComplete: true,
    hideCursor: true,
  });
  bar.start(1, 0);
  return {
    step: (done, all) => {
      bar.setTotal(all);
      bar.update(done);
    },
    stop: () => bar.stop(),
  };
}
