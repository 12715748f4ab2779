import type { Asked, Known, Understood } from '../../../adapters/index.js';
import type { InventedRecord, Plan } from './record.js';

/** One series a download must come back as: these readings and no other. */
export interface Expected {
  /** As the file names it; null where it names none. */
  readonly station: string | null;
  readonly quantity: 'temperature' | 'level' | 'discharge';
  readonly span: 'instant' | 'day';
  /** What the file says was measured, where that is tested. */
  readonly medium?: 'water' | 'air' | null;
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** One layout: how an invented record is written in it, what has to be said to read it, what must come back. */
export interface Layout {
  /** Name of the sample file under sample-logs/layouts. */
  readonly file: string;
  /** The sample's record, without its seed. */
  readonly plan: Omit<Plan, 'seed'>;
  /** One value a day. */
  readonly days: boolean;
  /** Records of other dates can be carried too; not so where the layout is about one change of the clocks. */
  readonly anyDate: boolean;
  readonly record: (plan: Plan) => InventedRecord;
  readonly write: (record: InventedRecord) => Uint8Array;
  readonly expected: (record: InventedRecord) => readonly Expected[];
  readonly asked: Asked;
  readonly known: Known;
  /** What the report must say was understood. */
  readonly understood: Partial<Understood>;
}

/** A season that knows nothing of any station. */
export const knowsNothing: Known = { zoneOf: () => null };

/** The season's stations all keep one zone. */
export const knowsZone = (zone: string, from: 'deployment' | 'station' = 'station'): Known => ({
  zoneOf: () => ({ zone, from }),
});

/** A seed of its own for each sample, from its name (FNV-1a). */
export function seedOf(name: string): number {
  let hash = 0x811c9dc5;
  for (const letter of name) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0;
  return hash >>> 1;
}

/** The record a layout's sample was written from. */
export const sampleRecord = (layout: Layout): InventedRecord =>
  layout.record({ ...layout.plan, seed: seedOf(layout.file) });
