import type { Certainty, Severity, SpellKind, SpellState } from '../../forecasting/spells/spell.js';
import { isoInstant, type Language } from '../words/index.js';
import type { Acknowledged, SpellRow } from './contract.js';
import { spellSentences } from './sentences.js';

/** One spell as other programs get it; held stable (README, "For other programs"). Instants are ISO 8601 UTC. */
export interface SpellAnswer {
  readonly id: string;
  readonly boxes: readonly string[];
  readonly kind: SpellKind;
  readonly severity: Severity;
  readonly stages: readonly string[];
  readonly from: string;
  readonly to: string;
  /** The farthest reading; for a sudden change the change within an hour; null where no temperature is meant. */
  readonly peak_c: number | null;
  readonly hours: number;
  readonly certainty: Certainty;
  readonly state: SpellState;
}

export interface SpellsAnswer {
  readonly spells: readonly SpellAnswer[];
}

export function spellAnswer(row: SpellRow): SpellAnswer {
  return {
    id: row.id,
    boxes: row.boxes,
    kind: row.kind,
    severity: row.severity,
    stages: row.stages,
    from: isoInstant(row.from),
    to: isoInstant(row.to),
    peak_c: row.peak === null ? null : Number(row.peak.toFixed(2)),
    hours: Number(row.hours.toFixed(1)),
    certainty: row.certainty,
    state: row.state,
  };
}

export const spellsAnswer = (rows: readonly SpellRow[]): SpellsAnswer => ({ spells: rows.map(spellAnswer) });

/** The same with all it rests on, for the API. */
export function fullSpellAnswer(row: SpellRow, language: Language, zone: string) {
  const { what, limit, sources, toDo, title } = spellSentences(language, row, zone);
  const said = ({ by, at, note }: Acknowledged) => ({ by, at: isoInstant(at), note });
  return {
    ...spellAnswer(row),
    eggs: row.eggs,
    station: row.station,
    origin: row.origin,
    degree_hours: row.degreeHours,
    chance: row.chance,
    touched: row.touched,
    found: isoInstant(row.found),
    acknowledged: row.acknowledged === null ? null : said(row.acknowledged),
    settled: row.settled === null ? null : { how: row.settled.how, ...said(row.settled) },
    title,
    sentences: [...what, ...limit, ...toDo],
    sources,
  };
}
