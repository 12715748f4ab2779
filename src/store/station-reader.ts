import type { Catalogue } from './catalogue.js';
import { corrected, farthestShift, flagged, type LoadSpan, type LoadSpans } from './corrections.js';
import type { DeploymentEntry, EpochMillis, FlagEntry, Quantity, Series, Span } from './entries.js';
import type { StationRecord } from './folder.js';
import type { ReadingStore } from './reading-store.js';
import { rising } from './rising.js';

const DAY = 86_400_000;

/** First and last instant that may hold a reading. */
export interface Reach {
  readonly first: EpochMillis;
  readonly last: EpochMillis;
}

/** Reads one station's readings of one quantity with everything on them that the catalogue knows. */
export class StationReader {
  private constructor(
    private readonly catalogue: Catalogue,
    private readonly store: ReadingStore,
    private readonly series: readonly Series[],
    private readonly deployments: readonly DeploymentEntry[],
    private readonly flags: readonly FlagEntry[],
    private readonly spans: ReadonlyMap<Span, LoadSpans>,
  ) {}

  static async of(
    catalogue: Catalogue,
    store: ReadingStore,
    id: string,
    quantity: Quantity,
  ): Promise<StationReader> {
    const station = await catalogue.station(id);
    const all = await catalogue.series();
    const everywhere = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
    return new StationReader(
      catalogue,
      store,
      all.filter((series) => series.station === station?.number && series.quantity === quantity),
      await catalogue.deployments(id),
      await catalogue.flags(id, quantity, ...everywhere),
      await loadSpans(catalogue, id, quantity),
    );
  }

  /** Where readings of this kind lie, clocks set right; null where there are none. */
  reach(span: Span): Reach | null {
    const spans = [...(this.spans.get(span)?.values() ?? [])];
    if (spans.length === 0) return null;
    const shift = this.shift(span);
    return {
      first: Math.min(...spans.map(({ first }) => first)) - shift,
      last: Math.max(...spans.map(({ last }) => last)) + shift,
    };
  }

  /** Where readings of a stretch of stored instants may lie once their clock is set right. */
  shifted({ first, last }: Reach): Reach {
    const shift = farthestShift(this.deployments);
    return { first: first - shift, last: last + shift };
  }

  /** Readings a day in the densest load, 1 at least. */
  readingsADay(span: Span): number {
    const spans = [...(this.spans.get(span)?.values() ?? [])];
    return spans.reduce(
      (most, { first, last, readings }) => Math.max(most, readings / Math.max(1, (last - first) / DAY)),
      1,
    );
  }

  /** Readings with from <= instant < to, instants as corrected. */
  async read(span: Span, from: EpochMillis, to: EpochMillis): Promise<StationRecord> {
    const series = this.series.find((one) => one.span === span);
    if (series === undefined) return noReadings();
    const shift = this.shift(span);
    const stored = await this.store.read(this.catalogue, series.number, from - shift, to + shift);
    const right = this.corrected(span, stored);
    const start = right.at.findIndex((at) => at >= from);
    if (start === -1) return noReadings();
    const end = right.at.findLastIndex((at) => at < to) + 1;
    const at = right.at.subarray(start, end);
    return {
      at,
      value: right.value.subarray(start, end),
      load: right.load.subarray(start, end),
      flag: flagged(at, this.flags),
    };
  }

  /** An agency's daily means come off no logger of the group: deployments bear on instants only. */
  private corrected(span: Span, stored: Awaited<ReturnType<ReadingStore['read']>>) {
    if (span === 'day') return stored;
    return rising(corrected(stored, this.deployments, this.spans.get(span) ?? new Map()));
  }

  private shift(span: Span): number {
    return span === 'day' ? 0 : farthestShift(this.deployments);
  }
}

async function loadSpans(
  catalogue: Catalogue,
  id: string,
  quantity: Quantity,
): Promise<ReadonlyMap<Span, LoadSpans>> {
  const spans = new Map([
    ['instant', new Map()],
    ['day', new Map()],
  ] satisfies [Span, Map<number, LoadSpan>][]);
  for (const load of await catalogue.loadsAt(id)) {
    for (const { station, quantity: brought, span, first, last, readings } of load.series) {
      if (station === id && brought === quantity) spans.get(span)?.set(load.load, { first, last, readings });
    }
  }
  return spans;
}

export function noReadings(): StationRecord {
  return {
    at: new Float64Array(0),
    value: new Float64Array(0),
    flag: new Uint8Array(0),
    load: new Int32Array(0),
  };
}
