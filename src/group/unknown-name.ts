import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';

/** What a group refuses: a name that the season does not have (`known` are those it has), or a change on a change. */
export interface NameWords {
  'unknown-box': { readonly box: string; readonly boxes: readonly string[] };
  'unknown-station-name': { readonly station: string; readonly stations: readonly string[] };
  'unknown-table': { readonly table: string; readonly tables: readonly string[] };
  /** Of a list of the season: boxes, lots, stations … */
  'unknown-thing': { readonly id: string; readonly ids: readonly string[] };
  'unknown-layout': { readonly layout: string; readonly layouts: readonly string[] };
  /** An exchange format explains itself: there is no layout to keep. */
  'no-layout-needed': { readonly file: string };
  'not-a-load': { readonly load: string };
  'folder-taken': { readonly folder: string };
  /** Somebody else changed the season meanwhile: `version` by `by` stands. */
  'season-moved': { readonly expected: number; readonly version: number; readonly by: string };
  'unknown-version': { readonly version: number };
  'nothing-to-undo': Record<never, never>;
}

/** Somebody asked for a box, station, table or load that is not there. */
export class UnknownName extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<NameWords>) {
    super(remark.code);
    this.name = 'UnknownName';
  }
}
