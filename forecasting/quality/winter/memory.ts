import type { EpochMillis } from '../../units.js';
import type { Finding } from '../finding.js';
import type { LaidLogger } from '../record.js';

/** When a logger's memory is full; null where its memory or interval is not known. */
export function fillsAt({
  from,
  memory,
  intervalMinutes,
}: Pick<LaidLogger, 'from' | 'memory' | 'intervalMinutes'>): EpochMillis | null {
  return memory === null || intervalMinutes === null ? null : from + memory * intervalMinutes * 60_000;
}

/**
 * Loggers that are full before their box is lifted: nothing is wrong with a reading, but the end of the season will
 * be missing. Known on the day a logger is put in.
 */
export function fullBeforeLifting(deployments: readonly LaidLogger[]): Finding[] {
  return deployments.flatMap((one): Finding[] => {
    const full = fillsAt(one);
    const needed = one.to ?? one.lifted;
    if (full === null || needed === null || full >= needed) return [];
    return [
      {
        kind: 'memory',
        from: full,
        to: needed,
        flag: 2,
        figures: { memory: one.memory ?? 0, interval: one.intervalMinutes ?? 0, full, lifted: needed },
        offer: null,
      },
    ];
  });
}
