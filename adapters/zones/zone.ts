import { IANAZone } from 'luxon';
import { MINUTE } from '../fields/civil.js';
import { TransitionTable } from './transitions.js';

/** A clock that keeps one distance from UTC. */
export interface FixedZone {
  readonly kind: 'fixed';
  readonly name: string;
  /** Milliseconds east of UTC. */
  readonly offset: number;
}

/** A zone of the IANA database, with its changes. */
export interface NamedZone {
  readonly kind: 'named';
  readonly name: string;
  readonly transitions: TransitionTable;
}

export type Zone = FixedZone | NamedZone;

const named = new Map<string, NamedZone>();

/** `UTC`, or `UTC±HH:MM` for a fixed offset in milliseconds. */
export function offsetName(offset: number): string {
  if (offset === 0) return 'UTC';
  const minutes = Math.round(Math.abs(offset) / MINUTE);
  const hh = String(Math.floor(minutes / 60)).padStart(2, '0');
  return `UTC${offset < 0 ? '-' : '+'}${hh}:${String(minutes % 60).padStart(2, '0')}`;
}

export function fixedZone(offset: number): FixedZone {
  return { kind: 'fixed', name: offsetName(offset), offset };
}

/**
 * Reads a zone as a person or a season writes it: an IANA name, `UTC` or `UTC±HH:MM` (`UTC-4` and `-04:00` too).
 * null where it is none of these.
 */
export function zoneNamed(text: string): Zone | null {
  const name = text.trim().replace(/[\u2212\u2013]/g, '-');
  const fixed = /^(?:UTC|GMT|Z)?(?:\s*([+-])\s*(\d{1,2})(?::?([0-5]\d))?)?$/i.exec(name);
  if (fixed !== null && name !== '') {
    const minutes = Number(fixed[2] ?? 0) * 60 + Number(fixed[3] ?? 0);
    return minutes > 14 * 60 ? null : fixedZone((fixed[1] === '-' ? -1 : 1) * minutes * MINUTE);
  }
  const kept = named.get(name);
  if (kept !== undefined) return kept;
  if (!name.includes('/') || !IANAZone.isValidZone(name)) return null;
  const zone: NamedZone = { kind: 'named', name, transitions: new TransitionTable(IANAZone.create(name)) };
  named.set(name, zone);
  return zone;
}
