import { z } from 'zod';
import type { EpochMillis } from '../../../forecasting/units.js';
import type { LoadRow } from '../../group/index.js';
import type { KeyedNews, NewsSource } from '../news.js';
import type { MessageKind } from './kind.js';

export interface SilenceNews {
  readonly kind: 'station-silent';
  readonly station: string;
  readonly name: string;
  readonly last: EpochMillis;
  readonly hours: number;
  readonly usualHours: number;
}

export const silenceKind: MessageKind<SilenceNews> = {
  subject: 'silence',
  passage: ({ name, hours, last, usualHours }, { speech: { say }, time }) => ({
    head: say('letter-silent-head', { station: name, hours }),
    says: [say('letter-silent-says', { last: time(last), usualHours })],
    figures: [],
    means: say('letter-silent-means', {}),
    might: say('letter-silent-might', {}),
  }),
};

const HOUR = 3_600_000;
/** Silence counts as unusual once it is this much longer than nearly all pauses so far (ours). */
const LONGER = 1.5;
const NEARLY_ALL = 0.9;

const markSchema = z.record(z.string(), z.number());

/**
 * A station that reports all winter has been silent for longer than usual: longer than the stated hours, and than half as
 * long again as nine in ten of the pauses between its downloads so far. Told once, until it speaks again.
 */
export function silenceNews(leastHours: number): NewsSource {
  return {
    name: 'silence',
    async news({ group, mark, at }) {
      const told = mark === null ? {} : markSchema.parse(JSON.parse(mark));
      const [season, stations, loads] = [await group.season(), await group.stations(), await group.loads()];
      const kept: Record<string, number> = {};
      const news: KeyedNews[] = [];
      for (const { id, name, reports } of season.stations) {
        const records = stations.find(({ station }) => station === id)?.records ?? [];
        const before = records.filter(({ first }) => first <= at).map(({ last }) => Math.min(last, at));
        if (!reports || before.length === 0) continue;
        const last = Math.max(...before);
        const usualHours = Math.max(leastHours, LONGER * usualPause(loads, id, at));
        const hours = (at - last) / HOUR;
        if (hours <= usualHours) continue;
        kept[id] = last;
        // Where it speaks of an older silence, that one was told already.
        if (mark === null || told[id] === last) continue;
        news.push({
          key: `silent ${id} ${last}`,
          news: { kind: 'station-silent', station: id, name, last, hours, usualHours },
        });
      }
      return { news, mark: JSON.stringify(kept) };
    },
  };
}

/** Hours that nine in ten of a station's downloads came within after the one before. */
function usualPause(loads: readonly LoadRow[], station: string, at: number): number {
  const came = loads
    .filter((load) => load.stations.includes(station) && load.at <= at && load.withdrawn === null)
    .map((load) => load.at)
    .sort((a, b) => a - b);
  const pauses = came
    .slice(1)
    .map((later, i) => (later - (came[i] ?? later)) / HOUR)
    .sort((a, b) => a - b);
  return pauses[Math.floor(NEARLY_ALL * (pauses.length - 1))] ?? 0;
}
