import type { Group, LoadRequest, Series } from '../../group/index.js';
import type { FileOutcome } from '../../loading/index.js';
import type { Spool } from './spool.js';

/** What is asked of files that wait: those, with what they do not say themselves. */
export type WaitingRequest = Pick<LoadRequest, 'asked' | 'createStations' | 'dryRun' | 'who'> & {
  readonly files: readonly { readonly file: string; readonly station?: string }[];
};

export interface WaitingOutcome {
  /** The id under which it waited. */
  readonly waiting: string;
  readonly outcome: FileOutcome;
  /** What the file brings, as it gives it; on a dry run only. */
  readonly brings: readonly Series[];
}

/**
 * Understands files that wait, or loads them. One that is loaded (or was already) waits no longer; a refused one, or
 * one with a question, waits on.
 */
export async function loadWaiting(
  group: Group,
  spool: Spool,
  request: WaitingRequest,
): Promise<readonly WaitingOutcome[]> {
  const found = request.files.map(({ file, station }) => ({ ...spool.file(file), station }));
  const brings = new Map<string, Series[]>();
  const outcomes = await group.load({
    ...request,
    files: found.map(({ path, name, station }) => ({
      path,
      name,
      ...(station === undefined ? {} : { station }),
    })),
    progress: null,
    ...(request.dryRun
      ? { preview: (path: string, series: Series) => brings.set(path, [...(brings.get(path) ?? []), series]) }
      : {}),
  });
  for (const [i, outcome] of outcomes.entries()) {
    if (outcome.load !== null && !request.dryRun) await spool.drop(found[i]!.id);
  }
  return outcomes.map((outcome, i) => ({
    waiting: found[i]!.id,
    outcome,
    brings: brings.get(found[i]!.path) ?? [],
  }));
}
