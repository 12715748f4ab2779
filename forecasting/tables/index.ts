import type { DevelopmentTable } from '../table.js';
import { atlanticSalmon, atlanticSalmonGorodilov } from './atlantic-salmon.js';
import { brookTrout, brookTroutUnits, brownTrout, rainbowTrout } from './trout.js';

/** The development tables that come with the program, in the order they are listed. */
export const shippedTables: readonly DevelopmentTable[] = [
  atlanticSalmon,
  atlanticSalmonGorodilov,
  brownTrout,
  rainbowTrout,
  brookTrout,
  brookTroutUnits,
];

/** A shipped table by its id; undefined where none has it. */
export function shippedTable(id: string): DevelopmentTable | undefined {
  return shippedTables.find((table) => table.id === id);
}

export { atlanticSalmon, atlanticSalmonGorodilov, brookTrout, brookTroutUnits, brownTrout, rainbowTrout };
