import type { BoxQuestion } from '../boxes/box-forecast.js';
import type { Span, StationWater } from '../boxes/station-waters.js';
import type { BoxForecast, ForecastInput } from '../forecast.js';
import type { LotEvidence } from '../observations/evidence.js';
import type { WaterMade } from '../water-at.js';
import { type Changes, changesOf } from './changes.js';
import { same } from './same.js';

/** A place is about a megabyte: so many are kept (a region has fifty stations; more are worked out anew). */
const MOST_PLACES = 120;

/** A station's water with what it was made from. */
export interface KnownWater {
  readonly span: Span;
  /** null where too many stations are remembered to keep it. */
  readonly from: WaterMade | null;
  readonly made: StationWater;
}

interface KnownBox {
  readonly question: BoxQuestion;
  readonly made: StationWater;
  readonly evidence: readonly (LotEvidence | null)[];
  readonly forecast: BoxForecast;
}

interface Before {
  readonly input: ForecastInput;
  readonly waters: ReadonlyMap<string, KnownWater>;
  readonly boxes: ReadonlyMap<string, KnownBox>;
}

/**
 * What the forecast before worked out, for the next one of the same group: a new download changes the water of a few
 * stations, and only boxes in water that changed are worked out anew. The answer is the same as without it, to the bit.
 */
export class ForecastMemory {
  /** Boxes that the last forecast worked out anew. */
  renewed: readonly string[] = [];
  private before: Before | null = null;

  since(input: ForecastInput): Renewal {
    return new Renewal(input, this.before);
  }

  keep({ input, waters, boxes, renewed }: Renewal): void {
    this.before = { input, waters, boxes };
    this.renewed = renewed;
  }
}

/** One forecast beside the one before: what can stand, and what it leaves for the next. */
export class Renewal {
  readonly waters = new Map<string, KnownWater>();
  readonly boxes = new Map<string, KnownBox>();
  readonly renewed: string[] = [];
  /** null: nothing of before can stand. */
  private readonly changes: Changes | null;

  constructor(
    readonly input: ForecastInput,
    private readonly before: Before | null,
  ) {
    const comparable = before !== null && same(frame(before.input), frame(input));
    this.changes = comparable ? changesOf(before.input.stations, input.stations) : null;
  }

  /**
   * A station's water over a span: as it was where nothing changed, else what `make` gives, told which stations changed
   * and what the water was made from before.
   */
  water(
    station: string,
    span: Span,
    make: (before: WaterMade | null, changes: Changes) => KnownWater,
  ): StationWater {
    const known = this.changes === null ? null : (this.before?.waters.get(station) ?? null);
    const before = known !== null && same(known.span, span) ? known : null;
    const changes = this.changes ?? new Map();
    if (before !== null && changes.size === 0) return this.keepWater(station, before);
    const renewed = make(before?.from ?? null, changes);
    // Worked out from other days and yet the same: whatever was worked out from it stands.
    if (before !== null && same(before.made.water, renewed.made.water))
      return this.keepWater(station, { ...renewed, from: leanOn(renewed.from, before), made: before.made });
    return this.keepWater(station, renewed);
  }

  box(
    question: BoxQuestion,
    made: StationWater,
    evidenceOf: ReadonlyMap<string, LotEvidence>,
    make: () => BoxForecast,
  ): BoxForecast {
    const { box } = question.box;
    const evidence = question.fills.map(({ lot }) => evidenceOf.get(lot.lot) ?? null);
    const known = this.changes === null ? null : (this.before?.boxes.get(box) ?? null);
    const stands =
      known !== null &&
      known.made === made &&
      this.changes?.has(question.leading.station) === false &&
      same(known.evidence, evidence) &&
      same(asked(known.question), asked(question));
    if (!stands) this.renewed.push(box);
    const forecast = stands ? known.forecast : make();
    this.boxes.set(box, { question, made, evidence, forecast });
    return forecast;
  }

  private keepWater(station: string, known: KnownWater): StationWater {
    const kept = this.waters.size < MOST_PLACES ? known : { ...known, from: null };
    this.waters.set(station, kept);
    return known.made;
  }
}

/** The same water twice is kept once. */
function leanOn(from: WaterMade | null, { made: { water } }: KnownWater): WaterMade | null {
  return from === null ? null : { ...from, water };
}

/** All that bears on every water and every box. */
function frame({ stations: _, boxes: __, checks: ___, ...rest }: ForecastInput) {
  return rest;
}

/** What a box's forecast is asked with, but for its leading station, whose days are compared by themselves. */
function asked({ leading, ...rest }: BoxQuestion) {
  return { ...rest, leading: leading.station };
}
