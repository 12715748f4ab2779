import type { Season } from '../season/index.js';

/** Where the eggs of one lot are: every egg counted stands in exactly one of these. */
export interface LotBalance {
  readonly lot: string;
  readonly eggs: number;
  readonly inBoxes: number;
  readonly control: number;
  readonly lost: number;
  readonly leftOver: number;
  /** Not yet accounted for. */
  readonly unplaced: number;
}

export function lotBalances({ lots, boxes }: Pick<Season, 'lots' | 'boxes'>): LotBalance[] {
  return lots.map(({ id, eggs, control, lost, leftOver }) => {
    const inBoxes = boxes
      .flatMap(({ fills }) => fills)
      .filter(({ lot }) => lot === id)
      .reduce((sum, fill) => sum + fill.eggs, 0);
    const elsewhere = { control: control?.eggs ?? 0, lost: lost ?? 0, leftOver: leftOver ?? 0 };
    const out = inBoxes + elsewhere.control + elsewhere.lost + elsewhere.leftOver;
    return { lot: id, eggs, inBoxes, ...elsewhere, unplaced: eggs - out };
  });
}

/** A box, or a part of one, to be filled. */
export interface Room {
  readonly box: string;
  readonly part: string | null;
  readonly compartments: number;
  readonly unfilled: number;
  readonly doubled: number;
}

export interface PlannedFill {
  readonly lot: string;
  readonly box: string;
  readonly part: string | null;
  readonly eggs: number;
}

export interface PlannedFills {
  readonly fills: readonly PlannedFill[];
  /** What no room was left for, by lot. */
  readonly left: readonly { readonly lot: string; readonly eggs: number }[];
  /** Compartments that stay empty, by room, beside those stated. */
  readonly empty: readonly number[];
}

/** Eggs a room holds: its compartments, less those left empty, plus the second eggs of those doubled. */
export function roomFor({ compartments, unfilled, doubled }: Room): number {
  return Math.max(0, compartments - unfilled + doubled);
}

/**
 * Puts the lots into the rooms in the order given until the count is used up. No egg is lost or made: what goes into
 * boxes and what is left come to what was there, lot by lot.
 */
export function planFills(
  lots: readonly { readonly lot: string; readonly eggs: number }[],
  rooms: readonly Room[],
): PlannedFills {
  const left = lots.map(({ lot, eggs }) => ({ lot, eggs }));
  const fills: PlannedFill[] = [];
  const empty = rooms.map((room) => {
    let free = roomFor(room);
    for (const lot of left) {
      const eggs = Math.min(free, lot.eggs);
      if (eggs === 0) continue;
      fills.push({ lot: lot.lot, box: room.box, part: room.part, eggs });
      lot.eggs -= eggs;
      free -= eggs;
    }
    return free;
  });
  return { fills, left, empty };
}

/** What is not finished in a season's autumn: lots with eggs unaccounted for, lots in no box, boxes with no lot. */
export function openEnds(season: Pick<Season, 'lots' | 'boxes'>): {
  readonly unplaced: readonly LotBalance[];
  readonly lotsWithoutBox: readonly string[];
  readonly boxesWithoutLot: readonly string[];
} {
  const balances = lotBalances(season);
  return {
    unplaced: balances.filter(({ unplaced }) => unplaced > 0),
    lotsWithoutBox: balances.filter(({ inBoxes }) => inBoxes === 0).map(({ lot }) => lot),
    boxesWithoutLot: season.boxes.filter(({ fills }) => fills.length === 0).map(({ id }) => id),
  };
}
